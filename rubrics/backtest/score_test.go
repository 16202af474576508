package backtest

import (
	"math"
	"testing"
)

// References: the definitions in Gneiting and Raftery, JASA 102:359-378 (2007),
// from memory, reckoned by hand.
func TestScoringRules(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"M58 above", Pinball(0.9, 100, 130), 27},
		{"M58 below", Pinball(0.9, 100, 80), 2},
		{"M58 on it", Pinball(0.9, 100, 100), 0},
		{"M59", IntervalScore(0.2, 900, 1300, 1400), 1400},
		{"M59 below", IntervalScore(0.2, 900, 1300, 850), 900},
		{"M59 inside", IntervalScore(0.2, 900, 1300, 1000), 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			if math.Abs(c.got-c.want) > 1e-9 {
				t.Errorf("%v, want %v", c.got, c.want)
			}
		})
	}
}

// Four rows reckoned by hand.
func TestScores(t *testing.T) {
	at := [len(quantiles)]float64{50, 60, 80, 100, 120, 150, 200}
	s := scorer{results: []result{
		{price: 100, found: 100, unadjusted: 110, middle: 200, quantiles: at},
		{price: 130, found: 100, unadjusted: 120, middle: 200, quantiles: at}, // in 80 %
		{price: 180, found: 100, unadjusted: 120, middle: 200, quantiles: at}, // in 90 %
		{price: 40, found: 100, unadjusted: 80, middle: 200, quantiles: at},   // outside
	}}
	got := s.scores()
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"median error", got.MedianError, (100.0*30/130 + 100.0*80/180) / 2},
		{"mean error", got.MeanError, (0 + 100.0*30/130 + 100.0*80/180 + 150) / 4},
		{"unadjusted", got.Unadjusted, (10 + 100.0*60/180) / 2},
		{"baseline", got.Baseline, (100 + 100.0*70/130) / 2},
		{"coverage 50", got.Coverage50, 25},
		{"coverage 80", got.Coverage80, 50},
		{"coverage 90", got.Coverage90, 75},
		{"interval score", got.IntervalScore, (90 + 90 + 90 + 10*30 + 90 + 10*20) / 4.0},
		// .1, .25, .5, .75 and .9 of the four prices, one line a price.
		{"pinball loss", got.PinballLoss, (0.1*40 + 0.25*20 + 0 + 0.25*20 + 0.1*50 +
			0.1*70 + 0.25*50 + 0.5*30 + 0.75*10 + 0.1*20 +
			0.1*120 + 0.25*100 + 0.5*80 + 0.75*60 + 0.9*30 +
			0.9*20 + 0.75*40 + 0.5*60 + 0.25*80 + 0.1*110) / 20},
		{"gain", got.Gain, 100 * (1 - got.MedianError/got.Unadjusted)},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s is %v, want %v", c.name, c.got, c.want)
		}
	}
	if got.N != 4 {
		t.Errorf("%d rows", got.N)
	}
	if none := (&scorer{}).scores(); none != (Scores{}) {
		t.Errorf("no rows give %+v", none)
	}
}
