// Command tablegen solves the saturation of every refrigerant from its equation
// of state and writes the tables that package refrigerant embeds. It is run by
// go generate in that package. What cannot be solved is left out of the file and
// reported.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"runtime"
	"sync"

	"github.com/satline/satline/internal/table"
	"github.com/satline/satline/refrigerant"
)

func main() {
	out := flag.String("o", "saturation.bin", "file to write")
	flag.Parse()
	if err := generate(*out); err != nil {
		fmt.Fprintln(os.Stderr, "tablegen:", err)
		os.Exit(1)
	}
}

func generate(path string) error {
	all := refrigerant.All()
	sources := make([]table.Source, len(all))
	errs := make([]error, len(all))
	work := make(chan int)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range work {
				sources[i], errs[i] = solve(all[i])
			}
		})
	}
	for i := range all {
		work <- i
	}
	close(work)
	wait.Wait()
	var solved []table.Source
	for i, err := range errs {
		if err != nil {
			errs[i] = fmt.Errorf("%v: %w", all[i], err)
		} else {
			solved = append(solved, sources[i])
		}
	}
	return errors.Join(errors.Join(errs...), os.WriteFile(path, table.Encode(solved), 0o644))
}
