// Fleet assesses archives of work orders, more than one computer holds, and makes tables
// of them: faults by model and season, refrigerant and leaks by year, callbacks,
// instruments that lie, overcharges.
//
//	go -C examples/fleet run .                                 makes an archive and runs on it
//	go -C examples/fleet run . -orders 100000 -out /var/fleet
//	go -C examples/fleet run . -in '/var/orders/*.ndjson.gz,/var/orders/*.parquet' -out /var/fleet
//	go -C examples/fleet run . -runner universal -endpoint host:8099 -in … -out …
//
// An archive is JSON orders (package work), one a line, plain or with gzip, or a Parquet
// file with a column "order" of such lines. It is a pipeline of Apache Beam: by default it
// runs in this process, with -runner on Flink, Spark or whatever takes Beam's jobs; a
// build with -tags cloud has the runner and the files of Google Cloud besides.
//
// Out come assessments-*-of-* (newline JSON or Parquet by -form), dead-letter-*-of-* with
// each line that could not be assessed and why, and tables.md. A run that failed is run
// again: every file is written whole, by the same name.
package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"github.com/apache/beam/sdks/v2/go/pkg/beam"
	_ "github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem/local"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/runners"
	_ "github.com/apache/beam/sdks/v2/go/pkg/beam/runners/flink"
	_ "github.com/apache/beam/sdks/v2/go/pkg/beam/runners/prism"
	_ "github.com/apache/beam/sdks/v2/go/pkg/beam/runners/spark"
	_ "github.com/apache/beam/sdks/v2/go/pkg/beam/runners/universal"
)

func main() {
	in := flag.String(
		"in", "", "archives to read, patterns with commas between; without it one is made",
	)
	out := flag.String("out", "", "folder to write to; without it a new one of the system's")
	form := flag.String("form", "json", "of the assessments: json or parquet")
	shards := flag.Int("shards", 64, "files of assessments, each of which is made in memory")
	orders := flag.Int("orders", 2000, "of the archive that is made, at most 10000000")
	machines := flag.Int("machines", 0, "of that archive; 0 for an order in ten")
	files := flag.Int("files", 6, "of that archive")
	seed := flag.Uint64("seed", 1, "of that archive")
	verbose := flag.Bool("verbose", false, "show what the runner logs")
	flag.Parse()
	beam.Init()
	if flag.NArg() > 0 {
		fail(fmt.Errorf("%q is no flag, and nothing but flags is taken", flag.Arg(0)))
	}
	level := slog.LevelWarn
	if *verbose {
		level = slog.LevelInfo
	}
	slog.SetLogLoggerLevel(level)
	slog.SetDefault(slog.New(slog.NewTextHandler(os.Stderr, &slog.HandlerOptions{Level: level})))
	ctx := context.Background()
	p := plan{
		in: strings.Split(*in, ","), out: strings.TrimSuffix(*out, "/"), form: *form,
		shards: *shards,
	}
	if p.out == "" {
		dir, err := os.MkdirTemp("", "satline-fleet")
		if err != nil {
			fail(err)
		}
		p.out = dir
	}
	if *in == "" {
		a := invention{
			dir: filepath.Join(p.out, "archive"), orders: *orders, machines: *machines,
			files: *files, seed: *seed,
		}
		began := time.Now()
		if err := a.make(); err != nil {
			fail(err)
		}
		fmt.Printf("invented %d orders in %s, %.1f s\n", *orders, a.dir,
			time.Since(began).Seconds())
		p.in = []string{a.dir + "/*.ndjson", a.dir + "/*.ndjson.gz", a.dir + "/*.parquet"}
	}
	began := time.Now()
	if err := p.run(ctx); err != nil {
		fail(err)
	}
	fmt.Printf("ran in %.1f s\n", time.Since(began).Seconds())
	if text, err := os.ReadFile(filepath.Join(p.out, "tables.md")); err == nil {
		fmt.Println()
		os.Stdout.Write(text)
	}
	fmt.Printf("\neverything is in %s; this process has had %d MB of the system\n", p.out, memory())
}

// run checks the plan and runs it, by the runner of -runner.
func (p plan) run(ctx context.Context) error {
	if p.form != "json" && p.form != "parquet" {
		return fmt.Errorf("-form is json or parquet, not %q", p.form)
	}
	if p.shards < 1 || p.shards > 100_000 {
		return fmt.Errorf("-shards is %d; it is from 1 to 100000", p.shards)
	}
	if err := p.clear(ctx); err != nil {
		return err
	}
	pipeline, scope := beam.NewPipelineWithRoot()
	p.build(scope)
	_, err := beam.Run(ctx, cmp.Or(*runners.Runner, "prism"), pipeline)
	return err
}

func memory() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.Sys >> 20
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "fleet:", err)
	os.Exit(1)
}
