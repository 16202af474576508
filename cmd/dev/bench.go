package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
)

// bench measures and prints the tables of DEVELOPERS.md. Absolute times depend on
// the machine; compare within one run.
func bench(ctx context.Context, _ []string) error {
	if err := buildSite(ctx, 11); err != nil {
		return err
	}
	if err := buildBinary(ctx, ".cache/asfound-test", ""); err != nil {
		return err
	}
	if err := browser(ctx); err != nil {
		return err
	}
	native, err := goBench(ctx, "./rubrics/door", ".", false)
	if err != nil {
		return err
	}
	wasm, err := goBench(ctx, "./rubrics/door", ".", true)
	if err != nil {
		return err
	}
	sync, err := goBench(ctx, "./server", "Benchmark", false)
	if err != nil {
		return err
	}
	drawn, err := drawPapers(ctx)
	if err != nil {
		return err
	}
	cmd := exec.CommandContext(ctx, "node", "bench.mjs")
	cmd.Dir, cmd.Stderr = "pwa", os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("the browser's measures: %w", err)
	}
	var b struct {
		Worker, Throttled struct{ Ready, First, Warm float64 }
		ColdPlain         []float64 `json:"cold_plain"`
		Cold4x            []float64 `json:"cold_4x"`
		EightPlain        eight     `json:"eight_plain"`
		Eight4x           eight     `json:"eight_4x"`
		Paper, Paper4x    paperTimes
	}
	if err := json.Unmarshal(out, &b); err != nil {
		return fmt.Errorf("the browser's measures: %w: %s", err, out)
	}
	list, err := listings(ctx)
	if err != nil {
		return err
	}
	n := native["BenchmarkAppraise"]
	fmt.Printf("\n%s, %s/%s, %d processors\n\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	fmt.Println("| one whole recompute, 10,090 draws, JSON in and out | ready, ms | first, ms | warm, ms | to native |")
	fmt.Println("|---|---|---|---|---|")
	fmt.Printf("| native (%.0f allocations, %.0f kB) | - | - | %.1f | 1 |\n", n["allocs/op"], n["B/op"]/1000, n["ns/op"]/1e6)
	fmt.Printf("| browser worker | %.0f | %.0f | %.1f | %.1f |\n", b.Worker.Ready, b.Worker.First, b.Worker.Warm, b.Worker.Warm/(n["ns/op"]/1e6))
	fmt.Printf("| same module, processor throttled 4x | %.0f | %.0f | %.1f | %.1f |\n", b.Throttled.Ready, b.Throttled.First, b.Throttled.Warm, b.Throttled.Warm/(n["ns/op"]/1e6))
	scale(native, wasm)
	printPapers(drawn, b.Paper, b.Paper4x)
	fmt.Println("\n| cold start with the server stopped, to the engine's first answer | ms, each run |")
	fmt.Println("|---|---|")
	fmt.Printf("| plain | %s |\n| page throttled 4x | %s |\n", whole(b.ColdPlain), whole(b.Cold4x))
	fmt.Println("\n| eight listings side by side, a weight tapped and a price typed | to the next frame, worst ms (INP) | median ms | interactions | until the figures stand, median ms | slowest ms |")
	fmt.Println("|---|---|---|---|---|---|")
	b.EightPlain.print("plain")
	b.Eight4x.print("page throttled 4x")
	list.print()
	fmt.Println("\n| sent to the browser | raw, bytes | gzip -9 | brotli 11 |")
	fmt.Println("|---|---|---|---|")
	if err := sizes(); err != nil {
		return err
	}
	fmt.Println("\n| sync, 500 rows of about 230 bytes a commit, fsynced | rows a second |")
	fmt.Println("|---|---|")
	for _, name := range sorted(sync) {
		if v, ok := sync[name]["rows/s"]; ok {
			fmt.Printf("| %s | %.0f |\n", name, v)
		}
	}
	return nil
}

// eight is what is felt of a comparison of eight listings, ms.
type eight struct{ Worst, Median, Count, Stand, Slowest float64 }

func (e eight) print(title string) {
	fmt.Printf("| %s | %.0f | %.0f | %.0f | %.0f | %.0f |\n", title, e.Worst, e.Median, e.Count, e.Stand, e.Slowest)
}

func whole(list []float64) string {
	var out []string
	for _, x := range list {
		out = append(out, strconv.FormatFloat(x, 'f', 0, 64))
	}
	return strings.Join(out, ", ")
}

var benchLine = regexp.MustCompile(`^(Benchmark\S+?)(?:-\d+)?\s+\d+\s+(.*)$`)

// scale prints how a recompute grows, native and as WebAssembly under Node.
func scale(native, wasm map[string]map[string]float64) {
	fmt.Println("\n| one recompute, by size | native, ms | draws a second | allocations | WebAssembly in Node, ms | draws a second | to native |")
	fmt.Println("|---|---|---|---|---|---|---|")
	for _, name := range sorted(native) {
		n, w := native[name], wasm[name]
		if _, ok := n["draws/s"]; !ok || w == nil {
			continue
		}
		fmt.Printf("| %s | %.1f | %.0f | %.0f | %.1f | %.0f | %.1f |\n", strings.TrimPrefix(name, "Benchmark"),
			n["ns/op"]/1e6, n["draws/s"], n["allocs/op"], w["ns/op"]/1e6, w["draws/s"], w["ns/op"]/n["ns/op"])
	}
}

// goBench runs Go benchmarks and reads their figures by unit; wasm runs the same
// under Node.
func goBench(ctx context.Context, pkg, pattern string, wasm bool) (map[string]map[string]float64, error) {
	arguments := []string{"test", "-run", "^$", "-bench", pattern, "-benchmem"}
	if wasm {
		root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
		if err != nil {
			return nil, err
		}
		arguments = append(arguments, "-exec", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "go_js_wasm_exec"))
	}
	cmd := exec.CommandContext(ctx, "go", append(arguments, pkg)...)
	if wasm {
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	}
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", pkg, err, out)
	}
	got := map[string]map[string]float64{}
	for _, line := range strings.Split(string(out), "\n") {
		m := benchLine.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		f := strings.Fields(m[2])
		got[m[1]] = map[string]float64{}
		for i := 0; i+1 < len(f); i += 2 {
			if v, err := strconv.ParseFloat(f[i], 64); err == nil {
				got[m[1]][f[i+1]] = v
			}
		}
	}
	if len(got) == 0 {
		return nil, fmt.Errorf("%s: no benchmark matched %s", pkg, pattern)
	}
	return got, nil
}

// sizes prints what the first visit transfers; the plain files were replaced by
// their compressed forms.
func sizes() error {
	var total [2]int64
	rows := map[string][2]int64{}
	err := filepath.WalkDir(site, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".br") {
			return err
		}
		plain := strings.TrimSuffix(path, ".br")
		br, err := os.Stat(path)
		if err != nil {
			return err
		}
		gz, err := os.Stat(plain + ".gz")
		if err != nil {
			return err
		}
		rows[strings.TrimPrefix(plain, site+"/")] = [2]int64{gz.Size(), br.Size()}
		total[0] += gz.Size()
		total[1] += br.Size()
		return nil
	})
	if err != nil {
		return err
	}
	for _, name := range sorted(rows) {
		if r := rows[name]; r[1] > 1000 {
			raw := "-"
			if module, _, ok := strings.Cut(filepath.Base(name), "-"); ok && strings.HasSuffix(name, ".wasm") {
				if i, err := os.Stat(filepath.Join(generated, module+".wasm")); err == nil {
					raw = strconv.FormatInt(i.Size(), 10)
				}
			}
			fmt.Printf("| %s | %s | %d | %d |\n", name, raw, r[0], r[1])
		}
	}
	fmt.Printf("| all text and code | - | %d | %d |\n", total[0], total[1])
	return nil
}
