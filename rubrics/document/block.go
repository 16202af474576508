package document

import "asfound/rubrics/say"

func heading(level int, text string) Block { return Block{Kind: "heading", Level: level, Text: text} }

func text(s string) Block { return Block{Kind: "text", Text: s} }

func small(s string) Block { return Block{Kind: "text", Text: s, Tone: "small"} }

func strong(s string) Block { return Block{Kind: "text", Text: s, Tone: "strong"} }

func list(items []string) Block { return Block{Kind: "list", Items: items} }

func facts(f []Fact) Block { return Block{Kind: "facts", Facts: f} }

func tableOf(t Table) Block { return Block{Kind: "table", Table: &t} }

// caution is a signal word with what it warns of; the words are those of ANSI Z535.4.
func caution(v *say.Voice, signal, s string) Block {
	return Block{Kind: "caution", Signal: signal, Word: signalWord(v, signal), Text: s}
}

func signalWord(v *say.Voice, signal string) string {
	switch signal {
	case "danger":
		return v.T("DANGER")
	case "warning":
		return v.T("WARNING")
	case "caution":
		return v.T("CAUTION")
	}
	return v.T("NOTICE")
}

func gradeWord(v *say.Voice, grade int) string {
	return []string{v.T("Failed"), v.T("Bad"), v.T("Worn"), v.T("Sound"), v.T("As new")}[grade]
}

// skipWord says why a check was not done.
func skipWord(v *say.Voice, reason string) string {
	switch reason {
	case "no-power":
		return v.T("no power")
	case "no-access":
		return v.T("no access")
	case "seller-declined":
		return v.T("the seller declined")
	case "no-time":
		return v.T("no time")
	case "no-instrument":
		return v.T("no instrument")
	}
	return v.T("not looked at")
}

// told adds a fact where there is something to tell.
func told(f []Fact, name, value string) []Fact {
	if value == "" {
		return f
	}
	return append(f, Fact{Name: name, Value: value})
}
