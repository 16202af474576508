package limit

var axleLoad = rule{
	Definition: Definition{
		Name: "axle-load", Title: "Load of a vehicle on axles and arms",
		Quantities: []Input{
			{Name: "weight", Title: "weight of the vehicle", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "front-share", Title: "share on the front axle", Dimension: "share", Unit: "%", Metric: "%", Optional: true, Either: "place"},
			{Name: "offset", Title: "centre of gravity behind the front axle", Dimension: "length", Unit: "in", Metric: "mm", Optional: true, Either: "place"},
			{Name: "wheelbase", Title: "wheelbase", Dimension: "length", Unit: "in", Metric: "mm", Optional: true, Either: "place"},
			{Name: "rated", Title: "rated capacity of the lift", Dimension: "mass", Unit: "lb", Metric: "kg", Optional: true},
			{Name: "arms", Title: "arms of the lift", Dimension: "number", Optional: true, Default: "4"},
		},
		Formula: "rear = weight x offset / wheelbase; arm = axle / (arms / 2), against rated / arms",
		Source:  "statics; lift dealers' published advice: each arm carries its part of the rating",
		Status:  Practice, Caution: "The lift's own plate and manual overrule. " + liftCaution, Maker: "mass",
	},
	bounds:    map[string]bound{"weight": {100, 2e5}, "front-share": {5, 95}, "offset": {1, 600}, "wheelbase": {20, 600}, "rated": {100, 2e5}, "arms": {2, 8}},
	makerUnit: "lb",
	judge:     judgeAxle,
}

// frontShare gives the share of the weight on the front axle.
func frontShare(m *measured) (float64, *Error) {
	where := m.has("offset") || m.has("wheelbase")
	switch {
	case m.has("front-share") && where:
		return 0, refuse("front-share", m.T("the share and the centre of gravity were both given"), m.T("give one of them"))
	case m.has("front-share"):
		return m.n("front-share") / 100, nil
	case !where:
		return 0, refuse("front-share", m.T("it is not known where the weight stands"), m.T("give the share on the front axle, or offset and wheelbase"))
	case !m.has("offset"):
		return 0, refuse("offset", m.T("the wheelbase alone tells nothing"), m.T("give how far the centre of gravity is behind the front axle"))
	case !m.has("wheelbase"):
		return 0, refuse("wheelbase", m.T("the wheelbase is missing"), m.T("measure from axle to axle"))
	case m.n("offset") >= m.n("wheelbase"):
		return 0, refuse("offset", m.T("the centre of gravity cannot lie behind the rear axle"), m.T("check both lengths"))
	}
	return 1 - m.n("offset")/m.n("wheelbase"), nil
}

func judgeAxle(m *measured) (Result, *Error) {
	share, err := frontShare(m)
	if err != nil {
		return Result{}, err
	}
	arms := m.n("arms")
	if int(arms)%2 == 1 {
		return Result{}, refuse("arms", m.F("%s arms do not share two axles", m.show(arms, 0)), m.T("give an even number, 4 for a two-post lift"))
	}
	w := m.n("weight")
	front, rear := w*share, w*(1-share)
	each := max(front, rear) / (arms / 2)
	res := Result{Finding: Computed, Status: Physics, Text: m.F("The heavier axle puts %s on each of its arms.", m.in(each, "weight"))}
	res.Value, res.Unit = m.to(each, "weight")
	more1 := []Figure{
		m.figure(m.T("front axle"), front, "weight"), m.figure(m.T("rear axle"), rear, "weight"),
		m.figure(m.T("front arm"), front/(arms/2), "weight"), m.figure(m.T("rear arm"), rear/(arms/2), "weight"),
	}
	limit := m.n("rated") / arms
	whose := m.F("its part of the rating, %s", m.in(limit, "weight"))
	maker, ok := m.maker("lb")
	if ok {
		limit, whose = maker, m.F("the maker's %s", m.in(maker, "weight"))
	}
	if ok || m.has("rated") {
		res = m.held(each, limit, "weight")
		if ok {
			m.own(&res, *res.Limit)
		}
		is := m.F("The heavier axle puts %s on each of its arms", m.in(each, "weight"))
		res.Text = m.F("%s, not more than %s.", is, whose)
		if more(each, limit) {
			res.Finding, res.Text = Beyond, m.F("%s, more than %s.", is, whose)
		}
	}
	if m.has("rated") && more(w, m.n("rated")) {
		res = m.held(w, m.n("rated"), "weight")
		res.Finding, res.Status, res.Source = Beyond, Published, m.T("the lift's plate; Michigan R 408.17251: never above rated capacity")
		res.Text = m.F("The vehicle weighs %s, more than the lift's rating of %s.", m.in(w, "weight"), m.in(m.n("rated"), "rated"))
	}
	res.More = more1
	return res, nil
}
