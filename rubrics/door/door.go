package door

import (
	"encoding/json"
	"errors"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// Door answers calls by name, JSON in and JSON out, in one or several languages.
type Door struct {
	tongues map[string]*tongue // by language
	first   string             // the language it was opened with
}

// Open makes a door from a catalogue as JSON.
func Open(catalogue []byte) (*Door, error) {
	t, err := hear(catalogue)
	if err != nil {
		return nil, err
	}
	return &Door{tongues: map[string]*tongue{t.language: t}, first: t.language}, nil
}

// NewCatalogue gathers what has its home in Go.
func NewCatalogue(rubrics []appraisal.Rubric, parts []appraisal.Part, dated string) Catalogue {
	return Catalogue{
		Language: "en", Locales: say.Locales(),
		Rubrics: rubrics, Parts: parts, PartsDated: dated, Limits: limit.All(), Subjects: limit.Subjects(), Shop: appraisal.DefaultShop(),
		Grades: appraisal.GradeWords[:], Reasons: appraisal.Reasons, Sellers: appraisal.Sellers, Trades: appraisal.Trades,
		Conditions: appraisal.Conditions, Completeness: appraisal.Completeness, Currencies: appraisal.Currencies,
		Criteria: appraisal.Criteria, Compared: Bounds{appraisal.LeastCompared, appraisal.MostCompared}, Measures: appraisal.Measures, Floors: appraisal.Floors, TieDowns: appraisal.TieDowns(),
		Hazards: appraisal.Hazards, Standings: appraisal.Standings, Miles: miles(),
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
	Locale    string `json:"locale,omitempty"`
}

// comparablesRequest brings a table as it was saved; Source is base64 in JSON.
type comparablesRequest struct {
	Rubric string                 `json:"rubric"`
	Source []byte                 `json:"source"`
	Choice appraisal.ImportChoice `json:"choice"`
	// Own is the rubric itself where it is none of the catalogue.
	Own    *appraisal.Rubric `json:"own"`
	Locale string            `json:"locale,omitempty"`
}

// changesRequest asks what another version of a rubric would change for a file.
type changesRequest struct {
	From   appraisal.Rubric `json:"from"`
	To     appraisal.Rubric `json:"to"`
	File   json.RawMessage  `json:"file"`
	Locale string           `json:"locale,omitempty"`
}

// Call answers one call; it never panics and always answers a Reply as JSON.
func (d *Door) Call(name string, argument []byte) (out []byte) {
	c := &call{door: d, asking: d.in("")}
	defer func() {
		if r := recover(); r != nil {
			out = c.reply(nil, say.Errorf("the engine met a fault of its own (%v); what you entered is kept", r))
		}
	}()
	value, err := c.answer(name, argument)
	return c.reply(value, err)
}

// call is one call on its way.
type call struct {
	door *Door
	asking
}

// read takes in what is asked, and in which language it is answered.
func (c *call) read(argument []byte, request any, locale *string) error {
	err := json.Unmarshal(argument, request)
	c.asking = c.door.in(*locale)
	return err
}

// judge speaks the language of the call.
func (c *call) speaking() *appraisal.Judge { return c.judge.In(c.voice) }

func (c *call) answer(name string, argument []byte) (any, error) {
	switch name {
	case "ready":
		return true, nil
	case "learn":
		var q LearnRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return true, c.door.Learn(q.Catalogue)
	case "appraise":
		var q AppraiseRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return c.speaking().Of(&doc.File, appraisal.Ask{Price: q.Price, Minutes: q.Minutes})
	case "visit":
		var q VisitRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return c.speaking().Visit(&doc.File)
	case "compare":
		var q CompareRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		files, err := decoded(q.Files)
		if err != nil {
			return nil, err
		}
		return c.speaking().Compare(files, q.Prices)
	case "comparables":
		var q comparablesRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		r := q.Own
		if r == nil {
			var err error
			if r, err = c.speaking().Rubric(q.Rubric); err != nil {
				return nil, err
			}
		}
		return c.speaking().ImportComparables(r, q.Source, q.Choice)
	case "changes":
		var q changesRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		doc, err := appraisal.Decode(q.File)
		if err != nil {
			return nil, err
		}
		return c.speaking().Changes(&q.From, &q.To, &doc.File), nil
	case "notice":
		var q NoticeRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		return c.notice(&q)
	case "prices-read":
		var q PricesReadRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		return c.speaking().ReadPrices(q.Source, appraisal.PriceBook{Own: q.Own, Parts: q.Parts, Currency: q.Currency, Dated: c.dated})
	case "prices-write":
		var q PricesWriteRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		text, err := c.speaking().WritePrices(appraisal.PriceBook{Own: q.Own, Parts: q.Parts, Currency: q.Currency, Dated: c.dated}, q.Date)
		return PricesWritten{text}, err
	case "document":
		return c.document(argument)
	case "tables":
		return c.tables(argument)
	case "csv":
		var q CSVRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		return CSVWritten{q.Table.CSV()}, nil
	case "limit":
		var q LimitRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		return limit.ComputeIn(c.voice, q.Name, q.Given)
	case "check":
		var q CheckRequest
		if err := c.read(argument, &q, &q.Locale); err != nil {
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
		if err := c.read(argument, &q, &q.Locale); err != nil {
			return nil, err
		}
		v, err := unit.ParseDefault(q.Text, q.Dimension, q.Unit)
		if err != nil {
			return nil, err
		}
		return appraisal.Quantity{N: v.N, Unit: v.Unit}, nil
	}
	return nil, say.Errorf("no call is named %q", name)
}

// ofListing is an error of one of several files.
type ofListing struct {
	n   int
	err error
}

func (e ofListing) Error() string          { return e.In(nil) }
func (e ofListing) Unwrap() error          { return e.err }
func (e ofListing) In(v *say.Voice) string { return v.F("listing %d: %s", e.n, v.Error(e.err)) }

func (c *call) reply(value any, err error) []byte {
	r := Reply{}
	if err == nil {
		r.Value, err = json.Marshal(value)
	}
	if err != nil {
		r.Value, r.Error = nil, c.voice.Error(err)
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
