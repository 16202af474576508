package appraisal

// always is said with every verdict.
func (v voice) always() []string {
	return []string{
		v.T("The maker's manual comes first; where it and this record differ, the manual holds."),
		v.T("Local code decides what may be installed and used, and what must be inspected."),
		v.T("A qualified inspector looks at it before anyone uses it."),
	}
}

// verdict follows the most severe finding; no average buys it off.
func (v voice) verdict(walked []judged) Verdict {
	var failedDanger, stop, unproven []Point
	for i := range walked {
		j := &walked[i]
		if !j.applies {
			continue
		}
		p := Point{Check: j.check.ID, Title: j.check.Title, Hazard: j.check.Hazard, Grade: j.grade}
		danger, warning := j.check.Hazard == "danger", j.check.Hazard == "warning"
		switch {
		case danger && j.grade == nil:
			unproven = append(unproven, p)
		case danger && *j.grade == 0:
			failedDanger = append(failedDanger, p)
		case danger && *j.grade == 1, warning && j.grade != nil && *j.grade == 0:
			stop = append(stop, p)
		}
	}
	out := Verdict{Always: v.always()}
	switch {
	case len(failedDanger) > 0:
		out.Code, out.Title, out.Hazard = "do-not-use", v.T("Do not use: tag it out"), "danger"
		out.Points = append(failedDanger, stop...)
		out.Sentence = v.many(len(failedDanger), "One point failed where failure can kill. Nobody loads it, runs it or stands under it.",
			"%s points failed where failure can kill. Nobody loads it, runs it or stands under it.")
	case len(stop) > 0:
		out.Code, out.Title, out.Hazard = "repair-first", v.T("Repair before use"), "warning"
		if len(unproven) > 0 {
			out.Title = v.T("Repair before use, and not proven")
		}
		out.Points = stop
		out.Sentence = v.many(len(stop), "One point must be put right before it is used.", "%s points must be put right before it is used.")
	case len(unproven) > 0:
		out.Code, out.Title, out.Hazard = "not-proven", v.T("Not proven"), "warning"
		out.Points = unproven
		out.Sentence = v.many(len(unproven), "One point where failure can kill was not checked.", "%s points where failure can kill were not checked.")
	default:
		out.Code, out.Title, out.Hazard = "no-stop-found", v.T("No stop item found"), "notice"
		out.Points = []Point{}
		out.Sentence = v.T("Every danger point was checked and none stopped it. That is a finding of today, not a promise.")
	}
	if out.Code != "not-proven" && len(unproven) > 0 {
		out.Sentence += " " + v.many(len(unproven), "One more point where failure can kill was not checked.", "%s more points where failure can kill were not checked.")
	}
	return out
}
