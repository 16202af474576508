package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
)

// listBench is what bench-listings.mjs measured of the list of listings.
type listBench struct {
	Listings, Photos, Rows int
	SyncS                  float64 `json:"sync_s"`
	Plain, Slow            listRun
}

type listRun struct {
	First  []float64 // to the first cards, ms
	Scroll listScroll
	Again  listScroll
	HeapMB float64 `json:"heap_mb"`
	Keys   []float64
}

// listScroll is one way through 12,000 pixels: gaps between frames in ms.
type listScroll struct {
	Frames, Over50     int
	Median, P95, Worst float64
	WorkMS             *float64 `json:"work_ms"` // of the page's thread; nil where the system does not tell
}

func listings(ctx context.Context) (listBench, error) {
	cmd := exec.CommandContext(ctx, "node", "bench-listings.mjs")
	cmd.Dir, cmd.Stderr = "pwa", os.Stderr
	var b listBench
	out, err := cmd.Output()
	if err == nil {
		err = json.Unmarshal(out, &b)
	}
	if err != nil {
		return b, fmt.Errorf("the measures of the list: %w: %s", err, out)
	}
	return b, nil
}

func (b listBench) print() {
	fmt.Printf("\n%d listings and %d photos named in them (%d rows, fetched in %.0f s), read with the server stopped:\n\n", b.Listings, b.Photos, b.Rows, b.SyncS)
	fmt.Println("| the list | first cards, ms, each run | frame while scrolling 12,000 px, ms: median, 95 %, worst | over 50 ms | page's thread, ms | heap, MB | letter typed to its answer drawn, ms |")
	fmt.Println("|---|---|---|---|---|---|---|")
	for _, r := range []struct {
		name string
		run  listRun
	}{{"plain", b.Plain}, {"page throttled 4x", b.Slow}} {
		for i, s := range []listScroll{r.run.Scroll, r.run.Again} {
			first, heap, keys, work := "", "", "", "-"
			if i == 0 {
				first, heap, keys = whole(r.run.First), fmt.Sprintf("%.0f", r.run.HeapMB), whole(r.run.Keys)
			}
			if s.WorkMS != nil {
				work = fmt.Sprintf("%.0f", *s.WorkMS)
			}
			fmt.Printf("| %s, %s | %s | %.0f, %.0f, %.0f | %d of %d | %s | %s | %s |\n", r.name, []string{"first way down", "further down"}[i],
				first, s.Median, s.P95, s.Worst, s.Over50, s.Frames, work, heap, keys)
		}
	}
}
