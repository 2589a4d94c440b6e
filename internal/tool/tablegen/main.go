// Command tablegen solves the saturation of every refrigerant from its equation
// of state, and of blends the inside of the two-phase region, and writes the
// tables that package refrigerant embeds. It is run by go generate in that
// package. What cannot be solved is left out of the files and reported.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"runtime"
	"sync"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/refrigerant"
)

func main() {
	edges := flag.String("o", "saturation.bin", "file of the saturation curves to write")
	domes := flag.String("dome", "dome.bin", "file of the two-phase regions of blends to write")
	flag.Parse()
	if err := generate(*edges, *domes); err != nil {
		fmt.Fprintln(os.Stderr, "tablegen:", err)
		os.Exit(1)
	}
}

// tables are those of one refrigerant.
type tables struct {
	saturation []table.Source
	dome       []table.DomeSource
	err        error
}

func makeTables(r *refrigerant.Refrigerant) (t tables) {
	s, err := solve(r)
	if err != nil {
		t.err = fmt.Errorf("%v: %w", r, err)
		return t
	}
	t.saturation = []table.Source{s}
	if r.Pure() {
		return t
	}
	d, err := solveDome(r, &s)
	if err != nil {
		t.err = fmt.Errorf("two phases of %v: %w", r, err)
		return t
	}
	t.dome = []table.DomeSource{d}
	return t
}

func generate(edges, domes string) error {
	all := refrigerant.All()
	made := make([]tables, len(all))
	work := make(chan int)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range work {
				made[i] = makeTables(all[i])
			}
		})
	}
	for i := range all {
		work <- i
	}
	close(work)
	wait.Wait()
	var (
		saturation []table.Source
		dome       []table.DomeSource
		errs       []error
	)
	for _, t := range made {
		saturation = append(saturation, t.saturation...)
		dome = append(dome, t.dome...)
		errs = append(errs, t.err)
	}
	return errors.Join(errors.Join(errs...),
		os.WriteFile(edges, table.Encode(saturation), 0o644),
		os.WriteFile(domes, table.EncodeDomes(dome), 0o644))
}
