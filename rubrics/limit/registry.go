package limit

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// rule is a definition with what computes it.
type rule struct {
	Definition
	// bounds by quantity, in its Input.Unit; a quantity without one must be more
	// than zero.
	bounds map[string]bound
	// makerUnit is the unit the maker's limit is handed over in; makerAlso is a
	// second dimension it may have, with its unit.
	makerUnit string
	makerAlso [2]string
	judge     func(m *measured) (Result, *Error)
}

// bound is the range in which a value can be real; outside it the entry is
// taken for a slip. Both ends belong to it.
type bound struct{ low, high float64 }

var rules = append([]rule{
	anchorBreakout, anchorEmbedment, armLoad, cylinderForce, descentSpeed, leafChain, leakDown,
	liftTime, motorCurrent, motorSupply, pressForce, pressRelief, pressSet, pumpPower,
	anchorGroup, beltGuard, fanGuard, grinderGap, guardOpening, hoistChain, inspectionInterval,
	jackPressure, liftStandard, linkSize, pressDistance, pressRule, pumpDisplacement, ratingPlate,
	receiverValve, reliefSetting, reservoirLevel, riskCell, ropeBaseline, ropeISO, ropeLoad, ropeShare,
	signalWord, wheelExposure, wheelSpeed,
	receiverPressure, rollerChain, ropeDiameter, ropeWires, slab, thread, tieDowns, tongueWeight,
}, machineRules...)

// All gives the definitions of the limits, sorted by name.
func All() []Definition {
	out := make([]Definition, len(rules))
	for i := range rules {
		out[i] = rules[i].Definition
		out[i].Subject = subjectOf(out[i].Name)
		out[i].Called = called[out[i].Name]
		out[i].Quantities = append([]Input(nil), out[i].Quantities...)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Name < out[j].Name })
	return out
}

// Compute holds values against the limit of that name. Values are text with
// their unit ("0.352 in"), words are words; the key "maker" gives the maker's
// own limit where the definition has one. Errors are *Error.
//
// A figure that is common practice or from memory never gives Within: not
// passing it is Computed, since such a figure can warn but not clear.
func Compute(name string, given map[string]string) (Result, error) {
	return ComputeIn(nil, name, given)
}

// ComputeIn computes as Compute does and speaks with a voice.
func ComputeIn(v *say.Voice, name string, given map[string]string) (Result, error) {
	for i := range rules {
		if rules[i].Name == name {
			res, err := rules[i].compute(v, given)
			if err != nil {
				return Result{}, err
			}
			return res, nil
		}
	}
	names := make([]string, len(rules))
	for i := range rules {
		names[i] = rules[i].Name
	}
	sort.Strings(names)
	return Result{}, refuse("", "there is no limit named "+quote(name), "it is one of "+strings.Join(names, ", "))
}

func (r *rule) compute(v *say.Voice, given map[string]string) (Result, *Error) {
	m, err := r.measure(given)
	if err != nil {
		return Result{}, err
	}
	m.voice = v
	res, err := r.judge(m)
	if err != nil {
		return Result{}, err
	}
	res.Name = r.Name
	if res.Formula == "" {
		res.Formula = r.Formula
	}
	if res.Source == "" {
		res.Source = r.Source
	}
	if res.Status == "" {
		res.Status = r.Status
	}
	if res.Caution == "" {
		res.Caution = r.Caution
	}
	warnOnly(&res)
	if !finite(&res) {
		return Result{}, refuse("", "these values give no finite result", "check each number and its unit")
	}
	res.Value = tidy(res.Value)
	if res.Limit != nil {
		res.Limit = ptr(tidy(*res.Limit))
	}
	for i := range res.More {
		res.More[i].Value = tidy(res.More[i].Value)
	}
	return res, nil
}

// tidy rounds to ten significant digits, once, after every finding is made: so
// the last bit of a float shows nowhere.
func tidy(x float64) float64 {
	out, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 10, 64), 64)
	if err != nil {
		return x
	}
	return out
}

// warnOnly keeps figures without a standard behind them from clearing anything.
func warnOnly(res *Result) {
	standing := map[Status]string{Practice: "common practice", Memory: "from memory"}[res.Status]
	if standing == "" {
		return
	}
	if res.Finding == Within {
		res.Finding = Computed
	}
	res.Text = strings.TrimSuffix(res.Text, ".") + "; the figure is " + standing + " and can only warn."
}

func finite(res *Result) bool {
	ok := func(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
	if !ok(res.Value) || (res.Limit != nil && !ok(*res.Limit)) {
		return false
	}
	for _, f := range res.More {
		if !ok(f.Value) {
			return false
		}
	}
	return true
}

// slack is the relative size of a float's rounding that must not decide a
// finding: exactly 5 % is not more than 5 %.
const slack = 1e-9

// more tells whether a exceeds b by more than rounding. The conversions keep
// processors from fusing a product into the difference.
func more(a, b float64) bool {
	return float64(a)-float64(b) > float64(slack*math.Max(math.Abs(a), math.Abs(b)))
}

// least tells whether a reaches b, rounding aside.
func least(a, b float64) bool { return !more(b, a) }
