// Program gen learns the signatures of a heat pump that heats: it draws machines of package
// cycle, gives them weather and one fault, and fits to each feature a mean over the weather
// and to all of them a covariance about it.
package main

import (
	"log"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"sync"

	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
	"gonum.org/v1/gonum/mat"
)

const (
	machines   = 160 // of each kind of device
	perMachine = 12  // visits for each cause and size
)

func main() {
	fleets := [signature.Devices][]*machine{}
	for d := range fleets {
		rng := rand.New(rand.NewPCG(47, uint64(d)))
		for len(fleets[d]) < machines {
			if m, err := draw(rng, signature.Device(d)); err == nil {
				fleets[d] = append(fleets[d], m)
			}
		}
	}
	sets := len(signature.Causes) * signature.Sizes * signature.Devices
	out := make([][signature.Parts]signature.Row, sets)
	var wg sync.WaitGroup
	limit := make(chan bool, 2)
	for i := range out {
		wg.Go(func() {
			limit <- true
			defer func() { <-limit }()
			d := i % signature.Devices
			size, cause := i/signature.Devices%signature.Sizes, i/signature.Devices/signature.Sizes
			out[i] = learn(rand.New(rand.NewPCG(17, uint64(i))), fleets[d], causes[cause], size)
		})
	}
	wg.Wait()
	var rows []signature.Row
	for i := range out {
		rows = append(rows, out[i][:]...)
	}
	if err := os.WriteFile("signatures.bin", signature.Encode(rows), 0o644); err != nil {
		log.Fatal(err)
	}
}

// A machine is one heat pump and how it is found when nothing is wrong.
type machine struct {
	reversed      *cycle.Reversed
	nominal       quantity.Power
	liquidLoss    float64 // K of the liquid line per K from room to outdoor air
	dischargeLoss float64 // share of discharge over condensing that the clamp misses
	supplyLoss    float64 // K
	charge        float64
	humidity      float64
}

var fluids = []string{"R-410A", "R-410A", "R-410A", "R-454B", "R-454B", "R-32", "R-22"}

// Spreads of what is built, common practice, no source.
func draw(rng *rand.Rand, d signature.Device) (*machine, error) {
	uniform := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	r, err := refrigerant.Lookup(fluids[rng.IntN(len(fluids))])
	if err != nil {
		return nil, err
	}
	metering := refrigerant.FixedRestrictor
	if d == signature.Valve {
		metering = refrigerant.TXV
		if rng.IntN(5) == 0 {
			metering = refrigerant.EXV
		}
	}
	tons := []float64{1.5, 2, 2.5, 3, 3.5, 4, 5}[rng.IntN(7)]
	s, err := cycle.Design(cycle.Spec{
		Refrigerant: r, Capacity: quantity.Tons(tons * uniform(0.95, 1.06)), Metering: metering,
		Airflow:        quantity.CFM(tons * uniform(340, 450)),
		OutdoorAirflow: quantity.CFM(tons * uniform(650, 1150)),
		Suction:        quantity.Fahrenheit(uniform(43, 52)),
		Condensing:     quantity.FahrenheitDelta(uniform(13, 29)),
		Superheat:      quantity.FahrenheitDelta(uniform(9, 14)),
		LineSet:        quantity.Feet(uniform(15, 55)), HeatPump: true,
		Compressor: cycle.Compressor{
			Best: uniform(0.62, 0.73), Full: uniform(0.92, 1), Clearance: uniform(0.015, 0.05),
			HeatLoss: uniform(0.03, 0.13), Falloff: uniform(0.12, 0.3),
		},
		ValveSize: uniform(1.25, 2),
	})
	if err != nil {
		return nil, err
	}
	h, err := s.Reversed(cycle.HeatingSpec{
		Superheat:  quantity.FahrenheitDelta(uniform(5, 14)),
		Subcooling: quantity.FahrenheitDelta(uniform(6, 20)),
	})
	if err != nil {
		return nil, err
	}
	return &machine{
		reversed: h, nominal: quantity.Tons(tons),
		liquidLoss: uniform(0.01, 0.06), dischargeLoss: uniform(0.02, 0.15),
		supplyLoss: uniform(0, 1), charge: 0.015 * rng.NormFloat64(), humidity: uniform(0.5, 0.95),
	}, nil
}

// A visit is what a machine meets and what is wrong with it.
type visit struct {
	weather cycle.HeatingConditions
	faults  cycle.Faults
	after   func(*readings)
}

type readings struct {
	evaporating, condensing, suctionLine, liquidLine, discharge float64
	outdoor, room, supply, outdoorLeaving                       float64
	airflow, power                                              float64
}

// A cause is given a size from 0 to 1 within slight, middling or large.
type cause func(rng *rand.Rand, v *visit, size float64)

func between(low, high, u float64) float64 { return low + (high-low)*u }

// causes in the order of signature.Causes.
var causes = []cause{
	func(*rand.Rand, *visit, float64) {},
	func(_ *rand.Rand, v *visit, u float64) { v.faults.Charge -= between(0.07, 0.42, u) },
	func(_ *rand.Rand, v *visit, u float64) { v.faults.Charge += between(0.07, 0.42, u) },
	func(_ *rand.Rand, v *visit, u float64) { v.faults.NonCondensables = between(0.1, 0.7, u) },
	func(rng *rand.Rand, v *visit, u float64) {
		if rng.IntN(3) == 0 {
			v.faults.LiquidRestriction = quantity.Bar(between(4, 16, u))
			return
		}
		v.faults.MeteringSize = -between(0.15, 0.7, u)
	},
	func(rng *rand.Rand, v *visit, u float64) {
		// A device too large, a valve that stays open or a check valve that leaks past it.
		v.faults.MeteringSize = between(0.15, 0.9, u)
		v.faults.ValveStuck, v.faults.ValveOpening = true, between(0.75, 1, u)
	},
	func(_ *rand.Rand, v *visit, u float64) {
		v.faults.CompressorLeak = between(0.07, 0.6, u*u*0.5+u*0.5)
	},
	func(_ *rand.Rand, v *visit, u float64) {
		v.faults.IndoorAirflow = (1+v.faults.IndoorAirflow)*(1-between(0.14, 0.62, u)) - 1
	},
	func(rng *rand.Rand, v *visit, u float64) {
		lost := between(0.25, 0.9, u)
		v.faults.OutdoorAirflow = (1+v.faults.OutdoorAirflow)*(1-lost) - 1
		if rng.IntN(2) == 0 {
			v.faults.EvaporatorFouling = lost * 0.35
		}
	},
	func(rng *rand.Rand, v *visit, u float64) {
		rise, power := between(4, 22, u), between(30, 160, u)
		seen := rng.IntN(2) == 0
		v.after = func(r *readings) {
			r.supply += rise
			if seen {
				r.power *= math.Exp(power / 100)
			}
		}
	},
	func(_ *rand.Rand, v *visit, u float64) { v.faults.Charge -= between(0.5, 0.75, u) },
	func(_ *rand.Rand, v *visit, u float64) {
		v.after = func(r *readings) {
			r.suctionLine += between(0.2, 0.95, u) * (r.outdoor - r.suctionLine)
		}
	},
	func(_ *rand.Rand, v *visit, u float64) {
		v.after = func(r *readings) {
			r.liquidLine += between(0.12, 0.8, u) * (r.outdoor - r.liquidLine)
		}
	},
	func(rng *rand.Rand, v *visit, u float64) {
		off := between(2.5, 8, u) * sign(rng)
		v.after = func(r *readings) { r.evaporating += off }
	},
	func(rng *rand.Rand, v *visit, u float64) {
		off := between(2.5, 7, u) * sign(rng)
		v.after = func(r *readings) { r.condensing += off }
	},
	func(rng *rand.Rand, v *visit, u float64) {
		off := between(2.2, 8, u)
		if rng.IntN(4) == 0 {
			off = -off
		}
		v.after = func(r *readings) { r.supply -= off }
	},
	func(_ *rand.Rand, v *visit, u float64) {
		// Hot gas that crosses a reversing valve comes back in the suction line, before the
		// clamp at the compressor.
		v.faults.CompressorLeak = between(0.07, 0.5, u*u*0.5+u*0.5)
		v.after = func(r *readings) {
			r.suctionLine += v.faults.CompressorLeak * (r.discharge - r.suctionLine)
		}
	},
}

func sign(rng *rand.Rand) float64 { return float64(1 - 2*rng.IntN(2)) }

// A state is what a visit comes to, and whether liquid returns in it.
type state struct {
	weather signature.Weather
	reads   [signature.Features]float64
	floods  bool
}

// learn fits the rows of both parts.
func learn(
	rng *rand.Rand, fleet []*machine, c cause, size int,
) (out [signature.Parts]signature.Row) {
	var all []state
	for _, m := range fleet {
		for range perMachine {
			if s, ok := m.visit(rng, c, (float64(size)+rng.Float64())/signature.Sizes); ok {
				all = append(all, s)
			}
		}
	}
	if len(all) < 200 {
		log.Fatalf("only %d states", len(all))
	}
	const fewest = 80 // states that a part of its own is learnt from
	in := mat.NewDense(len(all), 1, nil)
	x := basis(all)
	var parts [signature.Parts][]state
	for i, s := range all {
		if s.floods {
			in.Set(i, 0, 1)
			parts[signature.Flooded] = append(parts[signature.Flooded], s)
		} else {
			parts[signature.Dry] = append(parts[signature.Dry], s)
		}
	}
	var shares mat.Dense
	if err := shares.Solve(x, in); err != nil {
		log.Fatal(err)
	}
	for p := range out {
		few := len(parts[p]) < fewest || len(all)-len(parts[p]) < fewest
		if few {
			parts[p] = all
		}
		out[p] = fit(parts[p])
		out[p].Shares = sharesOf(signature.Part(p), &shares, few)
	}
	return out
}

// sharesOf is how common a part is over the weather, by the fit of the flooded; of few states
// it is half of all.
func sharesOf(
	p signature.Part, flooded *mat.Dense, few bool,
) (shares [signature.Terms]float64) {
	if few {
		shares[0] = 0.5
		return shares
	}
	for k := range shares {
		shares[k] = flooded.At(k, 0)
		if p == signature.Dry {
			shares[k] = -shares[k]
		}
	}
	if p == signature.Dry {
		shares[0]++
	}
	return shares
}

func basis(all []state) *mat.Dense {
	x := mat.NewDense(len(all), signature.Terms, nil)
	for i := range all {
		b := all[i].weather.Basis()
		x.SetRow(i, b[:])
	}
	return x
}

// fit is the mean over the weather and the covariance about it.
func fit(seen []state) (row signature.Row) {
	x := basis(seen)
	y := mat.NewDense(len(seen), signature.Features, nil)
	for i := range seen {
		y.SetRow(i, seen[i].reads[:])
	}
	var beta, fitted mat.Dense
	if err := beta.Solve(x, y); err != nil {
		log.Fatal(err)
	}
	fitted.Mul(x, &beta)
	outdoor := make([]float64, len(seen))
	for i := range seen {
		outdoor[i] = seen[i].weather.Outdoor
	}
	slices.Sort(outdoor)
	row.From, row.To = outdoor[len(outdoor)/25], outdoor[len(outdoor)-1-len(outdoor)/25]
	for f := range signature.Features {
		for k := range signature.Terms {
			row.Coefficients[f][k] = beta.At(k, f)
		}
		for g := range signature.Features {
			sum := 0.0
			for i := range seen {
				sum += (y.At(i, f) - fitted.At(i, f)) * (y.At(i, g) - fitted.At(i, g))
			}
			row.Covariance[f][g] = sum / float64(len(seen)-signature.Terms)
		}
		row.Covariance[f][f] += 0.05 // the model is no machine
	}
	return row
}

// visit gives a machine weather and a cause, and returns what it comes to; false where it
// would not run on.
func (m *machine) visit(rng *rand.Rand, c cause, size float64) (state, bool) {
	uniform := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	outdoor, room := uniform(-2, 66), uniform(58, 80)
	v := visit{weather: cycle.HeatingConditions{
		OutdoorDryBulb: quantity.Fahrenheit(outdoor), OutdoorHumidity: m.humidity,
		ReturnDryBulb: quantity.Fahrenheit(room),
	}}
	if outdoor < 44 && outdoor > 12 {
		v.weather.Frost = uniform(0, 0.35) // somewhere between two defrosts
	}
	if rng.IntN(4) == 0 {
		v.weather.Elevation = quantity.Feet(uniform(500, 6500))
	}
	v.faults = cycle.Faults{
		Charge: m.charge, IndoorAirflow: 0.05 * rng.NormFloat64(),
		OutdoorAirflow: uniform(-0.15, 0.03),
	}
	c(rng, &v, size)
	o, err := m.reversed.Solve(v.weather, v.faults)
	if err != nil || o.Limit != cycle.NoLimit {
		return state{}, false
	}
	r := readings{
		evaporating: float64(o.Evaporating), condensing: float64(o.Condensing),
		suctionLine: float64(o.SuctionLine), liquidLine: float64(o.LiquidLine),
		discharge: float64(o.DischargeLine),
		outdoor:   float64(v.weather.OutdoorDryBulb), room: float64(v.weather.ReturnDryBulb),
		supply: float64(o.Supply) - m.supplyLoss, outdoorLeaving: float64(o.OutdoorLeaving),
		airflow: m.reversed.Airflow().CFM() * (1 + v.faults.IndoorAirflow), power: o.Power.Watts(),
	}
	r.liquidLine -= m.liquidLoss * (r.room - r.outdoor)
	r.discharge -= m.dischargeLoss * (r.discharge - r.condensing)
	if v.after != nil {
		v.after(&r)
	}
	tons := m.nominal.Tons()
	return state{signature.Weather{Outdoor: r.outdoor, Return: r.room}, [signature.Features]float64{
		r.outdoor - r.evaporating, r.suctionLine - r.evaporating, r.condensing - r.room,
		r.condensing - r.liquidLine, r.discharge - r.condensing, r.supply - r.room,
		r.outdoor - r.outdoorLeaving, 100 * math.Log(r.airflow/(400*tons)),
		100 * math.Log(r.power/(1000*tons)),
	}, o.Superheat < 0.3}, true
}
