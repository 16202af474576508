package door

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
	"asfound/rubrics/notice"
	"asfound/rubrics/unit"
)

// Door answers calls by name, JSON in and JSON out.
type Door struct {
	judge *appraisal.Judge
	ids   []string
	raw   map[string]json.RawMessage // the rubrics as they were given
	kinds []notice.Kind              // as a listing's text is read for them, once asked for
	dated string                     // day of the example prices
}

// Open makes a door from a catalogue as JSON. A rubric is read when it is first
// asked for: all of them together take longer than a start may.
func Open(catalogue []byte) (*Door, error) {
	var c struct {
		Rubrics    []json.RawMessage `json:"rubrics"`
		Parts      []appraisal.Part  `json:"parts"`
		PartsDated string            `json:"parts_dated"`
	}
	if err := json.Unmarshal(catalogue, &c); err != nil {
		return nil, fmt.Errorf("the catalogue of rubrics cannot be read: %w", err)
	}
	ids, raw := make([]string, len(c.Rubrics)), map[string]json.RawMessage{}
	for i, text := range c.Rubrics {
		var err error
		if ids[i], err = idOf(text); err != nil {
			return nil, fmt.Errorf("rubric %d of the catalogue cannot be read: %w", i+1, err)
		}
		raw[ids[i]] = text
	}
	late := func(id string) (*appraisal.Rubric, error) {
		var r appraisal.Rubric
		err := json.Unmarshal(raw[id], &r)
		return &r, err
	}
	return &Door{judge: appraisal.NewLateJudge(ids, late, c.Parts), ids: ids, raw: raw, dated: c.PartsDated}, nil
}

// idOf reads the id of a rubric, which NewCatalogue writes first.
func idOf(text []byte) (string, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	for _, want := range []json.Token{json.Delim('{'), "id"} {
		if got, err := d.Token(); err != nil || got != want {
			return "", fmt.Errorf("it does not begin with its id (%v)", got)
		}
	}
	var id string
	err := d.Decode(&id)
	return id, err
}

// NewCatalogue gathers what has its home in Go.
func NewCatalogue(rubrics []appraisal.Rubric, parts []appraisal.Part, dated string) Catalogue {
	return Catalogue{
		Rubrics: rubrics, Parts: parts, PartsDated: dated, Limits: limit.All(), Subjects: limit.Subjects(), Shop: appraisal.DefaultShop(),
		Grades: appraisal.GradeWords[:], Reasons: appraisal.Reasons, Sellers: appraisal.Sellers, Trades: appraisal.Trades,
		Conditions: appraisal.Conditions, Completeness: appraisal.Completeness, Currencies: appraisal.Currencies,
		Criteria: appraisal.Criteria, Measures: appraisal.Measures, Floors: appraisal.Floors, TieDowns: appraisal.TieDownKinds(), Miles: miles(),
	}
}

// miles tells how long one unit of a listing's distance is.
func miles() map[string]float64 {
	out := map[string]float64{}
	for _, from := range []string{"mi", "km"} {
		if n, err := unit.Convert(1, from, "mi"); err == nil {
			out[from] = n
		}
	}
	return out
}

type quantityRequest struct {
	Text      string `json:"text"`
	Dimension string `json:"dimension"`
	Unit      string `json:"unit"`
}

// comparablesRequest brings a table as it was saved; Source is base64 in JSON.
type comparablesRequest struct {
	Rubric string                 `json:"rubric"`
	Source []byte                 `json:"source"`
	Choice appraisal.ImportChoice `json:"choice"`
	// Own is the rubric itself where it is none of the catalogue.
	Own *appraisal.Rubric `json:"own"`
}

// changesRequest asks what another version of a rubric would change for a file.
type changesRequest struct {
	From appraisal.Rubric `json:"from"`
	To   appraisal.Rubric `json:"to"`
	File json.RawMessage  `json:"file"`
}

// Call answers one call; it never panics and always answers a Reply as JSON.
func (d *Door) Call(name string, argument []byte) (out []byte) {
	defer func() {
		if r := recover(); r != nil {
			out = reply(nil, fmt.Errorf("the engine met a fault of its own (%v); what you entered is kept", r))
		}
	}()
	value, err := d.answer(name, argument)
	return reply(value, err)
}

func (d *Door) answer(name string, argument []byte) (any, error) {
	switch name {
	case "ready":
		return true, nil
	case "appraise":
		var q AppraiseRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return d.judge.Of(&doc.File, appraisal.Ask{Price: q.Price, Minutes: q.Minutes})
	case "visit":
		var q VisitRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return d.judge.Visit(&doc.File)
	case "compare":
		var q CompareRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		files := make([]*appraisal.File, len(q.Files))
		for i, src := range q.Files {
			doc, err := appraisal.Decode(src)
			if err != nil {
				return nil, fmt.Errorf("listing %d: %w", i+1, err)
			}
			files[i] = &doc.File
		}
		return d.judge.Compare(files, q.Prices)
	case "comparables":
		var q comparablesRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		r := q.Own
		if r == nil {
			var err error
			if r, err = d.judge.Rubric(q.Rubric); err != nil {
				return nil, err
			}
		}
		return appraisal.ImportComparables(r, q.Source, q.Choice)
	case "changes":
		var q changesRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return appraisal.Changes(&q.From, &q.To, &doc.File), nil
	case "notice":
		var q NoticeRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return d.notice(&q)
	case "prices-read":
		var q PricesReadRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return d.judge.ReadPrices(q.Source, appraisal.PriceBook{Own: q.Own, Parts: q.Parts, Currency: q.Currency, Dated: d.dated})
	case "prices-write":
		var q PricesWriteRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		text, err := d.judge.WritePrices(appraisal.PriceBook{Own: q.Own, Parts: q.Parts, Currency: q.Currency, Dated: d.dated}, q.Date)
		return PricesWritten{text}, err
	case "limit":
		var q LimitRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return limit.Compute(q.Name, q.Given)
	case "check":
		var q CheckRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		if q.Shop != nil {
			if err := appraisal.CheckShop(*q.Shop); err != nil {
				return nil, err
			}
		}
		if q.Listing != nil {
			return true, appraisal.CheckListing(*q.Listing)
		}
		return true, nil
	case "quantity":
		var q quantityRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		v, err := unit.ParseDefault(q.Text, q.Dimension, q.Unit)
		if err != nil {
			return nil, err
		}
		return appraisal.Quantity{N: v.N, Unit: v.Unit}, nil
	}
	return nil, fmt.Errorf("no call is named %q", name)
}

func reply(value any, err error) []byte {
	r := Reply{}
	if err == nil {
		r.Value, err = json.Marshal(value)
	}
	if err != nil {
		r.Value, r.Error = nil, err.Error()
		var a *appraisal.Error
		var l *limit.Error
		switch {
		case errors.As(err, &a):
			r.Field = a.Field
		case errors.As(err, &l):
			r.Field = l.Quantity
		}
	}
	out, err := json.Marshal(r)
	if err != nil {
		return []byte(`{"error":"the answer could not be written"}`)
	}
	return out
}
