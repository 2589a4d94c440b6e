// Command gen fits the signature table to the system model of package cycle:
// designs and weather are drawn at random, each is solved sound and with each
// fault at each severity, and the readings a technician would take are fitted
// as package signature describes. The draw is seeded: the same model gives the
// same table.
//
//	go run ./internal/diagnose/signature/gen -o signatures.bin
package main

import (
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"runtime"
	"sync"

	"github.com/satline/satline/internal/diagnose/population"
	"github.com/satline/satline/internal/diagnose/signature"
)

func main() {
	log.SetFlags(0)
	out := flag.String("o", "signatures.bin", "file to write")
	soundCount := flag.Int("sound", 8000, "machines for the mean of sound ones")
	levelCount := flag.Int("level", 900, "machines for each cause and severity")
	flag.Parse()

	var all [signature.Devices]signature.Table
	for d := range all {
		if err := fit(&all[d], signature.Device(d), *soundCount, *levelCount); err != nil {
			log.Fatal(err)
		}
	}
	if err := os.WriteFile(*out, signature.Encode(all), 0o644); err != nil {
		log.Fatal(err)
	}
}

func fit(t *signature.Table, d signature.Device, soundCount, levelCount int) error {
	samples, err := solve(d, 0, soundCount, func(*rand.Rand, *sample) {})
	if err != nil {
		return err
	}
	if t.Sound, err = signature.FitSound(samples, fleet(d)); err != nil {
		return err
	}
	for _, c := range causes {
		out := signature.Cause{Code: c.code}
		for k, severity := range c.levels {
			samples, err := solve(
				d,
				uint64(len(t.Causes)*16+k+1),
				levelCount,
				func(rng *rand.Rand, s *sample) {
					s.severity = c.near(rng, k)
					c.impose(rng, s)
				},
			)
			if err != nil {
				return err
			}
			level, err := signature.FitLevel(&t.Sound, samples)
			if err != nil {
				return fmt.Errorf("%s at %v: %w", c.code, severity, err)
			}
			out.Levels = append(out.Levels, level)
		}
		t.Causes = append(t.Causes, out)
	}
	return nil
}

// fleet is how common each kind of machine with a device is.
func fleet(d signature.Device) []float64 {
	known := population.Known{Valve: d == signature.Valve}
	return known.Weights()
}

// solve draws and solves machines on every processor; each has a seed of its
// own, so that the result does not depend on their number. Machines that would
// stop on a pressure control are drawn anew: nobody reads them running.
func solve(
	d signature.Device,
	stream uint64,
	n int,
	impose func(*rand.Rand, *sample),
) ([]signature.Sample, error) {
	out := make([]signature.Sample, n)
	errs := make([]error, n)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wg.Go(func() {
			for i := w; i < n; i += workers {
				rng := rand.New(rand.NewPCG(uint64(d)<<32|stream, uint64(i)))
				for range 100 {
					var s sample
					if errs[i] = s.draw(rng, d); errs[i] != nil {
						continue
					}
					impose(rng, &s)
					var ok bool
					if out[i], ok, errs[i] = s.solve(); ok && errs[i] == nil {
						break
					}
				}
			}
		})
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}
