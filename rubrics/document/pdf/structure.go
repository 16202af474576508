package pdf

import (
	"fmt"
	"strings"
)

// element is one node of the paper's logical structure (ISO 32000-1, 14.7), by
// which a screen reader tells heading, table and picture apart.
type element struct {
	role   string // a standard structure type: P, H1, Table, TD, Figure ...
	alt    string // what a picture shows, or what a table is called
	column bool   // a head cell of a column
	parent int
	kids   []kid
}

// kid is another element, or a piece of a page's content.
type kid struct {
	element int
	page    int // from 1
	content int
}

// structure is all elements; number 0 is the document.
type structure []element

func (s *structure) add(parent int, role string) int {
	n := len(*s)
	*s = append(*s, element{role: role, parent: parent})
	(*s)[parent].kids = append((*s)[parent].kids, kid{element: n})
	return n
}

// structured adds the structure to the objects of a file, its root last.
func (l *layout) structured(objects [][]byte) [][]byte {
	used := make([]bool, len(l.parts))
	for n := len(l.parts) - 1; n >= 0; n-- { // an element's parts have higher numbers
		for _, k := range l.parts[n].kids {
			used[n] = used[n] || k.page > 0 || used[k.element]
		}
	}
	used[0] = true
	first := len(objects) + 1
	number := make([]int, len(l.parts))
	next := first
	for n := range l.parts {
		if used[n] {
			number[n] = next
			next++
		}
	}
	root := next
	owners := make([][]int, len(l.pages)+1) // by page and content
	for n, e := range l.parts {
		if !used[n] {
			continue
		}
		parent := root
		if e.parent >= 0 {
			parent = number[e.parent]
		}
		o := fmt.Appendf(nil, "<</Type /StructElem /S /%s /P %d 0 R", e.role, parent)
		if e.role == "Table" && e.alt != "" || e.role == "Figure" {
			alt := e.alt
			if strings.TrimSpace(alt) == "" {
				alt = "–"
			}
			o = append(o, " /Alt "+hexText(alt)...)
		}
		if e.role == "TH" {
			scope := "Row"
			if e.column {
				scope = "Column"
			}
			o = append(o, " /A <</O /Table /Scope /"+scope+">>"...)
		}
		o = append(o, " /K ["...)
		for _, k := range e.kids {
			if k.page == 0 {
				if used[k.element] {
					o = fmt.Appendf(o, " %d 0 R", number[k.element])
				}
				continue
			}
			o = fmt.Appendf(o, " <</Type /MCR /Pg %d 0 R /MCID %d>>", 1+2*k.page, k.content)
			for len(owners[k.page]) <= k.content {
				owners[k.page] = append(owners[k.page], 0)
			}
			owners[k.page][k.content] = number[n]
		}
		objects = append(objects, append(o, " ]>>"...))
	}
	tree := []byte("<</Nums [")
	for page := 1; page < len(owners); page++ {
		tree = fmt.Appendf(tree, " %d [", page-1)
		for _, n := range owners[page] {
			tree = fmt.Appendf(tree, " %d 0 R", n)
		}
		tree = append(tree, " ]"...)
	}
	tree = append(tree, " ]>>"...)
	return append(objects, fmt.Appendf(nil, "<</Type /StructTreeRoot /K %d 0 R /ParentTree %s>>", first, tree))
}
