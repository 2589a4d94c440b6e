// Program gen learns the signatures of machines that keep a cold room: it draws machines of
// package machine, gives them weather, a box and one fault, and fits to each feature a mean over
// those and to all of them a covariance about it.
package main

import (
	"log"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"sync"

	"github.com/satline/satline/internal/judge/coldroom/machine"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/gonum/mat"
)

const (
	machines   = 500 // of each kind
	perMachine = 3   // visits to each, for every cause and size
)

func main() {
	fluids := map[string]*cyclefluid.Fluid{}
	for _, designation := range slices.Concat(coolers, freezers, small) {
		r, err := refrigerant.Lookup(designation)
		if err != nil {
			log.Fatal(err)
		}
		if fluids[designation], err = cyclefluid.New(r); err != nil {
			log.Fatal(err)
		}
	}
	kinds := make([][]signature.Row, signature.Kinds)
	var wg sync.WaitGroup
	limit := make(chan bool, 2)
	for k := range signature.Kinds {
		wg.Go(func() {
			limit <- true
			defer func() { <-limit }()
			kinds[k] = learn(k, fluids)
		})
	}
	wg.Wait()
	rows := slices.Concat(kinds...)
	if err := os.WriteFile("signatures.bin", signature.Encode(rows), 0o644); err != nil {
		log.Fatal(err)
	}
}

// learn makes the rows of a kind.
func learn(k signature.Kind, fluids map[string]*cyclefluid.Fluid) (out []signature.Row) {
	rng := rand.New(rand.NewPCG(19, uint64(k)))
	var fleet []*visited
	for len(fleet) < machines*perMachine {
		m := drawn(rng, k, fluids)
		for range perMachine {
			if v := m.visit(rng); v.base.Converged {
				fleet = append(fleet, v)
			}
		}
	}
	for i := range signature.Causes {
		c := &signature.Causes[i]
		if !k.Has(c) {
			continue
		}
		fails := sizes(c.Code, k)
		if len(fails) != c.Sizes {
			log.Fatalf("%s: %d sizes, %d declared", c.Code, len(fails), c.Sizes)
		}
		for n := range fails {
			out = append(out, fit(fleet, c, fails, n, rand.New(rand.NewPCG(23, uint64(100*i+n)))))
		}
	}
	return out
}

// fit is the row of a cause at one size.
func fit(
	fleet []*visited, c *signature.Cause, fails []fails, n int, rng *rand.Rand,
) (row signature.Row) {
	var places []*visited
	var seen []signature.Vector
	for _, v := range fleet {
		if v.Outdoor > signature.CoolWeather && c.ColdOnly {
			continue
		}
		if reads, loss, ok := v.with(between(fails, n, rng.Float64()), rng); ok {
			places, seen = append(places, v), append(seen, reads)
			row.Loss += loss
		}
	}
	if len(seen) < 300 {
		log.Fatalf("%s %d: only %d states", c.Code, n, len(seen))
	}
	row.Loss /= float64(len(seen))
	x := mat.NewDense(len(seen)+signature.Terms, signature.Terms, nil)
	y := mat.NewDense(len(seen)+signature.Terms, signature.Features, nil)
	for i, v := range places {
		b := v.Basis()
		x.SetRow(i, b[:])
		y.SetRow(i, seen[i][:])
	}
	for i := range signature.Terms { // a knot that no state is near stays near to nought
		x.Set(len(seen)+i, i, 0.3)
	}
	var beta, fitted mat.Dense
	if err := beta.Solve(x, y); err != nil {
		log.Fatal(err)
	}
	for f := range signature.Features {
		for i := range signature.Terms {
			row.Coefficients[f][i] = beta.At(i, f)
		}
	}
	fitted.Mul(x, &beta)
	var cold, warm float64
	for i, v := range places {
		w := v.Warm()
		cold, warm = cold+1-w, warm+w
		for f := range signature.Features {
			for g := range signature.Features {
				r := (y.At(i, f) - fitted.At(i, f)) * (y.At(i, g) - fitted.At(i, g))
				row.Cold[f][g] += (1 - w) * r
				row.Warm[f][g] += w * r
			}
		}
	}
	for f := range signature.Features {
		for g := range signature.Features {
			row.Cold[f][g] /= max(cold, 1)
			row.Warm[f][g] /= max(warm, 1)
		}
		row.Cold[f][f] += modelError[f] * modelError[f]
		row.Warm[f][f] += modelError[f] * modelError[f]
	}
	if c.ColdOnly {
		row.Warm = row.Cold
	}
	return row
}

// modelError is how far off the model is by itself, each feature for itself, bent. How far a box
// is over what it is kept at is no matter of the model while nothing is lost: a thermostat keeps
// it within 1 or 2 K, half of which the draws have already (common practice, no source).
var modelError = signature.Vector{0.4, 1.0, 0.5, 0.5, 0.6, 0.4, 3, 0.8, 0.5, 0.05}

// A visited machine is met in some weather.
type visited struct {
	*built
	signature.Place
	base  machine.State
	start machine.Unknowns
}

func (m *built) visit(rng *rand.Rand) *visited {
	v := &visited{built: m}
	v.Setpoint, v.Difference = m.Box, m.Design.Difference
	v.Box = v.Setpoint + 0.3 + 0.6*rng.NormFloat64()
	if rng.IntN(2) == 0 {
		v.Box += 13 * rng.Float64() * rng.Float64()
	}
	v.Outdoor = 252 + 71*rng.Float64()
	v.Refrigerant(m.fluid, m.superheat)
	v.base, v.start = m.Run(machine.Weather{Box: v.Box, Outdoor: v.Outdoor}, machine.Failing{}, nil)
	return v
}

// with is what is read of a machine with something wrong, and the capacity that it has lost.
func (v *visited) with(x fails, rng *rand.Rand) (out signature.Vector, lost float64, ok bool) {
	st, w := v.base, machine.Weather{Box: v.Box, Outdoor: v.Outdoor}
	if x.Failing != (machine.Failing{}) {
		if st, _ = v.Run(w, x.Failing, &v.start); !st.Converged {
			return out, 0, false
		}
	}
	suction := st.Suction + x.clamp*(w.Outdoor-st.Suction)
	lost = max(0, 1-st.Capacity/v.base.Capacity)
	lag := 5 * lost // how far the box has warmed takes time
	if x.over > 0 {
		lag = 1.2
	}
	out = signature.Vector{
		signature.Difference:    w.Box - st.Evaporating,
		signature.Superheat:     suction - st.Evaporating,
		signature.BulbSuperheat: st.Bulb - st.Evaporating,
		signature.Split:         w.Box - st.Supply,
		signature.OverOutdoor:   st.Condensing - w.Outdoor,
		signature.Subcooling:    st.Bubble - st.Liquid,
		signature.Hot:           st.Discharge - st.CondensingDew,
		signature.Rise:          st.Leaving - w.Outdoor,
		signature.OverBox: 0.3 + 14*max(0, lost-0.08) + x.over +
			math.Hypot(0.5, lag)*rng.NormFloat64(),
		signature.Current: v.rated * (v.idle + (1-v.idle)*st.Power/v.DesignPower),
	}
	for f := range out {
		out[f], _ = signature.Bend(f, out[f])
	}
	return out, lost, true
}
