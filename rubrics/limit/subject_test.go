package limit

import (
	"strings"
	"testing"
)

// Every limit stands under one subject, and no subject names a limit there is not.
func TestSubjects(t *testing.T) {
	names := map[string]bool{}
	for _, d := range All() {
		names[d.Name] = true
		if d.Subject == "" {
			t.Errorf("%s stands under no subject", d.Name)
		}
	}
	seen, ids := map[string]string{}, map[string]bool{}
	for _, s := range Subjects() {
		if s.ID == "" || s.Title == "" || len(s.Limits) == 0 || ids[s.ID] {
			t.Errorf("subject %q lacks id, title or limits, or its id is taken", s.ID)
		}
		ids[s.ID] = true
		for _, n := range s.Limits {
			if !names[n] {
				t.Errorf("%s names %q, which is no limit", s.ID, n)
			}
			if seen[n] != "" {
				t.Errorf("%s stands under %s and %s", n, seen[n], s.ID)
			}
			seen[n] = s.ID
		}
	}
	for _, d := range All() {
		if seen[d.Name] != d.Subject {
			t.Errorf("%s says %q and stands under %q", d.Name, d.Subject, seen[d.Name])
		}
	}
	Subjects()[0].Limits[0] = "changed"
	if Subjects()[0].Limits[0] == "changed" {
		t.Error("Subjects hands out the table itself")
	}
}

// Of quantities marked as alternatives at least one is needed: without any the
// limit asks for one of them.
func TestEither(t *testing.T) {
	without := map[string][]string{
		"thread":          {"diameter=8 mm"},
		"thread-strength": {"diameter=1/2 in"},
		"thread-insert":   {"diameter=1/2 in"},
		"axle-load":       {"weight=6000 lb"},
		"press-distance":  {"device=presence-sensing", "device=full-revolution"},
	}
	for _, d := range All() {
		groups := map[string][]string{}
		for _, q := range d.Quantities {
			if q.Either != "" {
				groups[q.Either] = append(groups[q.Either], q.Name)
				if !q.Optional || q.Default != "" {
					t.Errorf("%s: %s is an alternative and yet asked for by itself", d.Name, q.Name)
				}
			}
		}
		if (len(groups) > 0) != (without[d.Name] != nil) {
			t.Errorf("%s has alternatives and no case here, or the other way round", d.Name)
		}
		for group, members := range groups {
			if len(members) < 2 {
				t.Errorf("%s: %s is an alternative to nothing", d.Name, group)
			}
			for _, text := range without[d.Name] {
				_, err := Compute(d.Name, given(text).values())
				e, ok := err.(*Error)
				if !ok || !strings.Contains(" "+strings.Join(members, " ")+" ", " "+e.Quantity+" ") {
					t.Errorf("%s %s: %v does not ask for one of %v", d.Name, text, err, members)
				}
			}
		}
	}
}

// Words of the shop belong to a limit that there is, and say what its title does not.
func TestCalled(t *testing.T) {
	titles := map[string]string{}
	for _, d := range All() {
		titles[d.Name] = strings.ToLower(d.Title)
	}
	for name, words := range called {
		title, ok := titles[name]
		if !ok || len(words) == 0 {
			t.Errorf("%s is no limit, or has no words", name)
		}
		for _, w := range words {
			if strings.Contains(title, w) {
				t.Errorf("%s: its title has %q already", name, w)
			}
		}
	}
}
