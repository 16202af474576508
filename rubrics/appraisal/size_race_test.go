//go:build race

package appraisal_test

// machines is fewer under the race detector, which makes each take five times as long.
const machines = 80
