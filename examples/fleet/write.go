package main

import (
	"bufio"
	"cmp"
	"context"
	"crypto/rand"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"io"
	"slices"

	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem"
	"github.com/parquet-go/parquet-go"
)

// write writes a file that comes to its name whole: whatever happens before, a second try
// writes it anew, and a reader never sees half of it.
func write(ctx context.Context, path string, content func(io.Writer) error) error {
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
	gathered := bufio.NewWriterSize(out, 64<<10)
	err = content(gathered)
	if err == nil {
		err = gathered.Flush()
	}
	if closing := out.Close(); err == nil {
		err = closing
	}
	if err == nil && ok {
		err = rename.Rename(ctx, to, path)
	}
	return err
}

// shardOf spreads by machine or file, always the same way.
func shardOf(name string, shards int) int {
	h := fnv.New32a()
	io.WriteString(h, name)
	return int(h.Sum32() % uint32(shards))
}

// rowGroup is how many rows are held in memory until they are Parquet.
const rowGroup = 10_000

// writeRows writes one file of assessments.
func writeRows(ctx context.Context, name, form string, visits []visit) error {
	if form != "parquet" {
		return write(ctx, name+".ndjson", func(to io.Writer) error {
			e := json.NewEncoder(to)
			for _, v := range visits {
				if err := e.Encode(v.Row); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return write(ctx, name+".parquet", func(to io.Writer) error {
		w := parquet.NewGenericWriter[Row](to, parquet.Compression(&parquet.Zstd),
			parquet.MaxRowsPerRowGroup(rowGroup))
		for _, v := range visits {
			if _, err := w.Write([]Row{v.Row}); err != nil {
				return err
			}
		}
		return w.Close()
	})
}

// deadFn writes one file of what could not be assessed, sorted.
type deadFn struct {
	Out    string
	Shards int
}

// ProcessElement implements the DoFn.
func (f *deadFn) ProcessElement(
	ctx context.Context, shard int, next func(*[]byte) bool, count func(string, Tally),
) error {
	all, err := unpackAll[Dead](next)
	if err != nil {
		return err
	}
	slices.SortFunc(all, func(a, b Dead) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line))
	})
	lines := int64(0)
	name := fmt.Sprintf("%s/dead-letter-%05d-of-%05d.ndjson", f.Out, shard, f.Shards)
	err = write(ctx, name, func(to io.Writer) error {
		e := json.NewEncoder(to)
		for _, d := range all {
			if d.Text != "" { // else it was not read, or is a file
				lines++
			}
			if err := e.Encode(d); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	count("lines"+between+"dead", Tally{N: lines})
	return nil
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
	return write(ctx, f.Out+"/tables.md", func(to io.Writer) error {
		all.report(to)
		return nil
	})
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
