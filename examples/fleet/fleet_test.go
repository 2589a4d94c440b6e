package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"log/slog"
	"maps"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/apache/beam/sdks/v2/go/pkg/beam"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem/local"
	"github.com/parquet-go/parquet-go"
	"github.com/satline/satline/work"
)

func TestMain(m *testing.M) {
	flag.Parse()
	beam.Init()
	slog.SetDefault(slog.New(slog.DiscardHandler)) // the runner tells of each bundle
	os.Exit(m.Run())
}

// invented makes an archive and returns the patterns of its files.
func invented(t *testing.T, orders int) []string {
	t.Helper()
	dir := t.TempDir()
	if err := (invention{dir: dir, orders: orders, files: 4, seed: 7}).make(); err != nil {
		t.Fatal(err)
	}
	return []string{dir + "/*.ndjson", dir + "/*.gz", dir + "/*.parquet"}
}

// rowsOf reads the assessments of a folder.
func rowsOf(t *testing.T, dir string) (rows []Row) {
	t.Helper()
	files, err := filepath.Glob(dir + "/assessments-*-of-*.ndjson")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for line := range bytes.Lines(text) {
			var r Row
			if err := json.Unmarshal(line, &r); err != nil {
				t.Fatal(err)
			}
			rows = append(rows, r)
		}
	}
	return rows
}

// contents are the files of a folder, by name.
func contents(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	files, err := filepath.Glob(dir + "/*")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(f)] = string(text)
	}
	return out
}

// What was put into the archive is what the tables find, and each order is assessed once.
func TestTheTablesFindWhatIsThere(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: it assesses 3,000 orders")
	}
	const orders = 3000
	p := plan{in: invented(t, orders), out: t.TempDir(), form: "json", shards: 3}
	if err := p.run(t.Context()); err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for _, r := range rowsOf(t, p.out) {
		seen[r.Machine+" "+r.Number]++
	}
	bad := orders / badEvery
	if len(seen) != orders-bad {
		t.Errorf("%d orders assessed, want %d", len(seen), orders-bad)
	}
	for name, n := range seen {
		if n != 1 {
			t.Errorf("%s is assessed %d times", name, n)
		}
	}
	tables := contents(t, p.out)["tables.md"]
	first := func(title string) string {
		_, table, _ := strings.Cut(tables, "## "+title)
		_, rows, _ := strings.Cut(table, "--- |\n")
		row, _, _ := strings.Cut(rows, "\n")
		return row
	}
	if row := first("Overcharges"); !strings.Contains(row, overfills) {
		t.Errorf("%s is not first: %s", overfills, row)
	}
	if row := first("Instruments"); !strings.Contains(row, wrongGauge) ||
		!strings.Contains(row, "suctionPressure") {
		t.Errorf("the suction gauge of %s is not first: %s", wrongGauge, row)
	}
	most, at := 0.0, ""
	shares := regexp.MustCompile(`\| ([A-Z][a-z]+ [0-9]+) \| Jun-Aug \| [0-9]+ \| ` +
		`undercharge \|[^|]+\| ([0-9.]+) %`)
	for _, m := range shares.FindAllStringSubmatch(tables, -1) {
		var share float64
		if err := json.Unmarshal([]byte(m[2]), &share); err == nil && share > most {
			most, at = share, m[1]
		}
	}
	if at != leaky {
		t.Errorf("%q has most machines with too little, %g %%; want %s", at, most, leaky)
	}
	t.Log(tables)
}

// Parquet out holds what newline JSON does.
func TestForms(t *testing.T) {
	in := invented(t, 60)
	p := plan{in: in, out: t.TempDir(), form: "json", shards: 1}
	q := plan{in: in, out: t.TempDir(), form: "parquet", shards: 1}
	if err := errors.Join(p.run(t.Context()), q.run(t.Context())); err != nil {
		t.Fatal(err)
	}
	rows, err := parquet.ReadFile[Row](q.out + "/assessments-00000-of-00001.parquet")
	if err != nil {
		t.Fatal(err)
	}
	if want := rowsOf(t, p.out); len(want) != 60 || !slices.Equal(rows, want) {
		t.Errorf("%d rows of Parquet, %d of JSON, or they differ", len(rows), len(want))
	}
	if a, b := contents(t, p.out)["tables.md"], contents(t, q.out)["tables.md"]; a != b {
		t.Errorf("two runs over one archive differ:\n%s\n%s", a, b)
	}
}

// flaky is a file system whose files fail half-way, until it is mended.
type flaky struct{ filesystem.Interface }

var failAfter atomic.Int32

func init() {
	filesystem.Register("flaky", func(ctx context.Context) filesystem.Interface {
		return flaky{local.New(ctx)}
	})
}

func (f flaky) path(p string) string { return strings.TrimPrefix(p, "flaky://") }

func (f flaky) List(ctx context.Context, glob string) ([]string, error) {
	found, err := f.Interface.List(ctx, f.path(glob))
	for i := range found {
		found[i] = "flaky://" + found[i]
	}
	return found, err
}

func (f flaky) Remove(ctx context.Context, p string) error {
	return f.Interface.(filesystem.Remover).Remove(ctx, f.path(p))
}

func (f flaky) Rename(ctx context.Context, from, to string) error {
	return f.Interface.(filesystem.Renamer).Rename(ctx, f.path(from), f.path(to))
}

func (f flaky) OpenWrite(ctx context.Context, p string) (io.WriteCloser, error) {
	w, err := f.Interface.OpenWrite(ctx, f.path(p))
	if err == nil && failAfter.Add(-1) == 0 {
		return half{w}, nil
	}
	return w, err
}

type half struct{ io.WriteCloser }

func (h half) Write(b []byte) (int, error) {
	n, _ := h.WriteCloser.Write(b[:len(b)/2])
	return n, errors.New("the disk is full (invented)")
}

// A bundle fails in the middle of a file, and the run with it. Run again, everything is
// as if nothing had been: no order is lost, none stands twice, and no half file is left.
func TestAFailedRunIsRunAgain(t *testing.T) {
	in := invented(t, 300)
	clean := plan{in: in, out: t.TempDir(), form: "json", shards: 4}
	if err := clean.run(t.Context()); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	again := plan{in: in, out: "flaky://" + dir, form: "json", shards: 4}
	failAfter.Store(3)
	if err := again.run(t.Context()); err == nil {
		t.Fatal("the run did not fail")
	}
	for name, text := range contents(t, dir) {
		if !strings.Contains(name, ".part-") && text != contents(t, clean.out)[name] {
			t.Errorf("after the failure %s stands there, and is not whole", name)
		}
	}
	if err := again.run(t.Context()); err != nil {
		t.Fatal(err)
	}
	have, want := contents(t, dir), contents(t, clean.out)
	if !maps.Equal(have, want) {
		t.Errorf("run again: %v; want %v",
			slices.Sorted(maps.Keys(have)), slices.Sorted(maps.Keys(want)))
	}
	if n := len(rowsOf(t, dir)); n != 300 {
		t.Errorf("%d rows, want 300", n)
	}
}

// emitted gathers what a DoFn emits by key.
func emitted() (map[int][][]byte, func(int, []byte)) {
	out := map[int][][]byte{}
	return out, func(key int, packed []byte) { out[key] = append(out[key], packed) }
}

// each gives batches one by one, as a runner does.
func each(batches [][]byte) func(*[]byte) bool {
	return func(to *[]byte) bool {
		if len(batches) == 0 {
			return false
		}
		*to, batches = batches[0], batches[1:]
		return true
	}
}

// batchesOf reads the lines of an archive and packs them, so many in a batch.
func batchesOf(t *testing.T, orders, most int) (batches [][]byte) {
	t.Helper()
	dir := t.TempDir()
	if err := (invention{dir: dir, orders: orders, files: 1, seed: 7}).make(); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(dir + "/orders-0000.ndjson")
	if err != nil {
		t.Fatal(err)
	}
	var lines []Line
	for line := range strings.Lines(string(text)) {
		lines = append(lines, Line{"orders", int64(len(lines) + 1), strings.TrimSpace(line)})
	}
	for some := range slices.Chunk(lines, most) {
		packed, err := pack(some)
		if err != nil {
			t.Fatal(err)
		}
		batches = append(batches, packed)
	}
	return batches
}

// A runner that tries a bundle again uses the same DoFn: what the first try had gathered or
// written is not in what comes of the second.
func TestABundleIsRunAgain(t *testing.T) {
	lines := batchesOf(t, 60, 20)
	judge := func(f *judgeFn, batches [][]byte) map[int][][]byte {
		visits, toVisits := emitted()
		_, toDead := emitted()
		f.StartBundle(toVisits, toDead)
		for _, b := range batches {
			if err := f.ProcessElement(b, toVisits, toDead); err != nil {
				t.Fatal(err)
			}
		}
		if err := f.FinishBundle(toVisits, toDead); err != nil {
			t.Fatal(err)
		}
		return visits
	}
	again := &judgeFn{Shards: 1}
	nobody := func(int, []byte) {}
	again.StartBundle(nobody, nobody)
	if err := again.ProcessElement(lines[0], nobody, nobody); err != nil {
		t.Fatal(err)
	}
	broken := lines[1][:len(lines[1])/2]
	if err := again.ProcessElement(broken, nobody, nobody); err == nil {
		t.Fatal("half a batch is judged as if it were whole")
	}
	visits := judge(again, lines)
	if want := judge(&judgeFn{Shards: 1}, lines); !reflect.DeepEqual(visits, want) {
		t.Error("judged again, the visits are not those of one try")
	}

	write := func(f *historyFn) (tallies, error) {
		sums := tallies{}
		err := f.ProcessElement(t.Context(), 0, each(visits[0]),
			func(key string, one Tally) { sums[key] = addTallies(sums[key], one) })
		return sums, err
	}
	clean := t.TempDir()
	want, err := write(&historyFn{clean, "json", 1})
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	flaky := &historyFn{"flaky://" + dir, "json", 1}
	failAfter.Store(1)
	if sums, err := write(flaky); err == nil || len(sums) > 0 {
		t.Fatalf("it counted %v although its file failed: %v", sums, err)
	}
	if _, half := contents(t, dir)["assessments-00000-of-00001.ndjson"]; half {
		t.Error("half a file has the name of a whole one")
	}
	for range 2 { // twice, as when its answer is lost
		sums, err := write(flaky)
		if err != nil || !maps.Equal(sums, want) {
			t.Errorf("counted again: %v, %v; want %v", sums, err, want)
		}
		const name = "assessments-00000-of-00001.ndjson"
		if contents(t, dir)[name] != contents(t, clean)[name] {
			t.Error("written again, the file is another")
		}
	}
}

// What waits of an order at the shuffle is little, and comes out as it went in: a runner in
// one process holds all of it.
func TestWhatWaitsIsLittle(t *testing.T) {
	const orders = 500
	f := &judgeFn{Shards: 1}
	visits, toVisits := emitted()
	f.StartBundle(toVisits, toVisits)
	var lines, packed int
	for _, b := range batchesOf(t, orders, orders) {
		lines += len(b)
		if err := f.ProcessElement(b, toVisits, toVisits); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.FinishBundle(toVisits, toVisits); err != nil {
		t.Fatal(err)
	}
	for _, b := range visits[0] {
		packed += len(b)
	}
	all, err := unpackAll[visit](each(visits[0]))
	if err != nil || len(all) < orders {
		t.Fatalf("%d visits, want %d: %v", len(all), orders, err)
	}
	t.Logf("an order is %d bytes on its way to be judged, %d thereafter", lines/orders,
		packed/orders)
	if packed > 200*orders {
		t.Errorf("a judged order is %d bytes", packed/orders)
	}
	anew, err := pack(all)
	if err != nil {
		t.Fatal(err)
	}
	if same, err := unpack[visit](anew); err != nil || !reflect.DeepEqual(same, all) {
		t.Errorf("packed and unpacked the visits differ: %v", err)
	}
}

// What cannot be assessed stands in the dead-letter file with its place and its problem.
func TestDeadLetters(t *testing.T) {
	dir := t.TempDir()
	good := `{"number": "1", "start": "2026-07-14T09:00:00Z", "tasks": ["find the fault"],
	 "machine": {"serial": "INV-1", "equipment": {"refrigerant": "R-410A", "metering": "TXV"}}}`
	good = strings.ReplaceAll(good, "\n", " ")
	bad := []string{
		good[:60],
		strings.NewReplacer("R-410A", "R-999", `"1"`, `"2"`).Replace(good), // mended further down
		strings.Replace(good, `"start": "2026-07-14T09:00:00Z", `, "", 1),
		strings.Replace(good, `"serial": "INV-1", `, "", 1),
		strings.Replace(good, `"tasks"`, `"task"`, 1),
	}
	files := map[string]string{
		"a.ndjson": good + "\n\n" + strings.Join(bad, "\n") + "\n" + good + "\n" +
			strings.Repeat("x", work.MaxOrderBytes+2) + "\n" +
			strings.Replace(good, `"1"`, `"2"`, 1),
		"b.parquet": "no Parquet",
	}
	var z bytes.Buffer
	w := gzip.NewWriter(&z)
	io.WriteString(w, strings.Replace(good, `"1"`, `"3"`, 1)+"\n")
	w.Flush()
	io.WriteString(w, strings.Replace(good, `"1"`, `"4"`, 1)+"\n")
	w.Close()
	files["c.ndjson.gz"] = z.String()[:z.Len()-12] // cut off
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p := plan{in: []string{dir + "/*"}, out: t.TempDir(), form: "json", shards: 1}
	if err := p.run(t.Context()); err != nil {
		t.Fatal(err)
	}
	var numbers []string
	for _, r := range rowsOf(t, p.out) {
		numbers = append(numbers, r.Number)
	}
	// The fourth stood behind the cut, and came out of it or not.
	slices.Sort(numbers)
	if !slices.Equal(numbers[:min(3, len(numbers))], []string{"1", "2", "3"}) {
		t.Errorf("assessed: %v", numbers)
	}
	var got []string
	for line := range strings.Lines(contents(t, p.out)["dead-letter-00000-of-00001.ndjson"]) {
		var d Dead
		if err := json.Unmarshal([]byte(line), &d); err != nil {
			t.Fatal(err)
		}
		place, _ := json.Marshal([]any{filepath.Base(d.File), d.Line, d.Field})
		got = append(got, string(place))
		if d.Problem == "" || d.Line > 0 && d.Line != 9 && d.Text != bad[d.Line-3] {
			t.Errorf("%s", line)
		}
	}
	want := []string{
		`["a.ndjson",3,"tasks[0]"]`, `["a.ndjson",4,"machine.equipment.refrigerant"]`,
		`["a.ndjson",5,"start"]`, `["a.ndjson",6,"machine.serial"]`,
		`["a.ndjson",7,"task"]`, `["a.ndjson",9,""]`,
		`["b.parquet",0,""]`, `["c.ndjson.gz",0,""]`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("dead letters:\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// Tallies come to the same however they are put together, as a tenth and two do not when
// they are added as floating numbers.
func TestTalliesAdd(t *testing.T) {
	a, b, c := chance(0.1), chance(0.2), chance(0.3)
	if x, y := addTallies(addTallies(a, b), c), addTallies(a, addTallies(b, c)); x != y {
		t.Errorf("%v, %v", x, y)
	}
	if got := addTallies(addTallies(a, b), c).P.value(); got != 0.6 {
		t.Errorf("the chances come to %v, want 0.6", got)
	}
}

// The ends of Wilson's interval are where (p − P/N)² = z² p(1−p)/N (Wilson, JASA 22,
// 1927, 209).
func TestShareIsWilsons(t *testing.T) {
	for _, one := range []Tally{
		{N: 10, P: sumOf(5)}, {N: 200, P: sumOf(3)}, {N: 1000, P: sumOf(400)},
	} {
		var middle, low, high float64
		text := share(one)
		into := []*float64{&middle, &low, &high}
		for i, field := range regexp.MustCompile(`[0-9.]+`).FindAllString(text, 3) {
			if err := json.Unmarshal([]byte(field), into[i]); err != nil {
				t.Fatal(err)
			}
		}
		n, estimate := float64(one.N), one.P.value()/float64(one.N)
		for _, end := range []float64{low / 100, high / 100} {
			left, right := math.Abs(end-estimate), 1.96*math.Sqrt(end*(1-end)/n)
			if math.Abs(left-right) > 0.002 { // shown in tenths of a hundredth
				t.Errorf("%+v: %s: %g is not %g", one, text, left, right)
			}
		}
	}
}
