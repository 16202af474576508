package rubrics

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
)

func TestFixtureDecodes(t *testing.T) {
	r, err := Decode("small.yaml", []byte(fixture), fixtureOptions)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.Scrap.Value.Likely; got != 200 {
		t.Errorf("an amount of 2 is %d cents, want 200", got)
	}
	if got := r.Sections[1].Checks[0].When["drive"]; len(got) != 1 || got[0] != "belt" {
		t.Errorf("when = %v", got)
	}
}

// Each row breaks one thing; the place, field and words are what a person gets.
func TestBadFiles(t *testing.T) {
	rows := []struct {
		name, old, text string
		place, field    string
		says            string // part of what: right
	}{
		{"bad id", "id: small", "id: Small One", "1:5", "id", `"Small One" is no id: small letters, digits and single hyphens`},
		{"version 0", "version: 1", "version: 0", "2:10", "version", "0 is out of range: at least 1"},
		{"text for number", "version: 1", "version: one", "2:10", "version", `"one" is a text: write a whole number`},
		{"fraction for whole", "version: 1", "version: 1.5", "2:10", "version", `"1.5" is a number: write a whole number`},
		{"octal", "version: 1", "version: 010", "2:10", "version", "without leading 0"},
		{"number for text", "kind: Small machine", "kind: 12", "3:7", "kind", `put it in quotes: "12"`},
		{"truth for text", "kind: Small machine", "kind: true", "3:7", "kind", "read as true or false"},
		{"blank text", "kind: Small machine", `kind: "  "`, "3:7", "kind", "only blanks"},
		{"escaped control", "kind: Small machine", `kind: "a\x07b"`, "3:7", "kind", "control character U+0007"},
		{"raw control", "kind: Small machine", "kind: Small\x01machine", "3:12", "", "control character U+0001"},
		{"tab", "kind: Small machine", "\tkind: Small machine", "3:1", "", "U+0009: delete it; indent with spaces"},
		{"direction mark", "kind: Small machine", "kind: Small\u202emachine", "3:12", "", "U+202E"},
		{"broken UTF-8", "kind: Small machine", "kind: Sm\xffll", "3:9", "", "byte 0xff is not UTF-8 text"},
		{"too long", "kind: Small machine", "kind: " + strings.Repeat("x", 61), "3:7", "kind", "has 61 characters: at most 60"},
		{"unknown key", "kind: Small machine", "kind: Small machine\ncolour: red", "4:1", "colour", "is no key of this place: one of id, version"},
		{"key twice", "kind: Small machine", "kind: Small machine\nkind: Big", "4:1", "", `mapping key "kind" already defined`},
		{"missing key", "kind: Small machine\n", "", "1:1", "kind", "is missing: write a text"},
		{"empty value", "kind: Small machine", "kind:", "3:6", "kind", "is empty: write a text"},
		{"list for text", "kind: Small machine", "kind: [a]", "3:7", "kind", "is a list: write a text"},
		{"empty list", "cautions: [Stand clear.]", "cautions: []", "5:11", "cautions", "has 0 entries: at least 1"},
		{"group for list", "cautions: [Stand clear.]", "cautions: {a: b}", "5:11", "cautions", "is a group of keys: write a list"},
		{"not a number", "exponent: 0.6", "exponent: .nan", "6:45", "capacity.exponent", "no finite number"},
		{"infinite", "exponent: 0.6", "exponent: .inf", "6:45", "capacity.exponent", "no finite number"},
		{"too big for a float", "exponent: 0.6", "exponent: 1e999", "6:45", "capacity.exponent", "write a number"},
		{"exponent range", "exponent: 0.6", "exponent: 6", "6:45", "capacity.exponent", "6 is out of range: at most 1.2"},
		{"order of years", "likely: 20, high: 30", "likely: 5, high: 30", "7:25", "life.likely", "5 is less than low: low, likely, high must not fall"},
		{"order of amounts", "value: {low: 1, likely: 2, high: 3}", "value: {low: 1, likely: 2, high: 1.50}", "10:36", "scrap.value.high", "1.50 is less than likely"},
		{"amount of three decimals", "value: {low: 1, likely: 2, high: 3}", "value: {low: 1, likely: 2, high: 3.125}", "10:36", "scrap.value.high", `"3.125" is no amount: write it like 180 or 12.50`},
		{"amount as text", "value: {low: 1, likely: 2, high: 3}", "value: {low: $1, likely: 2, high: 3}", "10:16", "scrap.value.low", `"$1" is a text: write an amount`},
		{"negative amount", "value: {low: 1, likely: 2, high: 3}", "value: {low: -1, likely: 2, high: 3}", "10:16", "scrap.value.low", "-1.00 is out of range: at least 0"},
		{"column after wide letters", "value: {low: 1, likely: 2, high: 3}", "value: {low: 1, \"é\": 1, likely: 2, high: 3}", "10:19", "scrap.value.é", "is no key of this place"},
		{"prior sum", "[0.3, 0.5, 0.2]", "[0.3, 0.5, 0.3]", "14:14", "care.prior.private", "sums to 1.1: well kept, ordinary and neglected sum to 1"},
		{"prior too short", "[0.3, 0.5, 0.2]", "[0.5, 0.5]", "14:14", "care.prior.private", "has 2 entries: write a list of exactly 3 numbers"},
		{"prior too long", "[0.3, 0.5, 0.2]", "[0.3, 0.5, 0.1, 0.1]", "14:14", "care.prior.private", "has 4 entries"},
		{"prior negative", "[0.3, 0.5, 0.2]", "[-0.3, 1.1, 0.2]", "14:15", "care.prior.private[0]", "-0.3 is no open probability: more than 0 and less than 1"},
		{"prior ruled out", "[0.3, 0.5, 0.2]", "[0.5, 0.5, 0]", "14:25", "care.prior.private[2]", "0 is no open probability: more than 0 and less than 1, or no finding could change it"},
		{"prior certain", "[0.3, 0.5, 0.2]", "[1, 0.5, 0.2]", "14:15", "care.prior.private[0]", "1 is no open probability"},
		{"prior not a number", "[0.3, 0.5, 0.2]", "[.nan, 0.5, 0.2]", "14:15", "care.prior.private[0]", "no finite number"},
		{"prior in per cent", "[0.3, 0.5, 0.2]", "[30, 50, 20]", "14:14", "care.prior.private", "sums to 100: well kept, ordinary and neglected sum to 1"},
		{"prior of nobody", "    private:", "    uncle: [0.3, 0.5, 0.2]\n    private:", "14:12", "care.prior.uncle", `"uncle" is not known: one of private, dealer, auction, closing`},
		{"no private seller", "    private:", "    dealer:", "14:5", "care.prior.private", "is missing: a private seller"},
		{"falling chances", "bad: [0.03, 0.1, 0.3]", "bad: [0.3, 0.1, 0.03]", "15:8", "care.bad", "0.3, 0.1, 0.03 do not rise: well kept < ordinary < neglected"},
		{"certain", "bad: [0.03, 0.1, 0.3]", "bad: [0.03, 0.1, 1]", "15:20", "care.bad[2]", "1 is out of range: less than 1"},
		{"impossible", "bad: [0.03, 0.1, 0.3]", "bad: [0, 0.1, 0.3]", "15:9", "care.bad[0]", "0 is out of range: more than 0"},
		{"level chances", "bad: [0.03, 0.1, 0.3]", "bad: [0.03, 0.1, 0.1]", "15:8", "care.bad", "0.03, 0.1, 0.1 do not rise"},
		{"none failed", "failed: 0.25", "failed: 0", "16:11", "care.failed", "0 is out of range: more than 0"},
		{"all failed", "failed: 0.25", "failed: 1", "16:11", "care.failed", "1 is out of range: less than 1"},
		{"failed left out", "  failed: 0.25\n", "", "13:3", "care.failed", "is missing: write a number"},
		{"old is better", "failed: 0.25", "failed: 0.25\n  older: {after: 15, odds: [1.4, 1, 0.7]}", "17:28", "care.older.odds", "1.4, 1, 0.7 do not rise: well kept < ordinary < neglected"},
		{"odds of nothing", "failed: 0.25", "failed: 0.25\n  older: {after: 15, odds: [0, 1, 1.4]}", "17:29", "care.older.odds[0]", "0 is out of range: more than 0"},
		{"older than new", "failed: 0.25", "failed: 0.25\n  older: {after: 0, odds: [0.7, 1, 1.4]}", "17:18", "care.older.after", "0 is out of range: more than 0"},
		{"a check's chances fall", "remedies: {failed: scrap}", "remedies: {failed: scrap}\n        bad: [0.1, 0.3, 0.2]", "70:14", "sections[0].checks[0].bad", "0.1, 0.3, 0.2 do not rise: well kept < ordinary < neglected"},
		{"a check is never bad", "remedies: {failed: scrap}", "remedies: {failed: scrap}\n        bad: [0, 0.1, 0.2]", "70:15", "sections[0].checks[0].bad[0]", "0 is out of range: more than 0"},
		{"a check is always bad", "remedies: {failed: scrap}", "remedies: {failed: scrap}\n        bad: [0.1, 0.2, 1]", "70:25", "sections[0].checks[0].bad[2]", "1 is out of range: less than 1"},
		{"option twice", "id: gear", "id: belt", "22:14", "facts[0].options[1].id", `"belt" stands twice`},
		{"one option", "      - {id: gear, title: Gear}\n", "", "21:7", "facts[0].options", "has 1 entries: at least 2"},
		{"hours without rate", "cost: {low: 0, likely: 1, high: 2}, hours: {low: 0, likely: 0, high: 0}}", "cost: {low: 0, likely: 1, high: 2}, hours: {low: 0, likely: 0, high: 1}}", "24:5", "landing[0].rate", "hours need a rate"},
		{"unknown need", "needs: [lock]", "needs: [lift]", "30:13", "preparations[0].needs[0]", `"lift" is no preparation of this file: one of drain, lock`},
		{"circle", "high: 0}, rate: own}", "high: 0}, rate: own, needs: [drain]}", "30:12", "preparations[0].needs", `"drain" needs itself in the end: break the circle`},
		{"unknown part", "part: pin", "part: pim", "39:24", "remedies[0].ways[0].parts[0].part", `"pim" is not in the price book`},
		{"part twice", "[{part: pin, quantity: 2}]", "[{part: pin, quantity: 2}, {part: pin, quantity: 1}]", "39:50", "remedies[0].ways[0].parts[1].part", "stands twice: add the quantities up"},
		{"unknown preparation", "preparations: [drain]", "preparations: [dry]", "42:24", "remedies[0].ways[0].preparations[0]", `"dry" is no preparation of this file`},
		{"way twice", "id: made", "id: bought", "43:13", "remedies[0].ways[1].id", `"bought" stands twice`},
		{"own work hired", "kind: buy", "kind: hire", "41:15", "remedies[0].ways[0].rate", `"own" is not hired: a trade's rate`},
		{"make unfounded", "kind: make", "kind: hire", "49:11", "remedies[0].ways[1].make", `belongs to a way of kind make, this one is "hire"`},
		{"make missing", "kind: buy", "kind: make", "36:9", "remedies[0].ways[0].make", "is missing: needed where kind is make"},
		{"unknown kind", "kind: buy", "kind: steal", "37:15", "remedies[0].ways[0].kind", `"steal" is not known: one of buy, make, hire`},
		{"no feed", "feed: 0.01", "feed: 0", "55:70", "remedies[0].ways[1].make.cuts[0].feed", "0 is out of range: more than 0"},
		{"reserved id", "id: new-pin", "id: scrap", "33:9", "remedies[0].id", "reserved word"},
		{"check twice", "id: rope-size", "id: plate", "74:13", "sections[1].checks[0].id", `"plate" stands twice`},
		{"both weights 0", "weight: {safety: 1, condition: 1}", "weight: {safety: 0, condition: 0}", "65:17", "sections[0].checks[0].weight", "both weights are 0: at least one"},
		{"weight above 100", "weight: {safety: 5, condition: 2}", "weight: {safety: 500, condition: 2}", "78:26", "sections[1].checks[0].weight.safety", "500 is out of range: at most 100"},
		{"danger without caution", "        caution: Locked out.\n", "", "74:9", "sections[1].checks[0].caution", "is missing: needed where hazard is danger"},
		{"no failed text", "{sound: There, failed: Gone}", "{sound: There}", "68:17", "sections[0].checks[0].grades.failed", "is missing: write a text"},
		{"remedy for nothing", "remedies: {failed: scrap}", "remedies: {worn: scrap, failed: scrap}", "69:26", "sections[0].checks[0].remedies.worn", "does not offer the grade worn"},
		{"unknown remedy", "remedies: {failed: scrap}", "remedies: {failed: pray}", "69:28", "sections[0].checks[0].remedies.failed", `"pray" is no remedy of this file: scrap or one of new-pin`},
		{"unknown fact", "when: {drive: [belt]}", "when: {colour: [belt]}", "82:24", "sections[1].checks[0].when.colour", `"colour" is no fact of this file`},
		{"unknown option", "when: {drive: [belt]}", "when: {drive: [rope]}", "82:24", "sections[1].checks[0].when.drive[0]", `"rope" is no option of drive of this file: one of belt, gear`},
		{"never shown", "when: {drive: [belt]}", "when: {drive: []}", "82:23", "sections[1].checks[0].when.drive", "would never be shown"},
		{"unknown limit", "name: rope-diameter", "name: rope-colour", "85:23", "sections[1].checks[0].limit.name", `"rope-colour" is no measured limit: one of`},
		{"unknown quantity", "ask: [nominal, measured]", "ask: [nominal, measured, length]", "85:63", "sections[1].checks[0].limit.ask[2]", `"length" is no quantity of rope-diameter: one of measured, nominal`},
		{"quantity not asked", "ask: [nominal, measured]", "ask: [nominal]", "85:43", "sections[1].checks[0].limit.ask", "rope-diameter needs measured too: ask it or fix it"},
		{"quantity fixed and asked", "ask: [nominal, measured]", "ask: [nominal, measured], fixed: {nominal: 3 in}", "85:81", "sections[1].checks[0].limit.fixed.nominal", "is asked as well"},
		{"grade not offered", "watch: worn", "watch: bad", "85:86", "sections[1].checks[0].limit.watch", "does not offer the grade bad"},
		{"grades that rise", "within: sound, watch: worn", "within: worn, watch: sound", "85:85", "sections[1].checks[0].limit.watch", "sound is better than the grade before it"},
		{"anchor", "kind: Small machine", "kind: &k Small machine", "3:7", "", "anchors, aliases and merge keys are not read here"},
		{"tag", "kind: Small machine", "kind: !!str Small machine", "3:7", "", "tags and directives are not read here"},
		{"open quote", "kind: Small machine", "kind: \"Small machine", "86:1", "", "cannot be read as YAML"},
		{"colon in text", "kind: Small machine", "kind: Small: machine", "3:7", "", "needs quotes"},
		{"half written", "...\n", "", "85:1", "", "stops without its end mark, perhaps half written: close it with a last line of three dots"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			_, err := Decode("small.yaml", breakIt(t, row.old, row.text), fixtureOptions)
			want := "small.yaml:" + row.place + ": "
			if row.field != "" {
				want += row.field + ": "
			}
			var ps Problems
			if !errors.As(err, &ps) {
				t.Fatalf("error is %v, want Problems", err)
			}
			for _, p := range ps {
				if line := p.Error(); strings.HasPrefix(line, want) && strings.Contains(line, row.says) {
					return
				}
			}
			t.Errorf("got\n%v\nwant %s...%s", err, want, row.says)
		})
	}
}

func TestStatesNeverGoBack(t *testing.T) {
	src := strings.Replace(fixture, "state: documents", "state: loaded", 1)
	_, err := Decode("small.yaml", []byte(src), fixtureOptions)
	want := "small.yaml:72:12: sections[1].state: power-off comes after loaded: documents, power-off, unloaded, loaded, never going back"
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// Everything wrong is told at once, in file order, each thing once.
func TestAllProblemsAtOnce(t *testing.T) {
	src := fixture
	for _, r := range [][2]string{
		{"version: 1", "version: 0"}, {"kind: Small machine\n", ""}, {"part: pin", "part: pim"},
		{"safety: 1, condition: 1", "safety: 0, condition: 0"}, {"[belt]", "[rope]"}, {"title: Rope size", "title: Rope size\n        colour: red"},
	} {
		src = strings.Replace(src, r[0], r[1], 1)
	}
	_, err := Decode("small.yaml", []byte(src), fixtureOptions)
	var ps Problems
	if !errors.As(err, &ps) {
		t.Fatal(err)
	}
	var fields []string
	line := 0
	for _, p := range ps {
		fields = append(fields, p.Field)
		if p.Line < line {
			t.Errorf("%v comes out of order", p)
		}
		line = p.Line
	}
	want := "[kind version remedies[0].ways[0].parts[0].part sections[0].checks[0].weight sections[1].checks[0].colour sections[1].checks[0].when.drive[0]]"
	if got := fmt.Sprint(fields); got != want {
		t.Errorf("got  %s\nwant %s\n%v", got, want, err)
	}
	var one *Problem
	if !errors.As(err, &one) || one.Field != "kind" {
		t.Errorf("a single problem can be taken out: %v", one)
	}
}

func TestSizeAndNesting(t *testing.T) {
	rows := []struct{ name, src, says string }{
		{"empty", "", "the file is empty"},
		{"blank", " \n\n", "the file is empty"},
		{"comments", "# nothing\n...\n", "only comments"},
		{"too large", "about: " + strings.Repeat("x", MaxFile) + "\n...\n", "at most 2097152"},
		{"brackets", "about: " + strings.Repeat("[", 1<<20) + "\n...\n", "nested too deep"},
		{"dashes", strings.Repeat("- ", 1<<20-10) + "a\n...\n", "nested too deep"},
		{"two documents", "id: a\n---\nid: b\n...\n", "a second document begins here"},
		{"keys without end", "about: x\n" + strings.Repeat("a: 1\n", maxKeys) + "...\n", "x.yaml:15001:2: there are more than 15000 keys up to here: split the file in two"},
		{"list at the top", "- id: a\n...\n", "is a list"},
		{"text at the top", "hello\n...\n", "is a text"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			_, err := Decode("x.yaml", []byte(row.src), fixtureOptions)
			if err == nil || !strings.Contains(err.Error(), row.says) {
				t.Errorf("got %.300v, want %s", err, row.says)
			}
		})
	}
}

// A file that is wrong all over is told of in few lines, and in time.
func TestManyProblems(t *testing.T) {
	var src strings.Builder
	for i := range maxKeys {
		fmt.Fprintf(&src, "key-%d: 1\n", i)
	}
	_, err := Decode("x.yaml", []byte(src.String()+"...\n"), fixtureOptions)
	var ps Problems
	if !errors.As(err, &ps) || len(ps) != maxProblems+1 {
		t.Fatalf("%d problems, want %d", len(ps), maxProblems+1)
	}
	if last := ps[maxProblems].Error(); !strings.HasPrefix(last, "x.yaml:") || !strings.Contains(last, "more problems from here on: put these right first") {
		t.Errorf("the last line is %q", last)
	}
}

// A file cut off anywhere is refused: the end mark is missing.
func TestHalfWrittenFiles(t *testing.T) {
	for _, name := range []string{"two-post-lift.yaml", "h-frame-press.yaml", bookFile} {
		src, err := files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		end := bytes.LastIndex(src, []byte("..."))
		for i := 0; i < end; i++ {
			if i%17 != 0 && src[i] != '\n' && src[max(i, 1)-1] != '\n' {
				continue // every line's end and start, and a sample between
			}
			if _, ok := ended(src[:i]); ok && len(bytes.TrimSpace(src[:i])) > 0 {
				t.Fatalf("%s cut at byte %d of %d passes as whole", name, i, len(src))
			}
		}
		if _, ok := ended(src); !ok {
			t.Errorf("%s has no end mark", name)
		}
	}
}

func TestPriceBookProblems(t *testing.T) {
	const book = "dated: 2026-01-31\ncurrency: USD\nnote: Examples.\nparts:\n  - {id: pin, title: Pin, unit: piece, price: {low: 1, likely: 2, high: 3}}\n...\n"
	if _, err := DecodeBook("parts.yaml", []byte(book)); err != nil {
		t.Fatal(err)
	}
	rows := []struct{ old, text, want string }{
		{"2026-01-31", "31.1.2026", `parts.yaml:1:8: dated: "31.1.2026" is no date: write it like 2026-01-31`},
		{"USD", "dollars", `parts.yaml:2:11: currency: "dollars" has not 3 characters: exactly 3`},
		{"high: 3", "high: 1", "parts.yaml:5:73: parts[0].price.high: 1.00 is less than likely: low, likely, high must not fall"},
		{"...", "  - {id: pin, title: Pin, unit: piece, price: {low: 1, likely: 2, high: 3}}\n...", `parts.yaml:6:10: parts[1].id: "pin" stands twice: give each its own id`},
	}
	for _, row := range rows {
		_, err := DecodeBook("parts.yaml", []byte(strings.Replace(book, row.old, row.text, 1)))
		if err == nil || err.Error() != row.want {
			t.Errorf("got  %v\nwant %s", err, row.want)
		}
	}
}

// visitSection is put before the landing lines of the fixture.
const visitSection = `visit:
  wear: [gloves]
  bring: []
  questions:
    - {id: load, ask: What is on its plate?, answers: [capacity, fact/drive]}
landing:
`

func TestVisitSection(t *testing.T) {
	r, err := Decode("small.yaml", breakIt(t, "landing:\n", visitSection), fixtureOptions)
	if err != nil {
		t.Fatal(err)
	}
	if q := r.Visit.Questions[0]; fmt.Sprint(q.Answers) != "[capacity fact/drive]" {
		t.Errorf("%+v", q)
	}
	for _, row := range []struct{ name, old, text, place, field, says string }{
		{"no field", "[capacity,", "[colour,", "27:56", "visit.questions[0].answers[0]", `"colour" is no field of a listing: one of asking, capacity, `},
		{"no fact", "fact/drive", "fact/colour", "27:66", "visit.questions[0].answers[1]", `"colour" is no fact of this file: one of drive`},
		{"question twice", "landing:\n", "    - {id: load, ask: Again?}\nlanding:\n", "28:12", "visit.questions[1].id", `"load" stands twice`},
		{"unknown fact of when", "answers: [capacity, fact/drive]", "when: {colour: [red]}", "27:61", "visit.questions[0].when.colour", `"colour" is no fact of this file`},
		{"nothing to ask", "ask: What is on its plate?, ", "", "27:7", "visit.questions[0].ask", "is missing"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := Decode("small.yaml", breakIt(t, "landing:\n", strings.Replace(visitSection, row.old, row.text, 1)), fixtureOptions)
			var ps Problems
			if !errors.As(err, &ps) {
				t.Fatal(err)
			}
			p := ps[0]
			if at := fmt.Sprintf("%d:%d", p.Line, p.Column); p.Field != row.field || !strings.Contains(p.What+": "+p.Right, row.says) || at != row.place {
				t.Errorf("%s %s", at, err)
			}
		})
	}
}
