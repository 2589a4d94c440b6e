package main

import (
	"github.com/apache/beam/sdks/v2/go/pkg/beam"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/fileio"
)

// By reflection: the generated callers of package register cost a minute of compiling, and
// what is called is called once for thousands of orders.
func init() {
	for _, fn := range []any{
		&readFn{}, &judgeFn{}, &historyFn{}, &deadFn{}, &totalFn{}, &tablesFn{},
	} {
		beam.RegisterDoFn(fn)
	}
	beam.RegisterFunction(addTallies)
}

// A plan is what a run reads and writes.
type plan struct {
	in     []string // patterns of files
	out    string
	form   string // json or parquet
	shards int
}

// build puts the pipeline together. What waits at its shuffles is packed (batch.go): lines,
// to be judged by whoever is free, then what is left of each to the file of its machine. Each
// line is counted where it is read and where it is written.
func (p plan) build(s beam.Scope) {
	patterns := beam.CreateList(s, p.in)
	files := beam.Reshuffle(s,
		fileio.MatchAll(s.Scope("files"), patterns, fileio.MatchEmptyDisallow()))
	lines, unread, read := beam.ParDo3(s.Scope("read"), &readFn{p.shards}, files)
	visits, unjudged := beam.ParDo2(s.Scope("judge"), &judgeFn{Shards: p.shards},
		beam.Reshuffle(s, lines))

	assessed := beam.ParDo(s.Scope("assessments"), &historyFn{p.out, p.form, p.shards},
		beam.GroupByKey(s, visits))
	dead := beam.ParDo(s.Scope("dead-letter"), &deadFn{p.out, p.shards},
		beam.GroupByKey(s, beam.Flatten(s, unread, unjudged)))

	sums := beam.CombinePerKey(s, addTallies, beam.Flatten(s, read, assessed, dead))
	beam.ParDo0(s.Scope("tables"), &tablesFn{p.out},
		beam.GroupByKey(s, beam.AddFixedKey(s, beam.ParDo(s, &totalFn{}, sums))))
}
