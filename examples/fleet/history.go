package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
)

// historyFn has the visits of all machines of one file: it writes the file and counts for
// the tables. It keeps nothing from one time to the next, so that a bundle that is run again
// does both anew and alike.
type historyFn struct {
	Out, Form string
	Shards    int
}

// ProcessElement implements the DoFn.
func (f *historyFn) ProcessElement(
	ctx context.Context, shard int, next func(*[]byte) bool, count func(string, Tally),
) error {
	all, err := unpackAll[visit](next)
	if err != nil {
		return err
	}
	visits := once(all)
	sums := tallies{}
	sums.add(Tally{N: int64(len(visits))}, "lines", "assessed")
	sums.add(Tally{N: int64(len(all) - len(visits))}, "lines", "twice")
	for from, to := 0, 0; from < len(visits); from = to {
		for to < len(visits) && visits[to].Key == visits[from].Key {
			to++
		}
		sums.history(visits[from:to])
	}
	name := fmt.Sprintf("%s/assessments-%05d-of-%05d", f.Out, shard, f.Shards)
	if err := writeRows(ctx, name, f.Form, visits); err != nil {
		return err
	}
	for _, k := range slices.Sorted(sums.keys()) {
		count(k, sums[k])
	}
	return nil
}

// once sorts visits by machine and time, and leaves out those that the archive has already.
func once(visits []visit) []visit {
	slices.SortFunc(visits, func(a, b visit) int {
		return cmp.Or(a.compare(b), cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line))
	})
	return slices.CompactFunc(visits, func(a, b visit) bool { return a.compare(b) == 0 })
}

// compare is zero for one and the same visit.
func (v *visit) compare(b visit) int {
	return cmp.Or(cmp.Compare(v.Key, b.Key), v.At.Compare(b.At),
		cmp.Compare(v.Row.Number, b.Row.Number), bytes.Compare(v.Text[:], b.Text[:]))
}
