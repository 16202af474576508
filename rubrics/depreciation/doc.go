// Package depreciation is how equipment loses worth: published curves, schedules
// and rules of the cost approach, each a pure function of its arguments. It must
// not know of appraisals, rubrics, files or the clock.
//
// Shares are between 0 and 1; only PercentGood, an assessor's printed figure, is
// in percent. Money may be in any unit and comes back in the same. Every function
// refuses what makes no sense with an *Error; Miscellaneous alone takes any
// number, and says what it makes of it.
package depreciation
