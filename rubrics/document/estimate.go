package document

import (
	"slices"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// estimate is the paper for the seller.
func (p *paper) estimate() (*Document, error) {
	v := p.v
	d := begin(v, Estimate, v.T("Repair estimate"), p.seen.date)
	d.Foot = p.foot(d.Title)
	d.Add(facts(p.identity()))
	for _, l := range lines(p.ask.Word) {
		d.Add(text(l))
	}
	d.Add(p.verdict()...)
	d.Add(p.short()...)
	if m := p.ask.Price; m != nil {
		d.Add(heading(2, v.T("Price named by the buyer")), strong(exactly(v, *m)),
			small(v.T("For the equipment as it stands. It is a statement of this day: nothing is agreed by it.")))
	}
	found := p.found()
	d.Add(heading(2, v.T("What was found")))
	if len(found) == 0 {
		d.Add(text(v.T("Nothing was found that is worn or needs repair.")))
	}
	d.Add(found...)
	d.Add(p.preparations()...)
	d.Add(p.sum()...)
	d.Add(p.scope()...)
	d.Add(heading(2, v.T("Limits of this paper")), list(p.limits()))
	if len(found) > 0 {
		d.Answers = answerWords(v)
	}
	return d, nil
}

func (p *paper) identity() []Fact {
	v, s := p.v, p.seen
	f := told(nil, v.T("Equipment"), plain(p.repair.Rubric.Kind))
	f = told(f, v.T("Maker"), s.maker)
	f = told(f, v.T("Model"), s.model)
	f = told(f, v.T("Serial number"), s.serial)
	if s.made != 0 {
		f = told(f, v.T("Year built"), strconv.Itoa(s.made))
	}
	if s.capacity != nil {
		f = told(f, plain(p.repair.Rubric.Capacity.Title), quantity(v, *s.capacity, p.ask.Units))
	}
	f = told(f, v.T("Looked at on"), v.Date(s.date))
	f = told(f, v.T("Looked at by"), plain(p.ask.From))
	f = told(f, v.T("Contact"), plain(p.ask.Contact))
	return told(f, v.T("For"), plain(p.ask.To))
}

func (p *paper) foot(title string) string {
	parts := []string{title, plain(p.repair.Rubric.Kind)}
	if p.seen.serial != "" {
		parts = append(parts, p.seen.serial)
	}
	return strings.Join(append(parts, p.v.Date(p.seen.date)), " · ")
}

// verdict warns of what can hurt, whatever the buyer leaves out; that nothing stopped
// it is no news that a paper may carry further.
func (p *paper) verdict() []Block {
	x := &p.repair.Verdict
	if x.Hazard == "notice" {
		return nil
	}
	return []Block{caution(p.v, x.Hazard, x.Title+". "+x.Sentence)}
}

// short is the whole of it in a few lines.
func (p *paper) short() []Block {
	v := p.v
	looked, bad, applies := 0, 0, 0
	for i := range p.repair.Checks {
		switch c := &p.repair.Checks[i]; {
		case !c.Applies || p.left(c.Check):
		case c.Grade == nil:
			applies++
		default:
			applies++
			looked++
			if *c.Grade <= 2 {
				bad++
			}
		}
	}
	out := []Block{
		heading(2, v.T("In short")),
		text(v.F("Points looked at: %s of %s. Of these, worn, bad or failed: %s.", v.Whole(int64(looked)), v.Whole(int64(applies)), v.Whole(int64(bad)))),
	}
	if e := &p.repair.Estimate; len(e.Lines) > 0 {
		out = append(out, strong(v.F("Putting right what is listed here costs about %s, in eight of ten cases between %s and %s.", amount(v, e.Median), amount(v, e.Low), amount(v, e.High))))
	} else {
		out = append(out, strong(v.T("No repair is estimated in this paper.")))
	}
	if len(p.repair.Estimate.Lines) > 0 || p.ask.Price != nil {
		out = append(out, small(v.F("All amounts in this paper are in %s.", p.seen.currency)))
	}
	if len(p.ask.LeaveChecks) > 0 || len(p.ask.LeaveLines) > 0 {
		out = append(out, text(v.T("This paper is not the whole of what was looked at: other points and costs are not part of it.")))
	}
	return out
}

func (p *paper) left(check string) bool { return slices.Contains(p.ask.LeaveChecks, check) }

// limits says what such a paper is not.
func (p *paper) limits() []string {
	v := p.v
	out := []string{
		v.T("It tells what one person could see, measure and try on that day without taking the equipment apart. What was hidden is not judged."),
		v.T("It is no certificate and no inspection that a law or standard asks for. Nothing in it says that the equipment may be used."),
		v.T("Amounts are the buyer's estimates. Where no quotation was asked for, it says so. They are no offer to do the work."),
	}
	return append(out, p.repair.Verdict.Always...)
}

func answerWords(v *say.Voice) *AnswerWords {
	return &AnswerWords{
		Lead:     v.T("You may answer each finding: choose, add a word or a photo, and send."),
		Agree:    v.T("I agree"),
		Disagree: v.T("I do not agree"),
		Done:     v.T("Already done"),
		Word:     v.T("In your own words"),
		Photo:    v.T("A photo"),
		Send:     v.T("Send the answer"),
		Sent:     v.T("Your answer was sent."),
		Yours:    v.T("Your answer"),
		Expires:  v.T("This page can be read until %s."),
		TooLong:  v.T("The text is too long: shorten it."),
		NoPhoto:  v.T("This is no photo that can be taken: send a JPEG, PNG or WebP that is not too large."),
		NoAnswer: v.T("Choose one of the three answers first."),
	}
}
