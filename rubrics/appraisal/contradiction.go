package appraisal

// contradictions notes findings that do not go together. None of them is dropped
// or softened: the graver one counts until somebody looks again.
func contradictions(walked []judged, n *notes) {
	for i := range walked {
		j := &walked[i]
		x := &j.finding
		switch {
		case !j.applies && (x.Grade != nil || len(x.Measured) > 0 || len(x.Words) > 0):
			n.add("%s: a finding stands here, but by the facts told the point does not apply: the finding is kept, and counts for nothing.", j.check.Title)
		case j.applies && x.Grade != nil && *x.Grade > *j.grade:
			n.add("%s: graded %s, but what was measured is beyond its limit: it counts as %s.", j.check.Title, n.voice.grade(*x.Grade), n.voice.grade(*j.grade))
		}
	}
	alone(walked, n)
}

// fewOthers is how many other points must be as new before one that rules repair
// out looks like a slip of the thumb (judgement).
const fewOthers = 3

// alone notes a single finding that rules repair out where all else is as new.
func alone(walked []judged, n *notes) {
	var scrap *judged
	others := 0
	for i := range walked {
		j := &walked[i]
		switch {
		case !j.checked():
		case j.remedy() == "scrap" && scrap == nil:
			scrap = j
		case *j.grade == 4:
			others++
		default:
			return
		}
	}
	if scrap != nil && others >= fewOthers {
		n.add("%s rules repair out, and all else that was checked is as new: look there once more. Until then it counts as found.", scrap.check.Title)
	}
}
