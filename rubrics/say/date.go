package say

import (
	"strconv"
	"strings"
)

var months = []string{
	Key("January"), Key("February"), Key("March"), Key("April"), Key("May"), Key("June"),
	Key("July"), Key("August"), Key("September"), Key("October"), Key("November"), Key("December"),
}

// Date writes a day given as YYYY-MM-DD in words; what is none is left as it is.
func (v *Voice) Date(day string) string {
	parts := strings.Split(day, "-")
	if len(parts) != 3 {
		return day
	}
	month, err := strconv.Atoi(parts[1])
	date, err2 := strconv.Atoi(parts[2])
	if err != nil || err2 != nil || month < 1 || month > 12 {
		return day
	}
	pattern := strings.Replace(v.Locale().Date, "MMMM", "\x00", 1)
	pattern = strings.Replace(pattern, "y", parts[0], 1)
	pattern = strings.Replace(pattern, "d", strconv.Itoa(date), 1)
	return strings.Replace(pattern, "\x00", v.Label(months[month-1]), 1)
}
