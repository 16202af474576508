// Package notice reads the text of a listing, as a seller wrote it, for what it
// tells: price, size, year, supply, hours, place, distance, weight, the kind of
// equipment and the facts that its rubric asks. It proposes and never decides:
// each proposal names the words it was read from and how sure the reading is, and
// where a text can be read in two ways both are proposed. It knows kinds and facts
// only by the words it is given, and nothing of what is judged by them. It does no
// I/O and its work grows with the length of the text, however that is made.
//
// # How numbers are read
//
// Point and comma both present: the last is the decimal mark. One of them with one
// to three digits before and exactly three after groups by thousands in money. In
// other figures both readings are proposed, thousands first, but for what a shop
// that counts in inches writes: there a comma groups, and a length has decimals
// behind its point. An apostrophe groups. "2.4k" is 2,400.
package notice
