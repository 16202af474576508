package notice

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// sound says what is wrong with a list of proposals for a text, "" for nothing.
func sound(text string, ask Ask, all []Proposal) string {
	rubrics, counted := map[string]bool{}, map[string]int{}
	for _, k := range ask.Kinds {
		rubrics[k.ID] = true
	}
	for i, p := range all {
		set := 0
		for _, is := range []bool{p.Cents != nil, p.Quantity != nil, p.Number != nil, p.Text != ""} {
			if is {
				set++
			}
		}
		fact := strings.HasPrefix(p.Field, "fact/")
		switch {
		case set != 1:
			return "it has not one value"
		case p.Start < 0 || p.End <= p.Start || p.End > len(text) || text[p.Start:p.End] != p.Words:
			return "its words are not those of the text"
		case !strings.HasSuffix(p.Before, text[max(0, p.Start-1):p.Start]) && p.Start > 0 && text[p.Start-1] != '\n' && text[p.Start-1] != '\r':
			return "what stands before it does not"
		case !utf8.ValidString(p.Before + p.Words + p.After):
			return "a character is cut"
		case !fact && !slices.Contains(fields, p.Field):
			return "no field is called so"
		case p.Sure != Plain && p.Sure != Likely && p.Sure != Doubtful || p.Because == "":
			return "how sure it is, or why, is not said"
		case p.Cents != nil && (*p.Cents <= 0 || *p.Cents > mostCents):
			return "it is no price"
		case p.Quantity != nil && !(p.Quantity.N > 0 && p.Quantity.N <= 1e9 && p.Quantity.Unit != ""):
			return "it is no quantity"
		case p.Field == "made" && (*p.Number < 1900 || *p.Number > 2100), p.Field == "phases" && *p.Number != 1 && *p.Number != 3,
			p.Field == "hours" && (*p.Number < 10 || *p.Number > 1e9):
			return "the number is out of reach"
		case p.Field == "rubric" && !rubrics[p.Text]:
			return "it is no kind that is known"
		case i > 0 && p.Field == all[i-1].Field && rank(p.Sure) < rank(all[i-1].Sure):
			return "the surest does not come first"
		}
		if counted[p.Field]++; counted[p.Field] > mostOf {
			return "there are too many of one field"
		}
	}
	return ""
}

// FuzzRead: whatever the text, the proposals are sound, and the same again.
func FuzzRead(f *testing.F) {
	for _, c := range inchListings {
		f.Add(c.text, true)
	}
	for _, c := range metricListings {
		f.Add(c.text, false)
	}
	for _, c := range pages {
		f.Add(c.text, true)
	}
	f.Add("\u202e$\u200b2\u00a0400\u2028’98 ½\" 3Ø Ø ~ 1/0 hp", true)
	for _, text := range []string{"press 1ton$20!New$0", "1,000h", "LoCAtion BA,", "0\"X0 X10"} { // once read wrongly
		f.Add(text, false)
	}
	f.Fuzz(func(t *testing.T, text string, inch bool) {
		ask := shop()
		if !inch {
			ask = metricShop()
		}
		all, err := Read(text, ask)
		var e *Error
		if errors.As(err, &e) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if what := sound(text, ask, all); what != "" {
			t.Fatalf("%s: %+v\n%q", what, all, text)
		}
		again, _ := Read(text, ask)
		if len(again) != len(all) {
			t.Fatalf("%d proposals, then %d", len(all), len(again))
		}
		for i := range all {
			if !again[i].says(&all[i]) || again[i].Start != all[i].Start {
				t.Fatalf("%+v, then %+v", all[i], again[i])
			}
		}
	})
}

// hostile texts are made to be costly: long runs of what a reader looks around at.
var hostile = []string{
	"1", "1 ", "1-", "1.", "1,", "1/", "555-123-", "$", "$1 ", "$1-", "asking ", "was 3000 ", "a@", "a@b.", "1x", "1 x ", "x ", "9000 lb ", "9k ", "'98 ", "11'10\" ",
	"single ", "single phase ", "1/1/60 ", "220V/", "2009 ", "made ", "in ", "in A ", "In ", "A, OH ", "OH ", "Located in ", "St. ", "two ", "two post ", "two-", "(", ")", "\"", "hour meter ", "hours:", "\n", "\n1", "é", "\u200b", "½", "Ø", "http://", "www.a ", "March ", "15 March ", "model ", "no. ", "#", "1 1/2 ", "1 000 ", "lathe ", "overall ", "Knee mill 3 phase ", "9x42 ",
}

// TestHostile: a hundred thousand bytes of anything come to an end, and to
// something sound. How the time grows, BenchmarkHostile tells.
func TestHostile(t *testing.T) {
	for _, piece := range hostile {
		text := strings.Repeat(piece, MaxText/len(piece))
		all, err := Read(text, shop())
		if err != nil {
			t.Fatalf("%q: %v", piece, err)
		}
		if what := sound(text, shop(), all); what != "" {
			t.Errorf("%q: %s", piece, what)
		}
	}
}

func BenchmarkHostile(b *testing.B) {
	for _, size := range []int{MaxText / 10, MaxText} {
		for _, piece := range hostile {
			text := strings.Repeat(piece, size/len(piece))
			b.Run(strings.TrimSpace(piece)+"/"+map[bool]string{true: "all", false: "tenth"}[size == MaxText], func(b *testing.B) {
				b.SetBytes(int64(size))
				for b.Loop() {
					if _, err := Read(text, shop()); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func TestReadRefuses(t *testing.T) {
	var e *Error
	if _, err := Read(strings.Repeat("x", MaxText+1), shop()); !errors.As(err, &e) || e.Right == "" {
		t.Error(err)
	}
	if _, err := Read("lift \xff", shop()); !errors.As(err, &e) {
		t.Error(err)
	}
}
