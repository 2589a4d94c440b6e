package diagnose

import (
	"math"
	"sort"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// The mild end of ordinary conditions: 60 °F wet bulb and 70 °F dry bulb indoors,
// 75 °F outdoors. Ice that goes when one of them is restored is put down to it.
const (
	ordinaryWet, ordinaryDry = 288.71, 294.26
	ordinaryOutdoor          = 297.04
)

// A scenario is weather that the coil may have met.
type scenario struct {
	code    string
	weather func(now signature.Weather) signature.Weather
	// met is how likely the machine was to run in it, of visits for a frozen
	// coil; common practice, no source.
	met float64
}

const asFound = "as-found"

// Scenarios with their weather: as found; a cool night; a room kept cold and dry.
var scenarios = []scenario{
	{asFound, func(w signature.Weather) signature.Weather { return w }, 1},
	{"cool-night", func(w signature.Weather) signature.Weather {
		w.Outdoor = min(w.Outdoor, 288.71)
		w.ReturnWetBulb = min(w.ReturnWetBulb, 288.15)
		return w
	}, 0.35},
	{"cold-room", func(w signature.Weather) signature.Weather {
		w.ReturnWetBulb = min(w.ReturnWetBulb, 285.37)
		w.ReturnDryBulb = min(w.ReturnDryBulb, 292.04)
		return w
	}, 0.3},
}

// A control is something that keeps a coil from icing.
type control struct {
	code string
	// stops says that it stops the compressor before ice builds.
	stops bool
	// weather is what it makes of the weather the coil meets.
	weather func(signature.Weather) signature.Weather
	// mends is a signature that is gone with it.
	mends Code
}

var controls = []control{
	{code: "freeze-thermostat", stops: true},
	{code: "head-pressure", weather: func(w signature.Weather) signature.Weather {
		w.Outdoor = max(w.Outdoor, 297.04) // holds the condensing pressure of about 75 °F
		return w
	}},
	{code: "set-point", weather: func(w signature.Weather) signature.Weather {
		w.ReturnWetBulb += 1.8
		w.ReturnDryBulb += 2.2
		return w
	}},
	{code: "airflow", mends: LowIndoorAir},
	{code: "charge", mends: Undercharge},
	{code: "restriction", mends: Restriction},
}

// Freeze answers why a coil froze.
type Freeze struct {
	// Causes by falling chance; the chances add to 1 where Explained is above 0.
	Causes []FreezeCause
	// Explained is the chance that the coil ices under one of the scenarios.
	Explained float64
	Controls  []FreezeControl
	Scenarios []FreezeScenario
}

// A FreezeCause is a signature, or a circumstance on a sound machine, with the
// chance that it iced the coil.
type FreezeCause struct {
	Code   Code
	Chance float64
}

// A FreezeControl is a control with the chance that it would have prevented the
// ice.
type FreezeControl struct {
	Code     string
	Prevents float64
}

// A FreezeScenario is what the coil does in some weather.
type FreezeScenario struct {
	Code string
	// Evaporating is the dew temperature expected there.
	Evaporating quantity.Uncertain[quantity.Temperature]
	// Ices is the chance that ice builds.
	Ices float64
}

// freeze separates what makes ice: too little air, too little refrigerant, too
// little load or a low set-point, cool weather.
func (c *caseFile) freeze(d *Diagnosis) *Freeze {
	if !c.evidence.Seen.FrozenComplaint && !c.evidence.Seen.CoilIced {
		return nil
	}
	leading := c.heaviest()
	out := &Freeze{}
	chances := map[Code]float64{}
	prevented := make([]float64, len(controls))
	total, ever := 0.0, 0.0
	for _, p := range leading {
		warm := 1.0
		for i := range scenarios {
			w := scenarios[i].weather(c.seen.weather)
			ices := c.ices(p, w, "")
			share := p.weight * scenarios[i].met * ices
			warm *= 1 - ices*scenarios[i].met
			total += share
			for code, part := range c.blame(p, i, ices) {
				chances[code] += share * part
			}
			for k := range controls {
				prevented[k] += share * c.prevents(&controls[k], p, w, ices)
			}
		}
		ever += p.weight * (1 - warm)
	}
	out.Explained = ever
	if total > 0 {
		for code, x := range chances {
			out.Causes = append(out.Causes, FreezeCause{Code: code, Chance: x / total})
		}
		for k := range controls {
			out.Controls = append(
				out.Controls, FreezeControl{Code: controls[k].code, Prevents: prevented[k] / total},
			)
		}
	}
	sort.Slice(out.Causes, func(i, j int) bool {
		x, y := &out.Causes[i], &out.Causes[j]
		return x.Chance > y.Chance || x.Chance == y.Chance && len(x.Code) < len(y.Code)
	})
	sort.SliceStable(out.Controls, func(i, j int) bool {
		return out.Controls[i].Prevents > out.Controls[j].Prevents
	})
	for i := range scenarios {
		out.Scenarios = append(out.Scenarios, c.scenario(i, leading))
	}
	return out
}

// prevents is the part of the ice of a component in some weather that a control keeps away.
func (c *caseFile) prevents(
	k *control, p component, w signature.Weather, ices float64,
) float64 {
	switch {
	case ices <= 0:
		return 0
	case k.stops:
		return 1
	case k.weather != nil:
		w = k.weather(w)
	}
	return max(0, 1-c.ices(p, w, k.mends)/ices)
}

// blame shares the ice of a component in a scenario between the signatures
// present, the weather and the load: each by how much of it goes when that one
// is put right.
func (c *caseFile) blame(p component, at int, ices float64) map[Code]float64 {
	out := map[Code]float64{}
	if ices <= 0 {
		return out
	}
	now := c.seen.weather
	w := scenarios[at].weather(now)
	sum := 0.0
	credit := func(code Code, left float64) {
		if x := max(0, 1-left/ices); x > 0 {
			out[code] += x
			sum += x
		}
	}
	for _, a := range [...]int{p.a, p.b} {
		if a != none && c.states[a][0].gain != nil {
			credit(c.suspects[a].signature, c.ices(p, w, c.suspects[a].signature))
		}
	}
	mild := w
	mild.Outdoor = max(w.Outdoor, ordinaryOutdoor)
	credit(LowAmbient, c.ices(p, mild, ""))
	loaded := w
	loaded.ReturnWetBulb = max(w.ReturnWetBulb, ordinaryWet)
	loaded.ReturnDryBulb = max(w.ReturnDryBulb, ordinaryDry)
	credit(LowLoad, c.ices(p, loaded, ""))
	if sum == 0 {
		return map[Code]float64{LowLoad: 0.5, LowAmbient: 0.5}
	}
	for code := range out {
		out[code] /= sum
	}
	return out
}

// evaporating is the mean evaporating temperature of a component in other
// weather, with one signature put right.
func (c *caseFile) evaporating(p component, w signature.Weather, mended Code) (mean, std float64) {
	const f = signature.Evaporating
	at := c.table.Sound.At(w, c.seen.fluid)
	mean = c.table.Sound.Mean(at)[f] + c.offsetSeen(p)
	variance := 0.3 * c.machine.scatter[f][f]
	for k, a := range [...]int{p.a, p.b} {
		if a == none || c.suspects[a].signature == mended {
			continue
		}
		s := &c.states[a][[...]int{p.sa, p.sb}[k]]
		if s.level == nil {
			continue
		}
		// What the weather changes is added to the shift of the state, which may
		// lie between the levels of the table.
		mean += s.shift[f] + s.level.Shift(at)[f] - s.level.Shift(c.seen.at)[f]
		variance += s.rest[f][f]
	}
	return mean, math.Sqrt(variance)
}

// offsetSeen is how far the machine's evaporating temperature is from the mean
// under the component, by the readings of the visit; a lie of an instrument
// is taken out by its component.
func (c *caseFile) offsetSeen(p component) float64 {
	const f = signature.Evaporating
	if !c.seen.have[f] {
		return c.machine.offset[f]
	}
	mean, cov := c.predict(p, &c.seen.have, c.seen.noise)
	trust := c.machine.scatter[f][f] / cov[f][f]
	return c.machine.offset[f] + trust*(c.seen.value[f]-mean[f])
}

// ices is the chance that the coil ices, by the rule of the trade.
func (c *caseFile) ices(p component, w signature.Weather, mended Code) float64 {
	mean, std := c.evaporating(p, w, mended)
	return airside.IcingChance(
		quantity.Uncertain[quantity.Temperature]{Value: quantity.Temperature(mean), Std: std},
	)
}

func (c *caseFile) scenario(i int, leading []component) FreezeScenario {
	w := scenarios[i].weather(c.seen.weather)
	var mean, second, ices float64
	for _, p := range leading {
		m, s := c.evaporating(p, w, "")
		mean += p.weight * m
		second += p.weight * (s*s + m*m)
		ices += p.weight * c.ices(p, w, "")
	}
	std := math.Sqrt(max(0, second-mean*mean))
	return FreezeScenario{
		Code: scenarios[i].code, Ices: ices,
		Evaporating: quantity.Uncertain[quantity.Temperature]{
			Value: quantity.Temperature(mean + c.seen.raw.evapGlide),
			Std:   std,
		},
	}
}

// widest is the standard uncertainty, in kelvin, beyond which the evaporating
// temperature of a scenario says nothing: that of readings on an iced coil.
const widest = 2.5

// Explains says that the readings give a reason for ice.
func (f *Freeze) Explains() bool { return f.Explained >= 0.2 }
