package limit

import (
	"strconv"

	"asfound/rubrics/say"
)

// signal is a word of ANSI Z535.4, the most severe first.
type signal struct{ word, colour, symbol string }

var signals = []signal{
	{say.Key("DANGER"), say.Key("red"), say.Key("yes")},
	{say.Key("WARNING"), say.Key("orange"), say.Key("yes")},
	{say.Key("CAUTION"), say.Key("yellow"), say.Key("yes")},
	{say.Key("NOTICE"), say.Key("blue"), say.Key("never")},
}

var signalWord = rule{
	Definition: Definition{
		Name: "signal-word", Title: "Signal word of a hazard",
		Quantities: []Input{
			{Name: "chance", Title: "if it is not avoided, harm", Dimension: "word", Words: []string{"will", "could"}},
			{Name: "harm", Title: "harm", Dimension: "word", Words: []string{"death-or-serious", "minor-or-moderate", "property"}},
		},
		Formula: "will and death or serious: DANGER; could and serious: WARNING; minor or moderate: CAUTION; property alone: NOTICE",
		Source:  "ANSI Z535.4-2007 4.14, read in a label maker's summary",
		Status:  Reprint,
		Caution: "Of several hazards the most severe word stands. A word protects nobody: take the hazard away first.",
	},
	judge: func(m *measured) (Result, *Error) {
		i := 2
		switch {
		case m.words["harm"] == "property":
			i = 3
		case m.words["harm"] == "minor-or-moderate": // "will" makes no graver word of it
		case m.words["chance"] == "will":
			i = 0
		default:
			i = 1
		}
		s := signals[i]
		word, colour := m.Label(s.word), m.Label(s.colour)
		res := Result{Value: float64(i + 1), Finding: Computed, Text: m.F("The word is %s, on %s.", word, colour)}
		res.More = []Figure{{Title: m.T("signal word"), Text: word}, {Title: m.T("colour"), Text: colour}, {Title: m.T("alert symbol"), Text: m.Label(s.symbol)}}
		return res, nil
	},
}

var (
	high    = say.Key("High")
	serious = say.Key("Serious")
	medium  = say.Key("Medium")
	low     = say.Key("Low")
)

// riskLevels is Table III of MIL-STD-882E, rows A to E by severity 1 to 4, and
// riskValues Table A-III of MIL-STD-882D; by the bands 1 to 5, 6 to 9, 10 to 17
// and 18 to 20 they agree in every cell.
var (
	riskLevels = [5][4]string{
		{high, high, serious, medium},
		{high, high, serious, medium},
		{high, serious, medium, low},
		{serious, medium, medium, low},
		{medium, medium, medium, low},
	}
	riskValues = [5][4]float64{{1, 3, 7, 13}, {2, 5, 9, 16}, {4, 6, 11, 18}, {8, 10, 14, 19}, {12, 15, 17, 20}}
)

var riskCell = rule{
	Definition: Definition{
		Name: "risk-cell", Title: "Risk by severity and probability",
		Quantities: []Input{
			{Name: "severity", Title: "1 death, 2 lasting harm or three in hospital, 3 lost work days, 4 less", Dimension: "word", Words: []string{"1", "2", "3", "4"}},
			{Name: "probability", Title: "A often, B several times, C sometime, D unlikely, E assume never, F cannot happen", Dimension: "word", Words: []string{"A", "B", "C", "D", "E", "F"}},
		},
		Formula: "cell of the matrix: High, Serious, Medium, Low; F: Eliminated",
		Source:  "MIL-STD-882E (2012) Table III, read in a public copy; values of MIL-STD-882D Table A-III",
		Status:  Published,
		Caution: "A rating by an unlicensed person from what could be seen; accepting the risk stays with the buyer. Rate by injury alone. " +
			"High is never offset by good condition, and F needs the hazard gone: no warning or glove makes it so.",
	},
	judge: func(m *measured) (Result, *Error) {
		severity, probability := m.words["severity"], m.words["probability"]
		column, err := strconv.Atoi(severity)
		if err != nil {
			return Result{}, refuse("severity", m.F("%s is no severity", quote(severity)), m.T("it is one of 1, 2, 3, 4"))
		}
		cell := severity + probability
		level := m.T("Eliminated")
		res := Result{Finding: Computed}
		if row := int(probability[0] - 'A'); row < len(riskLevels) {
			level = m.Label(riskLevels[row][column-1])
			res.Value = riskValues[row][column-1]
			res.Notes = append(res.Notes, m.T("The value is that of MIL-STD-882D, 1 the worst of 20."))
		}
		if cell == "3E" { // a public copy has Low here; 882D gives 17, and 10 to 17 are Medium
			res.Status = Memory
		}
		res.Text = m.F("Cell %s is %s.", cell, level)
		res.More = []Figure{{Title: m.T("cell"), Text: cell}, {Title: m.T("risk"), Text: level}}
		return res, nil
	},
}
