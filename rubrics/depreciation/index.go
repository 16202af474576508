package depreciation

// Trended brings a cost from the day its index stood at then to the day it stands
// at now: cost now / then, both of one series and base. The ratio counts, never
// the difference in points (rule of the US Bureau of Labor Statistics' guide to
// price adjustment, from memory).
func Trended(cost, then, now float64) (float64, error) {
	r, err := ratio("index", now, then)
	if err = first(between("cost", cost, 0, mostPrice, ""), err); err != nil {
		return 0, err
	}
	return cost * r, nil
}
