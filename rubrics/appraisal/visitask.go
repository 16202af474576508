package appraisal

import (
	"fmt"
	"strconv"
	"strings"
)

// AnswerFields are the fields of a listing that can answer a question, by the
// names they have in Listing.
var AnswerFields = fieldIDs()

// answerFields gives each field's title and what a listing tells of it, "" for
// nothing.
var answerFields = []struct {
	id, title string
	told      func(l *Listing) string
}{
	{"asking", "Asking price", func(l *Listing) string {
		if l.Asking == nil {
			return ""
		}
		return exact(*l.Asking)
	}},
	{"capacity", "Size", func(l *Listing) string { return quantityTold(l.Capacity) }},
	{"current", "Current", func(l *Listing) string { return quantityTold(l.Current) }},
	{"distance", "Distance", func(l *Listing) string { return quantityTold(l.Distance) }},
	{"height", "Height", func(l *Listing) string { return quantityTold(l.Height) }},
	{"hours", "Hours run", func(l *Listing) string { return numberTold(l.Hours) }},
	{"length", "Length", func(l *Listing) string { return quantityTold(l.Length) }},
	{"made", "Year made", func(l *Listing) string { return numberTold(float64(l.Made)) }},
	{"maker", "Maker", func(l *Listing) string { return oneLine(l.Maker, 60) }},
	{"model", "Model", func(l *Listing) string { return oneLine(l.Model, 60) }},
	{"phases", "Phases", func(l *Listing) string { return numberTold(float64(l.Phases)) }},
	{"place", "Place", func(l *Listing) string { return oneLine(l.Place, 60) }},
	{"power", "Power", func(l *Listing) string { return quantityTold(l.Power) }},
	{"seller", "Seller", func(l *Listing) string { return titleOf(Sellers, l.Seller) }},
	{"serial", "Serial number", func(l *Listing) string { return oneLine(l.Serial, 60) }},
	{"voltage", "Voltage", func(l *Listing) string { return quantityTold(l.Voltage) }},
	{"weight", "Weight", func(l *Listing) string { return quantityTold(l.Weight) }},
	{"width", "Width", func(l *Listing) string { return quantityTold(l.Width) }},
}

func fieldIDs() []string {
	out := make([]string, len(answerFields))
	for i := range answerFields {
		out[i] = answerFields[i].id
	}
	return out
}

func quantityTold(q *Quantity) string {
	if q == nil {
		return ""
	}
	return quantityText(*q)
}

func numberTold(n float64) string {
	if n == 0 {
		return ""
	}
	return strconv.FormatFloat(n, 'f', -1, 64)
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
func questionsOf(r *Rubric, f *File) []VisitQuestion {
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
		out = append(out, VisitQuestion{ID: q.ID, Ask: q.Ask, Why: q.Why, Told: toldBy(r, f, q, facts), Asked: asked, Answer: answer})
	}
	return out
}

// toldBy is what the listing tells in answer to a question, "" while any part of
// the answer is missing.
func toldBy(r *Rubric, f *File, q *Question, facts map[string]string) string {
	var parts []string
	for _, name := range q.Answers {
		part := ""
		if id, ok := strings.CutPrefix(name, "fact/"); ok {
			part = factTold(r, id, facts)
		}
		for k := range answerFields {
			if field := &answerFields[k]; field.id == name {
				title := field.title
				if name == "capacity" {
					title = r.Capacity.Title
				}
				if says := field.told(&f.Listing); says != "" {
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
func message(r *Rubric, f *File, questions []VisitQuestion) string {
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
	ask := "could you tell me this"
	if len(open) > 1 {
		ask = "could you tell me these things"
	}
	return "Hello, I am interested in your listing \u201c" + title + "\u201d. Before I drive over, " + ask + "? Short answers are fine.\n\n" +
		strings.Join(open, "\n") + "\n\nThank you."
}
