// Package record holds the shop's data model and its merge: stamps, clocks, entries and rows.
//
// It does no I/O and keeps no state, so the server, a test and any other program can use it alike; a twin in
// TypeScript runs in the app, and both run the vectors in testdata/merges.
//
// A row is what is known about one (doc, path): at most one entry per device, and per device the highest stamp
// that some entry replaced or settled. Rows form a join-semilattice: Merge is commutative, associative and
// idempotent, so exchanges may be lost, doubled or reordered and all sides still end with the same bytes.
package record
