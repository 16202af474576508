package appraisal

// Region scales example prices and hired work; what the user entered, and his own
// hours and machine, stand as they are.

const plainRegion = 100_00 // basis points

// region is the shop's factor in basis points; 0 in the file says none.
func (f *File) region() int {
	if f.Shop.Region == 0 {
		return plainRegion
	}
	return f.Shop.Region
}

func (p *pricing) regional(m Money) Money {
	if p.file.region() == plainRegion {
		return m
	}
	return cents(float64(m) * float64(p.file.region()) / plainRegion)
}

func (p *pricing) regionalRange(r Range) Range {
	return Range{p.regional(r.Low), p.regional(r.Likely), p.regional(r.High)}
}

// hired tells whether the hours of a rate are somebody else's.
func hired(trade string) bool { return trade != "own" && trade != "machine" }
