package main

import (
	"bytes"
	"cmp"
	"context"
	"crypto/rand"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"io"
	"slices"
	"strings"

	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem"
	"github.com/parquet-go/parquet-go"
)

// A file comes to its name whole: whatever happens before, a second try writes it anew,
// and a reader never sees half of it.
func write(ctx context.Context, path string, content []byte) error {
	fs, err := filesystem.New(ctx, path)
	if err != nil {
		return err
	}
	defer fs.Close()
	to := path
	rename, ok := fs.(filesystem.Renamer)
	if ok {
		to = path + ".part-" + rand.Text()
	}
	out, err := fs.OpenWrite(ctx, to)
	if err != nil {
		return err
	}
	_, err = out.Write(content)
	if closing := out.Close(); err == nil {
		err = closing
	}
	if err == nil && ok {
		err = rename.Rename(ctx, to, path)
	}
	return err
}

// shardOf spreads by machine, always the same way.
func shardOf(name string, shards int) int {
	h := fnv.New32a()
	io.WriteString(h, name)
	return int(h.Sum32() % uint32(shards))
}

// shardFn keys rows by the file that they go to.
type shardFn struct{ Shards int }

// ProcessElement implements the DoFn.
func (f *shardFn) ProcessElement(r Row, emit func(int, Row)) {
	emit(shardOf(r.Machine, f.Shards), r)
}

// rowsFn writes one file of rows, sorted.
type rowsFn struct {
	Out, Form string
	Shards    int
}

// ProcessElement implements the DoFn.
func (f *rowsFn) ProcessElement(ctx context.Context, shard int, next func(*Row) bool) error {
	var rows []Row
	for r := (Row{}); next(&r); r = (Row{}) {
		rows = append(rows, r)
	}
	slices.SortFunc(rows, func(a, b Row) int {
		return cmp.Or(cmp.Compare(a.Machine, b.Machine), cmp.Compare(a.Start, b.Start),
			cmp.Compare(a.Number, b.Number))
	})
	var b bytes.Buffer
	end := "ndjson"
	if f.Form == "parquet" {
		end = "parquet"
		w := parquet.NewGenericWriter[Row](&b, parquet.Compression(&parquet.Zstd))
		if _, err := w.Write(rows); err != nil {
			return err
		}
		if err := w.Close(); err != nil {
			return err
		}
	} else {
		e := json.NewEncoder(&b)
		for _, r := range rows {
			if err := e.Encode(r); err != nil {
				return err
			}
		}
	}
	return write(ctx, fmt.Sprintf("%s/assessments-%05d-of-%05d.%s", f.Out, shard, f.Shards, end),
		b.Bytes())
}

// shardDeadFn keys what could not be assessed by the file that it goes to.
type shardDeadFn struct{ Shards int }

// ProcessElement implements the DoFn.
func (f *shardDeadFn) ProcessElement(d Dead, emit func(int, Dead)) {
	emit(shardOf(d.File, f.Shards), d)
}

// deadFn writes one file of what could not be assessed, sorted.
type deadFn struct {
	Out    string
	Shards int
}

// ProcessElement implements the DoFn.
func (f *deadFn) ProcessElement(ctx context.Context, shard int, next func(*Dead) bool) error {
	var all []Dead
	for d := (Dead{}); next(&d); d = (Dead{}) {
		all = append(all, d)
	}
	slices.SortFunc(all, func(a, b Dead) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line))
	})
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	for _, d := range all {
		if err := e.Encode(d); err != nil {
			return err
		}
	}
	return write(ctx, fmt.Sprintf("%s/dead-letter-%05d-of-%05d.ndjson", f.Out, shard, f.Shards),
		b.Bytes())
}

// A Total is a row of a table, on its way there.
type Total struct {
	Key   string
	Tally Tally
}

// totalFn names a tally by its key.
type totalFn struct{}

// ProcessElement implements the DoFn.
func (*totalFn) ProcessElement(key string, t Tally) Total { return Total{key, t} }

// tablesFn writes the tables for people. It fails where lines are missing.
type tablesFn struct{ Out string }

// ProcessElement implements the DoFn.
func (f *tablesFn) ProcessElement(ctx context.Context, _ int, next func(*Total) bool) error {
	all := tallies{}
	for t := (Total{}); next(&t); t = (Total{}) {
		all[t.Key] = t.Tally
	}
	n := func(name string) int64 { return all["lines"+between+name].N }
	if n("read") != n("assessed")+n("dead")+n("twice") {
		return fmt.Errorf("of %d lines read %d were assessed, %d could not be and %d stood there "+
			"twice: some are lost", n("read"), n("assessed"), n("dead"), n("twice"))
	}
	var b strings.Builder
	all.report(&b)
	return write(ctx, f.Out+"/tables.md", []byte(b.String()))
}

// clear removes what an earlier run has left in the folder, which another number of
// files would leave beside the new ones.
func (p plan) clear(ctx context.Context) error {
	fs, err := filesystem.New(ctx, p.out)
	if err != nil {
		return err
	}
	defer fs.Close()
	remove, ok := fs.(filesystem.Remover)
	for _, pattern := range []string{"assessments-*-of-*", "dead-letter-*-of-*", "tables.md"} {
		old, err := fs.List(ctx, p.out+"/"+pattern)
		if err != nil {
			return err
		}
		for _, path := range old {
			if !ok {
				return fmt.Errorf("%s is of an earlier run; remove it", path)
			}
			if err := remove.Remove(ctx, path); err != nil {
				return err
			}
		}
	}
	return nil
}
