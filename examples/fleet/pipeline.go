package main

import (
	"github.com/apache/beam/sdks/v2/go/pkg/beam"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/fileio"
)

// By reflection: the generated callers of package register cost a minute of compiling to
// save a microsecond of the two thousand that an order takes.
func init() {
	for _, fn := range []any{
		&readFn{}, &keyFn{}, &judgeFn{}, &shardFn{}, &rowsFn{}, &shardDeadFn{}, &deadFn{},
		&totalFn{}, &tablesFn{},
	} {
		beam.RegisterDoFn(fn)
	}
	for _, fn := range []any{addTallies, readLine, assessedRow, deadLine} {
		beam.RegisterFunction(fn)
	}
}

// Each line is counted where it comes in and where it ends.
func readLine(Line) (string, Tally)   { return "lines" + between + "read", Tally{N: 1} }
func assessedRow(Row) (string, Tally) { return "lines" + between + "assessed", Tally{N: 1} }

// deadLine counts nothing for a file: only lines were read of it.
func deadLine(d Dead) (string, Tally) {
	n := int64(1)
	if d.Text == "" {
		n = 0
	}
	return "lines" + between + "dead", Tally{N: n}
}

// A plan is what a run reads and writes.
type plan struct {
	in     []string // patterns of files
	out    string
	form   string // json or parquet
	shards int
}

// build puts the pipeline together: lines to machines, machines to rows and tallies.
func (p plan) build(s beam.Scope) {
	patterns := beam.CreateList(s, p.in)
	files := beam.Reshuffle(s,
		fileio.MatchAll(s.Scope("files"), patterns, fileio.MatchEmptyDisallow()))
	lines, unread := beam.ParDo2(s.Scope("read"), &readFn{}, files)
	lines = beam.Reshuffle(s, lines) // a large file is many workers' work
	keyed, unkeyed := beam.ParDo2(s.Scope("machine"), &keyFn{}, lines)
	rows, sums, unjudged := beam.ParDo3(s.Scope("judge"), &judgeFn{}, beam.GroupByKey(s, keyed))
	dead := beam.Flatten(s, unread, unkeyed, unjudged)

	sharded := beam.ParDo(s, &shardFn{p.shards}, rows)
	beam.ParDo0(s.Scope("assessments"), &rowsFn{p.out, p.form, p.shards},
		beam.GroupByKey(s, sharded))
	shardedDead := beam.ParDo(s, &shardDeadFn{p.shards}, dead)
	beam.ParDo0(s.Scope("dead-letter"), &deadFn{p.out, p.shards}, beam.GroupByKey(s, shardedDead))

	all := beam.Flatten(s, sums, beam.ParDo(s, readLine, lines), beam.ParDo(s, assessedRow, rows),
		beam.ParDo(s, deadLine, dead))
	totals := beam.ParDo(s, &totalFn{}, beam.CombinePerKey(s, addTallies, all))
	beam.ParDo0(s.Scope("tables"), &tablesFn{p.out},
		beam.GroupByKey(s, beam.AddFixedKey(s, totals)))
}
