package appraisal

import "fmt"

// always is said with every verdict.
var always = []string{
	"The maker's manual comes first; where it and this record differ, the manual holds.",
	"Local code decides what may be installed and used, and what must be inspected.",
	"A qualified inspector looks at it before anyone uses it.",
}

// verdict follows the most severe finding; no average buys it off.
func verdict(walked []judged) Verdict {
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
	v := Verdict{Always: always}
	switch {
	case len(failedDanger) > 0:
		v.Code, v.Title, v.Hazard = "do-not-use", "Do not use: tag it out", "danger"
		v.Points = append(failedDanger, stop...)
		v.Sentence = fmt.Sprintf("%s failed where failure can kill. Nobody loads it, runs it or stands under it.", count(len(failedDanger), "point"))
	case len(stop) > 0:
		v.Code, v.Title, v.Hazard = "repair-first", "Repair before use", "warning"
		if len(unproven) > 0 {
			v.Title = "Repair before use, and not proven"
		}
		v.Points = stop
		v.Sentence = fmt.Sprintf("%s must be put right before it is used.", count(len(stop), "point"))
	case len(unproven) > 0:
		v.Code, v.Title, v.Hazard = "not-proven", "Not proven", "warning"
		v.Points = unproven
		v.Sentence = fmt.Sprintf("%s where failure can kill %s not checked.", count(len(unproven), "point"), wereWas(len(unproven)))
	default:
		v.Code, v.Title, v.Hazard = "no-stop-found", "No stop item found", "notice"
		v.Points = []Point{}
		v.Sentence = "Every danger point was checked and none stopped it. That is a finding of today, not a promise."
	}
	if v.Code != "not-proven" && len(unproven) > 0 {
		v.Sentence += fmt.Sprintf(" %s where failure can kill %s not checked.", count(len(unproven), "more point"), wereWas(len(unproven)))
	}
	return v
}
