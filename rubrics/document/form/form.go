// Package form is the form of a document: blocks in reading order, all text already
// in the reader's language. It is apart from the making of documents, so that what
// draws one, the page, the PDF and the seller's page, carries no judgement.
package form

// Document is one paper. It holds everything that its reader gets and nothing else.
type Document struct {
	Kind     string `json:"kind"`     // estimate, record, jobs, comparison
	Language string `json:"language"` // BCP 47, for reader and hyphenation
	Title    string `json:"title"`
	// Date of the paper in words.
	Date   string  `json:"date"`
	Blocks []Block `json:"blocks"`
	// Foot stands at the foot of every page, Page is how pages are counted: a
	// pattern with the number and the count.
	Foot string `json:"foot"`
	Page string `json:"page"`
	// Absent is said in place of a photo that is not there.
	Absent string `json:"absent,omitempty"`
	// Answers are the words of the seller's page; nil where nothing is answered.
	Answers *AnswerWords `json:"answers,omitempty"`
}

// Add takes up blocks that say something.
func (d *Document) Add(blocks ...Block) {
	for _, b := range blocks {
		if b.Kind == "list" && len(b.Items) == 0 || b.Kind == "text" && b.Text == "" {
			continue
		}
		d.Blocks = append(d.Blocks, b)
	}
}

// Block is one piece of a document. Kind tells which of the other fields are used:
//
//	heading  Text, Level
//	text     Text, Tone
//	facts    Facts
//	list     Items
//	table    Table
//	caution  Signal, Text
//	photos   Photos
//	part     ID, Blocks: what belongs together on a page, and is answered as one
type Block struct {
	Kind   string   `json:"kind"`
	ID     string   `json:"id,omitempty"`
	Level  int      `json:"level,omitempty"` // 1 to 3
	Text   string   `json:"text,omitempty"`
	Tone   string   `json:"tone,omitempty"`   // "", small, strong
	Signal string   `json:"signal,omitempty"` // danger, warning, caution, notice
	Word   string   `json:"word,omitempty"`   // the signal word in the language
	Facts  []Fact   `json:"facts,omitempty"`
	Items  []string `json:"items,omitempty"`
	Table  *Table   `json:"table,omitempty"`
	Photos []Photo  `json:"photos,omitempty"`
	Blocks []Block  `json:"blocks,omitempty"`
	// Answer marks a part that the seller may answer line by line.
	Answer bool `json:"answer,omitempty"`
}

// Fact is a name with its value.
type Fact struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// Table has a head that is repeated on every page.
type Table struct {
	Title   string   `json:"title"` // for readers that cannot see it
	Columns []Column `json:"columns"`
	Rows    []Row    `json:"rows"`
}

// Column of a table. Share is its part of the width; the shares of a table sum to 100.
type Column struct {
	Title string `json:"title"`
	Right bool   `json:"right,omitempty"` // figures stand to the right
	Share int    `json:"share"`
}

// Row of a table; Cells has one text a column.
type Row struct {
	Cells []string `json:"cells"`
	// Kind: "", group (a heading within the table, in the first cell) or total.
	Kind string `json:"kind,omitempty"`
}

// Photo is a picture in the document. Key names the copy made for it, which holds
// neither place nor device; Missing tells that it is not on the device.
type Photo struct {
	Key     string `json:"key"` // SHA-256 of the original, lower-case hex
	Caption string `json:"caption"`
	// Pair tells that this photo and the next stand side by side, before and after.
	Pair    bool `json:"pair,omitempty"`
	Missing bool `json:"missing,omitempty"`
}

// AnswerWords are what the seller's page says around the answers.
type AnswerWords struct {
	Lead     string `json:"lead"`
	Agree    string `json:"agree"`
	Disagree string `json:"disagree"`
	Done     string `json:"done"` // already done
	Word     string `json:"word"` // label of his own words
	Photo    string `json:"photo"`
	Send     string `json:"send"`
	Sent     string `json:"sent"`
	Yours    string `json:"yours"`   // heads an answer given before
	Expires  string `json:"expires"` // pattern with a date
	// What is said of an answer that cannot be taken.
	TooLong  string `json:"too_long"`
	NoPhoto  string `json:"no_photo"`
	NoAnswer string `json:"no_answer"`
}
