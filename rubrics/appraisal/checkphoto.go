package appraisal

import (
	"fmt"
	"slices"
	"strings"

	"asfound/rubrics/say"
)

// Bounds of what is drawn over one photo, and of the pairs of one finding.
const (
	mostMarks     = 40
	mostMarkLabel = 60
	mostPairs     = 40
	mostLength    = 1e6
)

// markKinds and lengthUnits in the order in which a message names them.
var (
	markKinds   = []string{"arrow", "circle", "text", "scale", "measure"}
	lengthUnits = []string{"mm", "cm", "m", "in", "ft"}
)

// isHash tells whether s is a SHA-256 in lower-case hex.
func isHash(s string) bool {
	for _, c := range []byte(s) {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return len(s) == 64
}

func checkHash(field, hash string) error {
	if !isHash(hash) {
		return refuse(field, "64 lower-case hex digits", "%.20q is no photo hash", hash)
	}
	return nil
}

func checkPhotos(field string, photos []Photo) error {
	for i, p := range photos {
		at := fmt.Sprintf("%s[%d]", field, i)
		if err := checkHash(at+".hash", p.Hash); err != nil {
			return err
		}
		if err := checkMarks(at+".marks", p.Marks); err != nil {
			return err
		}
	}
	return nil
}

func checkMarks(field string, marks []PhotoMark) error {
	if n := len(marks); n > mostMarks {
		return refuse(field, say.Later("at most %d on a photo", mostMarks), "%d are too many", n)
	}
	seen := map[string]bool{}
	scaled := false
	for i := range marks {
		m := &marks[i]
		at := fmt.Sprintf("%s[%d]", field, i)
		if err := m.check(at); err != nil {
			return err
		}
		switch {
		case seen[m.ID]:
			return refuse(at+".id", "give each its own", "%.40q stands twice", m.ID)
		case m.Kind == "scale" && scaled:
			return refuse(at, "one scale on a photo", "this is a second one")
		}
		seen[m.ID] = true
		scaled = scaled || m.Kind == "scale"
	}
	return nil
}

func (m *PhotoMark) check(field string) error {
	if m.ID == "" || len(m.ID) > 40 {
		return refuse(field+".id", "1 to 40 characters", "%.40q is no id", m.ID)
	}
	if !slices.Contains(markKinds, m.Kind) {
		return refuse(field+".kind", say.Later("one of %s", strings.Join(markKinds, ", ")), "%.40q is no mark", m.Kind)
	}
	for i, end := range [][2]float64{m.From, m.To} {
		for _, share := range end {
			if !(share >= 0 && share <= 1) {
				return refuse(field+[]string{".from", ".to"}[i], "0 to 1, a share of the picture's width and height", "%g lies outside of the picture", share)
			}
		}
	}
	if err := checkText(field+".label", m.Label, mostMarkLabel); err != nil {
		return err
	}
	switch {
	case m.Kind == "text" && m.Label == "":
		return refuse(field+".label", "the words to be shown", "a text without words")
	case m.Kind != "scale" && m.Length != nil:
		return refuse(field+".length", "a length on the scale alone", "what is measured by a scale is worked out from it")
	case m.Kind != "scale":
		return nil
	case m.From == m.To:
		return refuse(field, "two ends apart from each other", "the scale has no length in the picture")
	case m.Length == nil:
		return refuse(field+".length", "how long it is, such as 2 in", "the scale says no length")
	case !slices.Contains(lengthUnits, m.Length.Unit):
		return refuse(field+".length.unit", say.Later("one of %s", strings.Join(lengthUnits, ", ")), "%.20q is no unit of length here", m.Length.Unit)
	case !(m.Length.N > 0 && m.Length.N <= mostLength):
		return refuse(field+".length", "more than 0 and at most 1,000,000", "%g is no length", m.Length.N)
	}
	return nil
}

// checkPairs holds that both photos of a pair belong to the finding: a pair of
// other pictures would prove nothing of it.
func checkPairs(field string, x Finding) error {
	if n := len(x.Pairs); n > mostPairs {
		return refuse(field, say.Later("at most %d of a finding", mostPairs), "%d are too many", n)
	}
	for i, p := range x.Pairs {
		at := fmt.Sprintf("%s[%d]", field, i)
		for _, side := range []struct{ name, hash string }{{"before", p.Before}, {"after", p.After}} {
			if err := checkHash(at+"."+side.name, side.hash); err != nil {
				return err
			}
			if !slices.ContainsFunc(x.Photos, func(photo Photo) bool { return photo.Hash == side.hash }) {
				return refuse(at+"."+side.name, "a photo of the same finding", "%.12s is none of its photos", side.hash)
			}
		}
		if p.Before == p.After {
			return refuse(at, "two different photos", "before and after are the same one")
		}
	}
	return nil
}
