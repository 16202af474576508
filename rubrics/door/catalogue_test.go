package door

import (
	"math"
	"testing"
)

// TestMiles holds the units of a distance to the international mile of 1959,
// 1609.344 m exactly (NIST SP 811, 2008, Appendix B.8).
func TestMiles(t *testing.T) {
	m := NewCatalogue(nil, nil, "").Miles
	if m["mi"] != 1 || math.Abs(m["km"]*1.609344-1) > 1e-15 || len(m) != 2 {
		t.Errorf("%v", m)
	}
}
