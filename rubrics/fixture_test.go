package rubrics

import (
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
)

// fixture is a small rubric with every kind of reference; tests break it line by line.
const fixture = `id: small
version: 1
kind: Small machine
about: A machine for tests.
cautions: [Stand clear.]
capacity: {title: Load, unit: lb, exponent: 0.6}
life: {low: 10, likely: 20, high: 30}
depreciation: {survivor: S1, inutility: 0.7}
scrap:
  value: {low: 1, likely: 2, high: 3}
  haul: {low: 1, likely: 2, high: 3}
care:
  prior:
    private: [0.3, 0.5, 0.2]
  bad: [0.03, 0.1, 0.3]
  failed: 0.25
facts:
  - id: drive
    ask: Which drive?
    options:
      - {id: belt, title: Belt}
      - {id: gear, title: Gear}
landing:
  - {id: truck, title: Truck, cost: {low: 0, likely: 1, high: 2}, hours: {low: 0, likely: 0, high: 0}}
preparations:
  - id: drain
    title: Drain
    hours: {low: 1, likely: 1, high: 1}
    rate: own
    needs: [lock]
  - {id: lock, title: Lock out, hours: {low: 0, likely: 0, high: 0}, rate: own}
remedies:
  - id: new-pin
    title: New pin
    ways:
      - id: bought
        kind: buy
        title: Buy it
        parts: [{part: pin, quantity: 2}]
        hours: {low: 1, likely: 2, high: 3}
        rate: own
        preparations: [drain]
      - id: made
        kind: make
        title: Turn it
        hours: {low: 0, likely: 0, high: 0}
        rate: own
        make:
          setup: 10
          load: 1
          finish: 1
          pieces: 1
          spread: 0.2
          cuts:
            - {title: Turn, diameter: 1, length: 3, speed: 90, feed: 0.01, passes: 2}
sections:
  - id: papers
    title: Papers
    state: documents
    checks:
      - id: plate
        title: Plate
        kind: read
        hazard: warning
        weight: {safety: 1, condition: 1}
        minutes: 1
        how: Read it.
        grades: {sound: There, failed: Gone}
        remedies: {failed: scrap}
  - id: rope
    title: Rope
    state: power-off
    checks:
      - id: rope-size
        title: Rope size
        kind: measure
        hazard: danger
        weight: {safety: 5, condition: 2}
        minutes: 3
        caution: Locked out.
        how: Measure it.
        when: {drive: [belt]}
        grades: {sound: Full, worn: Thin, failed: Too thin}
        remedies: {worn: new-pin, failed: new-pin}
        limit: {name: rope-diameter, ask: [nominal, measured], within: sound, watch: worn, beyond: failed}
...
`

var fixtureOptions = Options{
	Parts:  []appraisal.Part{{ID: "pin", Title: "Pin", Unit: "piece", Price: appraisal.Range{Low: 1, Likely: 2, High: 3}}},
	Limits: limit.All(),
}

// breakIt replaces old, which must stand in the fixture once, by text.
func breakIt(t *testing.T, old, text string) []byte {
	t.Helper()
	if n := strings.Count(fixture, old); n != 1 {
		t.Fatalf("%q stands %d times in the fixture", old, n)
	}
	return []byte(strings.Replace(fixture, old, text, 1))
}
