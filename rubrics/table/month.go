package table

import "strings"

// monthNames are the months as Fold writes them, in English, German, Spanish and
// French, long and short.
var monthNames = [12]string{
	"january jan januar janner jaenner enero ene janvier janv",
	"february feb februar febrero fevrier fevr fev",
	"march mar marz maerz mrz marzo mars",
	"april apr abril abr avril avr",
	"may mai mayo",
	"june jun juni junio juin",
	"july jul juli julio juillet juil",
	"august aug agosto ago aout",
	"september sep sept septiembre setiembre septembre",
	"october oct oktober okt octubre octobre",
	"november nov noviembre novembre",
	"december dec dezember dez diciembre dic decembre",
}

var months = monthNumbers()

func monthNumbers() map[string]int {
	m := map[string]int{}
	for i, names := range monthNames {
		for _, n := range strings.Fields(names) {
			m[n] = i + 1
		}
	}
	return m
}
