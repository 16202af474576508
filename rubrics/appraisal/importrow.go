package appraisal

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// rows reads every row of the table, and notes at the end what held for many.
func (m *importing) rows(out *Import) {
	t := m.table
	if _, ok := m.at["price"]; !ok {
		m.problems.Add(t.Head, "", "no column is taken as the price, so no row is read: choose the one that holds it")
		return
	}
	if out.Total == 0 {
		m.problems.Add(t.Head, "", "there are no rows below the names of the columns")
	}
	met := map[string]tally{}
	for k, cells := range t.Rows {
		line := t.Lines[k]
		id := fmt.Sprintf("csv-%016x", hash(strings.Join(cells, "\x1f")))
		same := met[id]
		same.add(line)
		met[id] = same
		if same.n > 1 {
			id += "-" + strconv.Itoa(same.n)
		}
		c, ok := m.row(cells, line)
		if !ok {
			continue
		}
		if same.n > 1 {
			m.problems.Add(line, "", say.Later("every cell is as on line %d: leave one out if it is the same offer", same.line))
		}
		c.ID = id
		out.Rows = append(out.Rows, c)
		out.Lines = append(out.Lines, line)
	}
	out.Read = len(out.Rows)
	if u := m.unspoken; u.n > 0 {
		_, name := m.column("price")
		m.problems.Add(u.line, name, u.says(
			say.Later("nothing says whether the price was asked or paid, here: taken as asked"),
			say.Later("nothing says whether the price was asked or paid, here and in one more row: taken as asked"),
			say.Later("nothing says whether the price was asked or paid, here and in %d more rows: taken as asked", u.n-1)))
	}
	if u := m.unitless; u.n > 0 {
		_, name := m.column("distance")
		m.problems.Add(u.line, name, u.says(
			say.Later("the distance has no unit, here, and is not read: write mi or km into the name of the column"),
			say.Later("the distance has no unit, here and in one more row, and is not read: write mi or km into the name of the column"),
			say.Later("the distance has no unit, here and in %d more rows, and is not read: write mi or km into the name of the column", u.n-1)))
	}
}

// says gives the text for one row, for two, and for more.
func (c tally) says(one, two, more say.Text) say.Text {
	switch c.n {
	case 1:
		return one
	case 2:
		return two
	}
	return more
}

// row reads one row; ok is false where its price cannot be read.
func (m *importing) row(cells []string, line int) (c Comparable, ok bool) {
	// read gives the cell of a field to f and notes what f says against it.
	read := func(field string, f func(cell string) error) bool {
		i, mapped := m.at[field]
		if !mapped || field != "price" && unsaid(cells[i]) {
			return true
		}
		if err := f(cells[i]); err != nil {
			m.problems.Add(line, m.table.Columns[i], err)
			return false
		}
		return true
	}
	if !read("price", func(cell string) (err error) { c.Price, err = m.price(cell); return err }) {
		return c, false
	}
	told := read("basis", func(cell string) (err error) { c.Basis, err = m.basisWord(cell); return err })
	if c.Basis == "" {
		if c.Basis = m.basis; told && !m.basisSaid {
			m.unspoken.add(line)
		}
	}
	read("date", func(cell string) (err error) { c.Date, err = table.Date(cell, m.dayFirst); return err })
	read("made", func(cell string) (err error) { c.Made, err = yearMade(cell, m.decimalComma); return err })
	read("hours", func(cell string) (err error) { c.Hours, err = m.hours(cell); return err })
	read("capacity", func(cell string) (err error) { c.Capacity, err = m.size(cell); return err })
	read("distance", func(cell string) (err error) { c.Distance, err = m.way(cell, line); return err })
	read("condition", func(cell string) (err error) {
		c.Condition, err = conditionWord(cell)
		return err
	})
	read("complete", func(cell string) (err error) {
		c.Complete, err = completeWord(cell)
		return err
	})
	for _, f := range []struct {
		field string
		into  *string
		most  int
	}{{"title", &c.Title, 300}, {"maker", &c.Maker, table.MaxCell}, {"place", &c.Place, table.MaxCell}, {"seen", &c.Seen, table.MaxCell}} {
		read(f.field, func(cell string) error {
			*f.into = oneLine(cell, f.most)
			if whole := oneLine(cell, table.MaxCell); whole != *f.into {
				return say.Errorf("%d characters, at most %d: the rest is cut off", len([]rune(whole)), f.most)
			}
			return nil
		})
	}
	read("note", func(cell string) error { c.Note = strings.TrimSpace(visible(cell, true)); return nil })
	if c.Title == "" {
		c.Title = oneLine(c.Maker+" "+m.rubric.Kind, 300)
	}
	return c, true
}

// oneLine makes one line of at most n characters.
func oneLine(s string, n int) string {
	s = strings.Join(strings.Fields(visible(s, false)), " ")
	if r := []rune(s); len(r) > n {
		s = strings.TrimSpace(string(r[:n]))
	}
	return s
}

// visible turns control characters, which steer terminals, into blanks.
func visible(s string, lines bool) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsControl(c) && !(lines && c == '\n') {
			return ' '
		}
		return c
	}, s)
}
