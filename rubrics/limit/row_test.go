package limit

import (
	"math"
	"strings"
	"testing"
)

// given is the values of one call, written "name=value; name=value".
type given string

func (g given) values() map[string]string {
	out := map[string]string{}
	for _, part := range strings.Split(string(g), ";") {
		if k, v, ok := strings.Cut(part, "="); ok {
			out[strings.TrimSpace(k)] = strings.TrimSpace(v)
		}
	}
	return out
}

// row is one check value: the id, what goes in, what must come out.
type row struct {
	id      string
	given   given
	value   float64
	unit    string
	finding Finding
	more    map[string]float64 // further figures by title
}

// check runs the rows of one limit. tol is the relative tolerance of a value,
// 0.1 % where the source prints rounded figures.
func check(t *testing.T, name string, tol float64, rows []row) {
	t.Helper()
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			res, err := Compute(name, r.given.values())
			if err != nil {
				t.Fatalf("%s: %v", r.given, err)
			}
			if res.Finding != r.finding {
				t.Errorf("%s: %s, want %s (%s)", r.given, res.Finding, r.finding, res.Text)
			}
			near(t, r.id, res.Value, r.value, tol)
			if res.Unit != r.unit {
				t.Errorf("unit %q, want %q", res.Unit, r.unit)
			}
			for title, want := range r.more {
				got, ok := further(res, title)
				if !ok {
					t.Errorf("no further figure %q in %v", title, res.More)
					continue
				}
				near(t, title, got.Value, want, tol)
			}
		})
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol*math.Abs(want)+1e-12 {
		t.Errorf("%s: %v, want %v within %v %%", what, got, want, tol*100)
	}
}

func further(res Result, title string) (Figure, bool) {
	for _, f := range res.More {
		if f.Title == title {
			return f, true
		}
	}
	return Figure{}, false
}

// refusal is one bad input and what its error must name and say.
type refusal struct {
	given    given
	quantity string
	says     string
}

func refuses(t *testing.T, name string, cases []refusal) {
	t.Helper()
	for _, c := range cases {
		res, err := Compute(name, c.given.values())
		e, ok := err.(*Error)
		switch {
		case err == nil:
			t.Errorf("%s %s gave %q", name, c.given, res.Text)
		case !ok:
			t.Errorf("%s %s: error of type %T", name, c.given, err)
		case e.Quantity != c.quantity || !strings.Contains(e.Error(), c.says):
			t.Errorf("%s %s: %q, want it to name %q and say %q", name, c.given, e, c.quantity, c.says)
		case e.What == "" || e.Right == "":
			t.Errorf("%s %s: %q lacks what happened or what would be right", name, c.given, e)
		}
	}
}

// held is one value with the limit it is held against and the standing of that.
type held struct {
	id     string
	given  given
	limit  float64
	unit   string
	status Status
}

func holds(t *testing.T, name string, cases []held) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.id, func(t *testing.T) {
			res, err := Compute(name, c.given.values())
			if err != nil || res.Limit == nil {
				t.Fatalf("%s: %v, held against %v", c.given, err, res.Limit)
			}
			near(t, c.id, *res.Limit, c.limit, 1e-9)
			if res.Unit != c.unit || res.Status != c.status {
				t.Errorf("%s: in %q, %s; want %q, %s", c.given, res.Unit, res.Status, c.unit, c.status)
			}
		})
	}
}

// saying is one result that is words: each further text by its title.
type saying struct {
	id    string
	given given
	texts map[string]string
}

func says(t *testing.T, name string, cases []saying) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.id, func(t *testing.T) {
			res, err := Compute(name, c.given.values())
			if err != nil {
				t.Fatalf("%s: %v", c.given, err)
			}
			if res.Finding != Computed || res.Limit != nil {
				t.Errorf("%s: %s against %v, want words alone", c.given, res.Finding, res.Limit)
			}
			for title, want := range c.texts {
				if f, ok := further(res, title); !ok || f.Text != want {
					t.Errorf("%s: %s is %q, want %q", c.given, title, f.Text, want)
				}
			}
		})
	}
}

// must computes what cannot be refused.
func must(t *testing.T, name string, g given) Result {
	t.Helper()
	res, err := Compute(name, g.values())
	if err != nil {
		t.Fatalf("%s %s: %v", name, g, err)
	}
	return res
}

// notes gives the notes of a result in one line.
func notes(t *testing.T, name string, g given) string {
	t.Helper()
	return strings.Join(must(t, name, g).Notes, " ")
}
