package table

import (
	"strings"

	"asfound/rubrics/say"
)

// DecimalComma tells whether the numbers among the cells have a decimal comma:
// what most of those show that can be read in one way only ("12,5", "1.234,50"
// against "12.5", "1,234.50"). It is false where none shows it.
func DecimalComma(cells []string) bool {
	comma, point := Marks(cells)
	return comma > point
}

// Marks counts the cells that show a decimal comma, and those that show a
// decimal point. A unit after the number does not matter.
func Marks(cells []string) (comma, point int) {
	for _, c := range cells {
		switch shown(c) {
		case ',':
			comma++
		case '.':
			point++
		}
	}
	return comma, point
}

// shown is the decimal mark that a cell shows, 0 for none.
func shown(cell string) byte {
	if len(cell) > maxNumberText || strings.IndexByte(cell, ',') < 0 && strings.IndexByte(cell, '.') < 0 {
		return 0
	}
	f, why := takeApart(cell)
	if why != fine {
		f, why = takeApart(strings.TrimRightFunc(cell, func(c rune) bool { return c < '0' || c > '9' }))
	}
	if why != fine {
		return 0
	}
	return f.shows()
}

// decide finds the decimal mark of the whole table, and notes the columns of
// numbers that contradict themselves.
func (t *Table) decide(problems *Problems) {
	var comma, point int
	for i, name := range t.Columns {
		c, p := 0, 0
		first := map[byte]int{}
		for k, row := range t.Rows {
			mark := shown(row[i])
			if mark == 0 {
				continue
			}
			if mark == ',' {
				c++
			} else {
				p++
			}
			if _, met := first[mark]; !met {
				first[mark] = k
			}
		}
		comma, point = comma+c, point+p
		if c == 0 || p == 0 || !t.numeric(i) {
			continue
		}
		later, earlier := first[','], first['.']
		text := say.Later("%s has a decimal comma and %s above it a decimal point: each is read as written, so look at numbers like 1,234", quote(t.Rows[later][i]), quote(t.Rows[earlier][i]))
		if later < earlier {
			later, earlier = earlier, later
			text = say.Later("%s has a decimal point and %s above it a decimal comma: each is read as written, so look at numbers like 1,234", quote(t.Rows[later][i]), quote(t.Rows[earlier][i]))
		}
		problems.Add(t.Lines[later], name, text)
	}
	t.Decided = comma != point
	t.DecimalComma = comma > point || comma == point && t.Separator == ';'
}

// numeric tells whether at least half of what a column holds is numbers.
func (t *Table) numeric(i int) bool {
	numbers, all := 0, 0
	for _, row := range t.Rows {
		if strings.TrimSpace(row[i]) == "" {
			continue
		}
		all++
		if _, why := takeApart(row[i]); why == fine {
			numbers++
		}
	}
	return 2*numbers >= all
}
