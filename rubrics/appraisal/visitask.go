package appraisal

import (
	"fmt"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// AnswerFields are the fields of a listing that can answer a question, by the
// names they have in Listing.
var AnswerFields = fieldIDs()

// answerFields gives each field's title and what a listing tells of it, "" for
// nothing.
var answerFields = []struct {
	id, title string
	told      func(v voice, l *Listing) string
}{
	{"asking", say.Key("Asking price"), func(v voice, l *Listing) string {
		if l.Asking == nil {
			return ""
		}
		return v.exact(*l.Asking)
	}},
	{"capacity", say.Key("Size"), func(v voice, l *Listing) string { return v.quantityTold(l.Capacity) }},
	{"current", say.Key("Current"), func(v voice, l *Listing) string { return v.quantityTold(l.Current) }},
	{"distance", say.Key("Distance"), func(v voice, l *Listing) string { return v.quantityTold(l.Distance) }},
	{"height", say.Key("Height"), func(v voice, l *Listing) string { return v.quantityTold(l.Height) }},
	{"hours", say.Key("Hours run"), func(v voice, l *Listing) string { return v.numberTold(l.Hours) }},
	{"length", say.Key("Length"), func(v voice, l *Listing) string { return v.quantityTold(l.Length) }},
	{"made", say.Key("Year made"), func(v voice, l *Listing) string { return v.numberTold(float64(l.Made)) }},
	{"maker", say.Key("Maker"), func(v voice, l *Listing) string { return oneLine(l.Maker, 60) }},
	{"model", say.Key("Model"), func(v voice, l *Listing) string { return oneLine(l.Model, 60) }},
	{"phases", say.Key("Phases"), func(v voice, l *Listing) string { return v.numberTold(float64(l.Phases)) }},
	{"place", say.Key("Place"), func(v voice, l *Listing) string { return oneLine(l.Place, 60) }},
	{"power", say.Key("Power"), func(v voice, l *Listing) string { return v.quantityTold(l.Power) }},
	{"seller", say.Key("Seller"), func(v voice, l *Listing) string { return v.Label(titleOf(Sellers, l.Seller)) }},
	{"serial", say.Key("Serial number"), func(v voice, l *Listing) string { return oneLine(l.Serial, 60) }},
	{"voltage", say.Key("Voltage"), func(v voice, l *Listing) string { return v.quantityTold(l.Voltage) }},
	{"weight", say.Key("Weight"), func(v voice, l *Listing) string { return v.quantityTold(l.Weight) }},
	{"width", say.Key("Width"), func(v voice, l *Listing) string { return v.quantityTold(l.Width) }},
}

func fieldIDs() []string {
	out := make([]string, len(answerFields))
	for i := range answerFields {
		out[i] = answerFields[i].id
	}
	return out
}

func (v voice) quantityTold(q *Quantity) string {
	if q == nil {
		return ""
	}
	return v.mark(quantityText(*q))
}

func (v voice) numberTold(n float64) string {
	if n == 0 {
		return ""
	}
	return v.mark(strconv.FormatFloat(n, 'f', -1, 64))
}

// mark writes a plain number with the decimal mark of the language, ungrouped.
func (v voice) mark(number string) string {
	return strings.Replace(number, ".", v.Locale().Decimal, 1)
}

func titleOf(choices []Choice, id string) string {
	for _, c := range choices {
		if c.ID == id {
			return c.Title
		}
	}
	return ""
}

// questionsOf lists the rubric's questions that apply, each with how it stands.
func (v voice) questionsOf(r *Rubric, f *File) []VisitQuestion {
	out := []VisitQuestion{}
	if r.Visit == nil {
		return out
	}
	facts := told(r, f.Facts)
	for i := range r.Visit.Questions {
		q := &r.Visit.Questions[i]
		if !meets(q.When, facts) {
			continue
		}
		answer, asked := f.Asked[q.ID]
		out = append(out, VisitQuestion{ID: q.ID, Ask: q.Ask, Why: q.Why, Told: v.toldBy(r, f, q, facts), Asked: asked, Answer: answer})
	}
	return out
}

// toldBy is what the listing tells in answer to a question, "" while any part of
// the answer is missing.
func (v voice) toldBy(r *Rubric, f *File, q *Question, facts map[string]string) string {
	var parts []string
	for _, name := range q.Answers {
		part := ""
		if id, ok := strings.CutPrefix(name, "fact/"); ok {
			part = factTold(r, id, facts)
		}
		for k := range answerFields {
			if field := &answerFields[k]; field.id == name {
				title := v.Label(field.title)
				if name == "capacity" {
					title = r.Capacity.Title
				}
				if says := field.told(v, &f.Listing); says != "" {
					part = title + ": " + says
				}
			}
		}
		if part == "" {
			return ""
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, "; ")
}

// factTold is the title of the answer to a fact, "" for none.
func factTold(r *Rubric, id string, facts map[string]string) string {
	for i := range r.Facts {
		if r.Facts[i].ID != id {
			continue
		}
		for _, o := range r.Facts[i].Options {
			if o.ID == facts[id] {
				return o.Title
			}
		}
	}
	return ""
}

// message writes the questions that are still to ask as one text for the seller.
// It holds nothing of what the buyer thinks.
func (v voice) message(r *Rubric, f *File, questions []VisitQuestion) string {
	var open []string
	for _, q := range questions {
		if q.Told == "" && !q.Asked {
			open = append(open, fmt.Sprintf("%d. %s", len(open)+1, q.Ask))
		}
	}
	if len(open) == 0 {
		return ""
	}
	title := oneLine(f.Listing.Title, 80)
	if title == "" {
		title = r.Kind
	}
	hello := v.F("Hello, I am interested in your listing \u201c%s\u201d. Before I drive over, could you tell me these things? Short answers are fine.", title)
	if len(open) == 1 {
		hello = v.F("Hello, I am interested in your listing \u201c%s\u201d. Before I drive over, could you tell me this? Short answers are fine.", title)
	}
	return hello + "\n\n" + strings.Join(open, "\n") + "\n\n" + v.T("Thank you.")
}
