package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"time"

	"asfound/rubrics/appraisal"
	"asfound/server/record"
)

// demoDevice stamps the demo's entries.
const demoDevice = "00000000000de301"

// demo is the invented shop: appraisal files in testdata/demo, and pictures drawn
// for them.
type demo struct {
	clock record.Clock
	now   int64
	rows  []record.Row
	pics  map[string][]byte // by hash
	// compared marks the kinds whose comparables are entered.
	compared map[string]bool
}

// seed fills a running server with the invented shop.
func seed(ctx context.Context, base string) error {
	d := &demo{clock: record.Clock{Device: demoDevice}, now: time.Now().UnixMilli(), pics: map[string][]byte{}, compared: map[string]bool{}}
	names, err := filepath.Glob("testdata/demo/*.json")
	if err != nil {
		return err
	}
	sort.Strings(names)
	for i, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		doc, err := appraisal.Decode(src)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if err := d.listing(i, strings.TrimSuffix(filepath.Base(name), ".json"), &doc.File); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if i == 0 {
			if err := d.shop(&doc.File); err != nil {
				return err
			}
		}
	}
	if err := d.push(ctx, base); err != nil {
		return err
	}
	for hash, pic := range d.pics {
		if err := upload(ctx, base, hash, pic); err != nil {
			return err
		}
	}
	return nil
}

// put adds one entry.
func (d *demo) put(doc, path string, value any) error {
	text, err := json.Marshal(value)
	if err != nil {
		return err
	}
	stamp, err := d.clock.Tick(d.now)
	if err != nil {
		return err
	}
	value2, err := record.Canonical(text)
	if err != nil {
		return fmt.Errorf("%s %s: %w", doc, path, err)
	}
	row := record.Row{Doc: doc, Path: path, Entries: []record.Entry{{Value: value2, Stamp: stamp}}}
	d.rows = append(d.rows, row)
	return nil
}

// fields is a list of paths with values; nil and empty values are left out.
type field struct {
	path  string
	value any
	have  bool
}

func (d *demo) putAll(doc string, fields []field) error {
	for _, f := range fields {
		if f.have {
			if err := d.put(doc, f.path, f.value); err != nil {
				return err
			}
		}
	}
	return nil
}

// listing turns an appraisal file into the records the app keeps.
func (d *demo) listing(n int, name string, f *appraisal.File) error {
	doc := fmt.Sprintf("listing:0000000000000000000000de%02d", n+1)
	l := &f.Listing
	fields := []field{
		{"rubric", f.Rubric, true}, {"title", l.Title, true}, {"date", f.Date, true},
		{"maker", l.Maker, l.Maker != ""}, {"model", l.Model, l.Model != ""}, {"serial", l.Serial, l.Serial != ""},
		{"made", l.Made, l.Made != 0}, {"capacity", l.Capacity, l.Capacity != nil}, {"place", l.Place, l.Place != ""},
		{"hours", l.Hours, l.Hours != 0}, {"effective_age", l.EffectiveAge, l.EffectiveAge != 0},
		{"distance", l.Distance, l.Distance != nil}, {"asking", l.Asking, l.Asking != nil}, {"seller", l.Seller, l.Seller != ""},
		{"weight", l.Weight, l.Weight != nil}, {"length", l.Length, l.Length != nil}, {"width", l.Width, l.Width != nil}, {"height", l.Height, l.Height != nil},
		{"power", l.Power, l.Power != nil}, {"voltage", l.Voltage, l.Voltage != nil}, {"phases", l.Phases, l.Phases != 0}, {"current", l.Current, l.Current != nil},
		{"seen", l.Seen, l.Seen != ""}, {"text", l.Text, l.Text != ""}, {"note", l.Note, l.Note != ""},
		{"newprice", f.NewPrice, f.NewPrice != nil}, {"care", f.Care, f.Care != nil},
	}
	for _, k := range sorted(f.Facts) {
		fields = append(fields, field{"fact/" + k, f.Facts[k], true})
	}
	for _, k := range sorted(f.Ways) {
		fields = append(fields, field{"way/" + k, f.Ways[k], true})
	}
	for _, k := range sorted(f.Landing) {
		fields = append(fields, field{"landing/" + k, f.Landing[k], true})
	}
	for _, k := range sorted(f.Findings) {
		x := f.Findings[k]
		at := "finding/" + k + "/"
		measured := map[string]any{"quantities": x.Measured}
		if x.Words != nil {
			measured["words"] = x.Words
		}
		if x.Maker != nil {
			measured["maker"] = x.Maker
		}
		fields = append(fields,
			field{at + "answer", map[string]any{"grade": x.Grade}, x.Grade != nil},
			field{at + "answer", map[string]any{"skipped": x.Skipped}, x.Skipped != ""},
			field{at + "measured", measured, x.Measured != nil},
			field{at + "note", x.Note, x.Note != ""})
	}
	hash, pic, err := drawing(f.Rubric.ID, l.Title)
	if err != nil {
		return err
	}
	d.pics[hash] = pic
	fields = append(fields, field{"photo/" + hash, map[string]any{"at": f.Date, "width": drawnWidth, "height": drawnHeight}, true})
	if err := d.putAll(doc, fields); err != nil {
		return err
	}
	if d.compared[f.Rubric.ID] {
		return nil // comparables belong to the shop, not to one listing
	}
	d.compared[f.Rubric.ID] = true
	for i, c := range f.Comparables {
		id := fmt.Sprintf("0000000000000000000c%02d%04d", n+1, i)
		c.ID = id
		if err := d.put("comparables", "item/"+id, withKind(c, f.Rubric.ID)); err != nil {
			return err
		}
	}
	return nil
}

// withKind is a comparable as the app keeps it: with the rubric it belongs to.
func withKind(c appraisal.Comparable, kind string) any {
	return struct {
		appraisal.Comparable
		Kind string `json:"kind"`
	}{c, kind}
}

// shop keeps the settings and prices of the first file.
func (d *demo) shop(f *appraisal.File) error {
	s := &f.Shop
	fields := []field{
		{"currency", s.Currency, true}, {"units", s.Units, true}, {"tax", s.Tax, true}, {"fees", s.Fees, true},
		{"odds", s.Odds, true}, {"overrun", s.Overrun, true}, {"kept", s.Kept, true},
		{"day", s.Day, s.Day != 0},
	}
	for _, k := range sorted(s.Rates) {
		fields = append(fields, field{"rate/" + k, s.Rates[k], true})
	}
	for _, k := range sorted(s.Weights) {
		fields = append(fields, field{"weight/" + k, s.Weights[k], true})
	}
	fields = append(fields, field{"region", s.Region, s.Region != 0})
	for _, of := range []struct {
		path string
		part any
	}{{"site", s.Site}, {"haul", s.Haulage}} {
		more, err := partsOf(of.path, of.part)
		if err != nil {
			return err
		}
		fields = append(fields, more...)
	}
	if err := d.putAll("shop", fields); err != nil {
		return err
	}
	fields = nil
	for _, k := range sorted(f.Prices) {
		fields = append(fields, field{"part/" + k, f.Prices[k], true})
	}
	return d.putAll("book", fields)
}

// partsOf gives what is told of a part of the shop, each figure under a path of its
// own: a quantity is one value, a group goes deeper.
func partsOf(path string, part any) ([]field, error) {
	text, err := json.Marshal(part)
	if err != nil {
		return nil, err
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		return nil, err
	}
	var out []field
	for _, k := range sorted(tree) {
		group, deeper := tree[k].(map[string]any)
		_, quantity := group["n"]
		if !deeper || quantity {
			out = append(out, field{path + "/" + k, tree[k], true})
			continue
		}
		for _, name := range sorted(group) {
			at := path + "/" + k + "/" + name
			if k == "tie_downs" { // as pwa/src/data/file-shop.ts writes them
				at = path + "/tie/" + strings.NewReplacer(" ", "-", "/", ".").Replace(name)
			}
			out = append(out, field{at, group[name], true})
		}
	}
	return out, nil
}

func sorted[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// push sends the rows as a device would.
func (d *demo) push(ctx context.Context, base string) error {
	mark := ""
	for from := 0; from < len(d.rows); from += 400 {
		page := d.rows[from:min(from+400, len(d.rows))]
		texts := make([]json.RawMessage, len(page))
		for i, r := range page {
			texts[i] = json.RawMessage(r.String())
		}
		body, err := json.Marshal(map[string]any{
			"device": demoDevice, "cursor": map[string]any{"epoch": "", "seq": 0}, "mark": mark, "rows": texts, "want": 1,
		})
		if err != nil {
			return err
		}
		answer, err := send(ctx, http.MethodPost, base+"/api/sync", body, map[string]string{"Content-Type": "application/json"})
		if err != nil {
			return err
		}
		var got struct {
			Refused []struct{ Path, Reason string }
		}
		if err := json.Unmarshal(answer, &got); err != nil {
			return err
		}
		if len(got.Refused) > 0 {
			return fmt.Errorf("the server refused %s: %s", got.Refused[0].Path, got.Refused[0].Reason)
		}
		mark = string(page[len(page)-1].Entries[0].Stamp)
	}
	return nil
}

func upload(ctx context.Context, base, hash string, pic []byte) error {
	_, err := send(ctx, http.MethodPut, base+"/api/photos/"+hash, pic, map[string]string{"Upload-Offset": "0", "Content-Type": "application/octet-stream"})
	return err
}

func send(ctx context.Context, method, url string, body []byte, headers map[string]string) ([]byte, error) {
	req, err := http.NewRequestWithContext(ctx, method, url, bytes.NewReader(body))
	if err != nil {
		return nil, err
	}
	for k, v := range headers {
		req.Header.Set(k, v)
	}
	res, err := http.DefaultClient.Do(req)
	if err != nil {
		return nil, err
	}
	defer res.Body.Close()
	text, err := io.ReadAll(io.LimitReader(res.Body, 4<<20))
	if err != nil {
		return nil, err
	}
	if res.StatusCode/100 != 2 {
		return nil, fmt.Errorf("%s %s answered %s: %.300s", method, url, res.Status, text)
	}
	return text, nil
}
