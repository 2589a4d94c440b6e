// Command gen fits the signature table to the system model of package cycle:
// designs and weather are drawn at random, each is solved sound and with each
// fault at each severity, and the readings a technician would take are fitted
// as package signature describes. The draw is seeded: the same model gives the
// same table.
//
//	go run ./internal/judge/diagnose/signature/gen -o signatures.bin
package main

import (
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"runtime"
	"sync"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
)

func main() {
	log.SetFlags(0)
	out := flag.String("o", "signatures.bin", "file to write")
	flag.Parse()

	var all [signature.Devices]signature.Table
	for d := range all {
		if err := fit(&all[d], signature.Device(d)); err != nil {
			log.Fatal(err)
		}
	}
	if err := os.WriteFile(*out, signature.Encode(all), 0o644); err != nil {
		log.Fatal(err)
	}
}

// How many machines the mean of sound ones is fitted on, and each cause at each severity.
const soundCount, levelCount = 8000, 900

func fit(t *signature.Table, d signature.Device) error {
	samples, err := solve(d, 0, soundCount, func(*rand.Rand, *sample) bool { return true })
	if err != nil {
		return err
	}
	if t.Sound, err = signature.FitSound(samples, fleet(d)); err != nil {
		return err
	}
	isHeatPump := func(s *sample) bool { return s.system.Spec().HeatPump }
	for i := range causes {
		c := &causes[i]
		of := func(s *sample) bool { return !apart[c.code] || !isHeatPump(s) }
		if err := learn(t, d, c, c.code, of); err != nil {
			return err
		}
	}
	for i := range causes {
		c := &causes[i]
		if !apart[c.code] {
			continue
		}
		if err := learn(t, d, c, c.code+signature.OfHeatPumps, isHeatPump); err != nil {
			return err
		}
	}
	return nil
}

// learn fits a cause on those machines that are of a kind.
func learn(
	t *signature.Table, d signature.Device, c *cause, entry string, of func(*sample) bool,
) error {
	out := signature.Cause{Code: entry}
	for k, severity := range c.levels {
		samples, err := solve(
			d,
			uint64(len(t.Causes)*16+k+1),
			levelCount,
			func(rng *rand.Rand, s *sample) bool {
				s.severity = c.near(rng, k)
				c.impose(rng, s)
				return of(s)
			},
		)
		if err != nil {
			return err
		}
		level, err := signature.FitLevel(&t.Sound, samples)
		if err != nil {
			return fmt.Errorf("%s at %v: %w", entry, severity, err)
		}
		out.Levels = append(out.Levels, level)
	}
	t.Causes = append(t.Causes, out)
	return nil
}

// fleet is how common each kind of machine with a device is.
func fleet(d signature.Device) []float64 {
	known := population.Known{Valve: d == signature.Valve}
	return known.Weights()
}

// solve draws and solves machines on every processor; each has a seed of its
// own, so that the result does not depend on their number. Machines that impose refuses, or
// that would stop on a pressure control, are drawn anew: nobody reads the latter running.
func solve(
	d signature.Device, stream uint64, n int, impose func(*rand.Rand, *sample) bool,
) ([]signature.Sample, error) {
	out := make([]signature.Sample, n)
	errs := make([]error, n)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wg.Go(func() {
			for i := w; i < n; i += workers {
				rng := rand.New(rand.NewPCG(uint64(d)<<32|stream, uint64(i)))
				out[i], errs[i] = drawn(rng, d, impose)
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

// drawn is the first machine of a hundred that runs.
func drawn(
	rng *rand.Rand, d signature.Device, impose func(*rand.Rand, *sample) bool,
) (out signature.Sample, err error) {
	for range 100 {
		var s sample
		if err = s.draw(rng, d); err != nil || !impose(rng, &s) {
			continue
		}
		var ok bool
		if out, ok, err = s.solve(); ok && err == nil {
			break
		}
	}
	return out, err
}
