package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"time"

	"asfound/rubrics/document/form"
	"asfound/rubrics/document/pdf"
)

const papersPath = ".cache/papers"

// drawnPaper is one paper that is drawn for the bench, with what it took natively.
type drawnPaper struct {
	Name   string        `json:"name"`
	Photos []string      `json:"photos"` // files beside it, in the order of its keys
	Keys   []string      `json:"keys"`
	Doc    form.Document `json:"document"`
	bytes  int
	ms     float64
}

// drawPapers leaves the papers of the bench in a folder, for the browser to draw too:
// the estimate of the demo's walked lift, the same with 60 lines, and that with 80
// photos of about 40 kB.
func drawPapers(ctx context.Context) ([]*drawnPaper, error) {
	if err := os.MkdirAll(papersPath, 0o755); err != nil {
		return nil, err
	}
	made := filepath.Join(papersPath, "estimate.json")
	if err := runIn(ctx, ".", ".cache/asfound-test", "document", "testdata/demo/1-lift-walked.json", "-o", made); err != nil {
		return nil, err
	}
	src, err := os.ReadFile(made)
	if err != nil {
		return nil, err
	}
	var usual form.Document
	if err := json.Unmarshal(src, &usual); err != nil {
		return nil, err
	}
	var parts []form.Block
	for _, b := range usual.Blocks {
		if b.Kind == "part" {
			parts = append(parts, b)
		}
	}
	if len(parts) == 0 {
		return nil, fmt.Errorf("the estimate of the demo has no lines")
	}
	long, full := usual, usual
	long.Blocks, full.Blocks = slices.Clone(usual.Blocks), slices.Clone(usual.Blocks)
	var photos, keys []string
	for i := range 60 {
		line := parts[i%len(parts)]
		long.Blocks = append(long.Blocks, line)
		line.Blocks = slices.Clone(line.Blocks)
		block := form.Block{Kind: "photos"}
		for len(keys) < 80*(i+1)/60 {
			name := fmt.Sprintf("photo-%d.jpg", len(keys))
			if err := os.WriteFile(filepath.Join(papersPath, name), noisePhoto(len(keys)), 0o644); err != nil {
				return nil, err
			}
			block.Photos = append(block.Photos, form.Photo{Key: name, Caption: "Invented picture"})
			photos, keys = append(photos, name), append(keys, name)
		}
		line.Blocks = append(line.Blocks, block)
		full.Blocks = append(full.Blocks, line)
	}
	all := []*drawnPaper{{Name: "the demo's estimate", Doc: usual}, {Name: "with 60 lines more", Doc: long}, {Name: "with 60 lines more and 80 photos", Doc: full, Photos: photos, Keys: keys}}
	for i, p := range all {
		if err := p.native(); err != nil {
			return nil, err
		}
		text, err := json.Marshal(p)
		if err != nil {
			return nil, err
		}
		if err := os.WriteFile(filepath.Join(papersPath, fmt.Sprintf("%d.json", i)), text, 0o644); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// native draws the paper eleven times and keeps the middle time.
func (p *drawnPaper) native() error {
	sources := map[string][]byte{}
	for i, key := range p.Keys {
		src, err := os.ReadFile(filepath.Join(papersPath, p.Photos[i]))
		if err != nil {
			return err
		}
		sources[key] = src
	}
	var times []float64
	for range 11 {
		start := time.Now()
		out, err := pdf.Render(p.Doc, pdf.Letter, func(key string) []byte { return sources[key] })
		if err != nil {
			return err
		}
		times = append(times, float64(time.Since(start).Microseconds())/1000)
		p.bytes = len(out)
	}
	slices.Sort(times)
	p.ms = times[len(times)/2]
	return nil
}

// noisePhoto is a picture of nothing of about 40 kB, another for each number.
func noisePhoto(n int) []byte {
	random := rand.New(rand.NewPCG(uint64(n), 1))
	picture := image.NewGray(image.Rect(0, 0, 800, 600))
	for y := range 600 {
		for x := range 800 {
			picture.SetGray(x, y, color.Gray{Y: uint8(100 + (x+y*n)%60 + random.IntN(24))})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: 30}); err != nil {
		panic(err) // a picture in memory always can be written
	}
	return out.Bytes()
}

// paperTimes is what the browser measured: the module's start, then each paper
// drawn first and drawn again, in ms, and the size of its file.
type paperTimes struct {
	Ready  float64 `json:"ready"`
	Papers []struct {
		First float64 `json:"first"`
		Warm  float64 `json:"warm"`
		Bytes int     `json:"bytes"`
	} `json:"papers"`
}

func printPapers(all []*drawnPaper, worker, throttled paperTimes) {
	fmt.Println("\n| one paper as PDF | file, bytes | native, ms | browser worker, first and again, ms | same module, processor throttled 4x, ms |")
	fmt.Println("|---|---|---|---|---|")
	for i, p := range all {
		w, t := worker.Papers[i], throttled.Papers[i]
		same := ""
		if w.Bytes != p.bytes || t.Bytes != p.bytes {
			same = " (the browser's differs)"
		}
		fmt.Printf("| %s | %d%s | %.0f | %.0f, %.0f | %.0f, %.0f |\n", p.Name, p.bytes, same, p.ms, w.First, w.Warm, t.First, t.Warm)
	}
	fmt.Printf("\nThe module for papers is ready %.0f ms after it was fetched in the worker, %.0f ms throttled.\n", worker.Ready, throttled.Ready)
}
