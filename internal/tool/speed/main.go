// Speed measures every speed figure that the project promises and prints them
// as a table, on one core: what was promised, what this machine does, and the ratio.
//
//	go run ./internal/tool/speed            measure and print
//	go run ./internal/tool/speed -count 5   take the best of five runs of each
package main

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"regexp"
	"runtime"
	"strconv"
	"strings"
)

func main() {
	count := flag.Int("count", 3, "runs of each benchmark; the best counts")
	flag.Parse()
	if err := run(*count); err != nil {
		fmt.Fprintln(os.Stderr, "speed:", err)
		os.Exit(1)
	}
}

// result is the best of the runs of one benchmark.
type result struct {
	nanos  float64
	allocs float64
}

func run(count int) error {
	found := map[string]result{}
	for _, pkg := range packages() {
		if err := measure(pkg, count, found); err != nil {
			return err
		}
	}
	fmt.Printf(
		"Best of %d runs on one core of %s, %s/%s, %s.\n\n", count, processor(), runtime.GOOS,
		runtime.GOARCH, runtime.Version(),
	)
	fmt.Print(
		"| what | promised | measured | promised / measured | allocations |\n" +
			"| --- | ---: | ---: | ---: | ---: |\n",
	)
	var missing []string
	for _, p := range promises {
		r, ok := found[p.pkg+" "+p.bench]
		if !ok {
			missing = append(missing, p.pkg+" "+p.bench)
			continue
		}
		fmt.Printf(
			"| %s | %s | %s | %.1f | %.0f |\n", p.what, round(float64(p.within)), round(r.nanos),
			float64(p.within)/r.nanos, r.allocs,
		)
	}
	if len(missing) > 0 {
		return fmt.Errorf("no such benchmark: %s", strings.Join(missing, ", "))
	}
	return nil
}

func packages() []string {
	var out []string
	seen := map[string]bool{}
	for _, p := range promises {
		if !seen[p.pkg] {
			seen[p.pkg] = true
			out = append(out, p.pkg)
		}
	}
	return out
}

var line = regexp.MustCompile(`^Benchmark(\S+)\s+\d+\s+([\d.]+) ns/op(?:.*?\s(\d+) allocs/op)?`)

func measure(pkg string, count int, found map[string]result) error {
	var wanted []string
	for _, p := range promises {
		if p.pkg == pkg {
			name, _, _ := strings.Cut(p.bench, "/")
			wanted = append(wanted, name)
		}
	}
	cmd := exec.Command(
		"go", "test", "-run", "^$", "-bench", "^Benchmark("+strings.Join(wanted, "|")+")$",
		"-benchmem", "-cpu", "1", "-count", strconv.Itoa(count), "./"+pkg,
	)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("%s: %w\n%s", pkg, err, out)
	}
	lines := bufio.NewScanner(bytes.NewReader(out))
	for lines.Scan() {
		m := line.FindStringSubmatch(lines.Text())
		if m == nil {
			continue
		}
		ns, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			return err
		}
		allocs := math.NaN()
		if m[3] != "" {
			if allocs, err = strconv.ParseFloat(m[3], 64); err != nil {
				return err
			}
		}
		key := pkg + " " + m[1]
		if old, ok := found[key]; !ok || ns < old.nanos {
			found[key] = result{nanos: ns, allocs: allocs}
		}
	}
	return lines.Err()
}

func round(ns float64) string {
	switch {
	case ns < 1e3:
		return fmt.Sprintf("%.3g ns", ns)
	case ns < 1e6:
		return fmt.Sprintf("%.3g µs", ns/1e3)
	}
	return fmt.Sprintf("%.3g ms", ns/1e6)
}

// processor names the machine as its operating system does, where it does.
func processor() string {
	data, err := os.ReadFile("/proc/cpuinfo")
	if err == nil {
		for l := range strings.Lines(string(data)) {
			if name, ok := strings.CutPrefix(l, "model name"); ok {
				return fmt.Sprintf("%s (%d cores)", strings.Trim(name, " \t:\n"), runtime.NumCPU())
			}
		}
	}
	return fmt.Sprintf("%d cores", runtime.NumCPU())
}
