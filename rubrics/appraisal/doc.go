// Package appraisal is the judgement: findings become scores and a verdict, an
// estimate, an allowance for what was not checked, worth, and three prices.
//
// It is pure: no I/O, no clock, no outside randomness. The same File and Rubric
// give the same bytes in every build, so amounts are drawn with own arithmetic
// kernels and rounded once, to cents, at the border.
package appraisal
