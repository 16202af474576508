//go:build !race

package appraisal_test

// machines is how many are simulated in each world.
const machines = 400
