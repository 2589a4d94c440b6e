package diagnose

import (
	"math"
	"slices"
	"sync"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

const features = signature.Features

type (
	vector = signature.Vector
	matrix = signature.Matrix
)

// The raw readings that features are made of. Their errors are independent;
// those of features are not, since one gauge serves several.
const (
	rEvaporating = iota // mean evaporating temperature
	rCondensing         // middle of bubble and dew
	rSuctionLine
	rLiquidLine
	rDischargeLine
	rOutdoor
	rCondenserLeaving
	rReturnDryBulb
	rReturnWetBulb
	rSupplyDryBulb
	rSupplyWetBulb
	rAirflow
	rPower
	raws
)

// readings are raw values in kelvin (percent for the last two) with standard
// uncertainty; std is that of a usual instrument where the reading is missing.
type readings struct {
	value, std [raws]float64
	have       [raws]bool
	// evapGlide is dew less mean evaporating temperature, condGlide middle
	// condensing less bubble temperature.
	evapGlide, condGlide float64
	// fluid is the refrigerant, as far as the table tells it from others.
	fluid signature.Fluid
	// thin is by how much of the standard atmosphere the air is below it.
	thin float64
	// byCurrent says that the power is that by the compressor's current, and ratedPower what
	// a sound machine has at rated conditions.
	byCurrent  bool
	ratedPower float64
	// habit is the log likelihood of the return air, as rooms are kept.
	habit float64
}

// usualStd are the standard uncertainties of sound field instruments, for
// readings that were not taken; common practice, no source.
var usualStd = [raws]float64{
	rEvaporating: 0.3, rCondensing: 0.25, rSuctionLine: 0.5, rLiquidLine: 0.5, rDischargeLine: 1,
	rOutdoor: 0.35, rCondenserLeaving: 0.6, rReturnDryBulb: 0.35, rReturnWetBulb: 0.4,
	rSupplyDryBulb: 0.35, rSupplyWetBulb: 0.4, rAirflow: 6, rPower: 2,
}

// Where a condition of the air was not read, it is taken from what is usual:
// outdoors 85 ± 12 °F, return wet bulb 64 ± 3.5 °F, return dry bulb 11 °F above
// the wet bulb ± 4 °F. A machine that cools also dries: damp rooms are rarer than
// dry ones. Common practice, no source.
const (
	usualOutdoor, usualOutdoorStd       = 302.6, 6.7
	usualWetBulb, usualWetBulbStd       = 290.9, 2.0
	usualDepression, usualDepressionStd = 6.1, 2.2
	dampDepressionStd                   = 1.5 // on the damp side
)

func newReadings(
	in *readcheck.Input, flow *quantity.Uncertain[quantity.VolumeFlow],
	power *quantity.Uncertain[quantity.Power], e *Evidence,
) (r readings) {
	r.std = usualStd
	temp := func(i int, t readcheck.Temp) {
		if t != nil && plausible(float64(t.Value)) {
			r.value[i], r.have[i] = float64(t.Value), true
			if t.Std > 0 {
				r.std[i] = t.Std
			}
		}
	}
	temp(rSuctionLine, in.SuctionLine)
	temp(rLiquidLine, in.LiquidLine)
	temp(rDischargeLine, in.DischargeLine)
	temp(rOutdoor, in.OutdoorDryBulb)
	temp(rCondenserLeaving, in.CondenserLeaving)
	temp(rReturnDryBulb, in.ReturnDryBulb)
	temp(rReturnWetBulb, in.ReturnWetBulb)
	temp(rSupplyDryBulb, in.SupplyDryBulb)
	temp(rSupplyWetBulb, in.SupplyWetBulb)
	temp(rEvaporating, in.EvaporatingDew)
	temp(rCondensing, in.CondensingBubble)
	if r.have[rCondensing] && in.CondensingDew != nil {
		r.condGlide = max(0, float64(in.CondensingDew.Value-in.CondensingBubble.Value)) / 2
		r.value[rCondensing] += r.condGlide
		r.fluid.Glide = 2 * r.condGlide
	}
	if r.have[rEvaporating] {
		glide := 2 * r.condGlide
		if e.Fluid != nil && in.SuctionPressure != nil && e.Atmosphere > 0 {
			low := in.SuctionPressure.Value.Absolute(e.Atmosphere)
			if b, err := e.Fluid.BubbleTemperature(low); err == nil {
				glide = max(0, float64(in.EvaporatingDew.Value-b))
			}
		}
		r.fluid.Glide = glide
		r.evapGlide = 0.4 * glide
		r.value[rEvaporating] -= r.evapGlide
	}
	if e.Atmosphere > 0 {
		r.thin = 1 - float64(e.Atmosphere/quantity.StandardAtmosphere)
	}
	r.habit = r.usualHabit()
	tons := float64(e.NominalCapacity) / wattsPerTon
	rated := tons * flowPerTon
	if rated <= 0 {
		rated = float64(e.RatedAirflow)
	}
	if flow != nil && flow.Value > 0 && rated > 0 {
		r.value[rAirflow], r.have[rAirflow] = 100*math.Log(float64(flow.Value)/rated), true
		if flow.Std > 0 {
			r.std[rAirflow] = 100 * flow.Std / float64(flow.Value)
		}
	}
	if power != nil && power.Value > 0 && tons > 0 {
		r.value[rPower], r.have[rPower] = 100*math.Log(
			float64(power.Value)/float64(e.NominalCapacity),
		), true
		if power.Std > 0 {
			r.std[rPower] = 100 * power.Std / float64(power.Value)
		}
	}
	return r
}

// superheatOf is the isentropic superheat of a refrigerant, that of R-410A where
// it is not known; false where the table does not reach to it.
func superheatOf(f Fluid) (superheat float64, reached bool) {
	superheat = signature.UsualFluid.Superheat
	if r, ok := f.(*refrigerant.Refrigerant); ok {
		q, known := superheats()[r]
		var err error
		if !known {
			q, err = signature.IsentropicSuperheat(r)
		}
		if err == nil {
			superheat = q
		}
	}
	within := min(max(superheat, signature.LeastLearnt), signature.MostLearnt)
	return within, within == superheat
}

// superheats are those of the refrigerants that others are taken for, worked out once.
var superheats = sync.OnceValue(func() map[*refrigerant.Refrigerant]float64 {
	out := map[*refrigerant.Refrigerant]float64{}
	add := func(name string) {
		if r, err := refrigerant.Lookup(name); err == nil {
			if q, err := signature.IsentropicSuperheat(r); err == nil {
				out[r] = q
			}
		}
	}
	for _, name := range comfort {
		add(name)
	}
	for name, others := range confused {
		add(name)
		for _, other := range others {
			add(other)
		}
	}
	return out
})

const (
	wattsPerTon = 3516.8528
	flowPerTon  = 400 * 0.3048 * 0.3048 * 0.3048 / 60 // m³/s: 400 CFM
)

func plausible(kelvin float64) bool { return kelvin > 150 && kelvin < 600 }

// air fills in the conditions of the air that were not read, with the doubt
// that this brings.
func (r *readings) air() (w signature.Weather, std [3]float64) {
	w.Thin = r.thin
	w.Outdoor, std[0] = r.value[rOutdoor], r.std[rOutdoor]
	if !r.have[rOutdoor] {
		w.Outdoor, std[0] = usualOutdoor, usualOutdoorStd
	}
	w.ReturnWetBulb, std[1] = r.value[rReturnWetBulb], r.std[rReturnWetBulb]
	w.ReturnDryBulb, std[2] = r.value[rReturnDryBulb], r.std[rReturnDryBulb]
	wet, dry := r.have[rReturnWetBulb], r.have[rReturnDryBulb]
	switch {
	case !wet && dry:
		w.ReturnWetBulb, std[1] = w.ReturnDryBulb-usualDepression, usualDepressionStd
	case !wet:
		w.ReturnWetBulb, std[1] = usualWetBulb, usualWetBulbStd
	}
	if !dry {
		w.ReturnDryBulb, std[2] = w.ReturnWetBulb+usualDepression, usualDepressionStd
	}
	return w, std
}

// depression is the return dry bulb over the wet bulb, with its standard
// uncertainty.
func (r *readings) depression() (value, std float64) {
	return r.value[rReturnDryBulb] - r.value[rReturnWetBulb], math.Hypot(
		r.std[rReturnDryBulb], r.std[rReturnWetBulb],
	)
}

// usualHabit is the habit of return air that was read right; zero where it was
// not read.
func (r *readings) usualHabit() float64 {
	if !r.have[rReturnWetBulb] || !r.have[rReturnDryBulb] {
		return 0
	}
	read, std := r.depression()
	return habit(read, std, 1)
}

// habit is the log density, up to a constant, of a depression as it is read, with
// a standard uncertainty, through a wick that shows a part of it: that of
// a Student t whose two sides differ.
func habit(read, std, shown float64) float64 {
	damp, dry := math.Hypot(std, shown*dampDepressionStd), math.Hypot(std, shown*usualDepressionStd)
	z := read - shown*usualDepression
	if z < 0 {
		z /= damp
	} else {
		z /= dry
	}
	return -math.Log((damp+dry)/2) - 0.5*(tails+1)*math.Log1p(z*z/(tails-2))
}

// bound is the log likelihood of the air: that of its habit, less where it breaks
// what holds of all air: a wet bulb is below its dry bulb.
func (r *readings) bound() float64 {
	sum := 0.0
	for _, pair := range [...][2]int{
		{rReturnWetBulb, rReturnDryBulb}, {rSupplyWetBulb, rSupplyDryBulb},
	} {
		if !r.have[pair[0]] || !r.have[pair[1]] {
			continue
		}
		if over := r.value[pair[0]] - r.value[pair[1]]; over > 0 {
			std := math.Hypot(r.std[pair[0]], r.std[pair[1]])
			sum -= over * over / (2 * std * std)
		}
	}
	return max(sum, -30) + r.habit
}

// parts says of which raw readings each feature is the signed sum, besides the
// glides, which are constants here.
var parts = [features][]struct {
	raw  int
	sign float64
}{
	signature.Evaporating:    {{rEvaporating, 1}},
	signature.Superheat:      {{rSuctionLine, 1}, {rEvaporating, -1}},
	signature.CondensingOver: {{rCondensing, 1}, {rOutdoor, -1}},
	signature.Subcooling:     {{rCondensing, 1}, {rLiquidLine, -1}},
	signature.DischargeOver:  {{rDischargeLine, 1}, {rCondensing, -1}},
	signature.Split:          {{rReturnDryBulb, 1}, {rSupplyDryBulb, -1}},
	signature.WetBulbSplit:   {{rReturnWetBulb, 1}, {rSupplyWetBulb, -1}},
	signature.CondenserRise:  {{rCondenserLeaving, 1}, {rOutdoor, -1}},
	signature.Airflow:        {{rAirflow, 1}},
	signature.Power:          {{rPower, 1}},
}

// air are the raw readings of the weather.
var air = [3]int{rOutdoor, rReturnWetBulb, rReturnDryBulb}

// observation is the features that were measured.
type observation struct {
	raw *readings
	conditions
	value vector
	have  [features]bool
	// noise is the covariance of value less the mean for the weather, by the
	// instruments alone.
	noise *matrix
	own   matrix
	n     int
	// meant is what machines of the kind read when sound, at that weather and fluid.
	at    signature.Point
	meant vector
}

// take fills the observation in.
func (o *observation) take(r *readings, sound *signature.Sound) {
	o.raw, o.value, o.n = r, vector{}, 0
	o.conditions = r.conditions()
	o.at = sound.At(o.weather, o.fluid)
	o.meant = sound.Mean(o.at)
	values := r.value
	values[rOutdoor] = o.weather.Outdoor
	values[rReturnWetBulb] = o.weather.ReturnWetBulb
	values[rReturnDryBulb] = o.weather.ReturnDryBulb
	for f := range parts {
		known := true
		for _, p := range parts[f] {
			o.value[f] += p.sign * values[p.raw]
			// A condition of the air may be filled in; what makes the feature
			// itself may not.
			known = known && (r.have[p.raw] || p.raw == rOutdoor || p.raw == rReturnDryBulb)
		}
		switch signature.Feature(f) {
		case signature.Superheat:
			o.value[f] -= r.evapGlide
		case signature.Subcooling:
			o.value[f] -= r.condGlide
		}
		o.have[f] = known
		if known {
			o.n++
		}
	}
	o.noise = &o.own
	r.noise(o.noise, &o.conditions, sound)
}

// conditions are the weather and the fluid as the table takes them, and the doubt of the air.
type conditions struct {
	weather signature.Weather
	fluid   signature.Fluid
	airStd  [3]float64
}

func (r *readings) conditions() (c conditions) {
	c.weather, c.airStd = r.air()
	c.fluid = r.fluid
	c.fluid.Glide = min(c.fluid.Glide, signature.MostGlide)
	return c
}

// inSameAir says that the conditions of both are the same.
func (r *readings) inSameAir(o *readings) bool {
	for _, raw := range air {
		if r.value[raw] != o.value[raw] || r.std[raw] != o.std[raw] || r.have[raw] != o.have[raw] {
			return false
		}
	}
	return r.fluid == o.fluid && r.thin == o.thin
}

// less is by how much the features by these readings are above those by others, of each less
// what sound machines read then; the air that was not read is filled in alike.
func (o *observation) less(r *readings, c *conditions, sound *signature.Sound) (v vector) {
	for f := range parts {
		for _, p := range parts[f] {
			v[f] += p.sign * (o.raw.value[p.raw] - r.value[p.raw])
		}
	}
	v[signature.Superheat] -= o.raw.evapGlide - r.evapGlide
	v[signature.Subcooling] -= o.raw.condGlide - r.condGlide
	if c != &o.conditions {
		for f, meant := range sound.Mean(sound.At(c.weather, c.fluid)) {
			v[f] += meant - o.meant[f]
		}
	}
	return v
}

// makes are the features that a raw reading is a part of.
var makes = func() (out [raws][]struct {
	feature int
	sign    float64
}) {
	for f := range parts {
		for _, p := range parts[f] {
			out[p.raw] = append(out[p.raw], struct {
				feature int
				sign    float64
			}{f, p.sign})
		}
	}
	return out
}()

// noise is that of the features less their mean, by the standard uncertainties of the raw
// readings.
func (r *readings) noise(noise *matrix, c *conditions, sound *signature.Sound) {
	// How the features follow the errors of the air, each in its standard deviation.
	var follow [features][3]float64
	for i, slopes := range sound.Slopes(c.weather, c.fluid) {
		for f := range follow {
			follow[f][i] = -slopes[f] * c.airStd[i]
		}
		for _, p := range makes[air[i]] {
			follow[p.feature][i] += p.sign * c.airStd[i]
		}
	}
	for a := range follow {
		for b := range a + 1 {
			x, y := &follow[a], &follow[b]
			both := x[0]*y[0] + x[1]*y[1] + x[2]*y[2]
			noise[a][b], noise[b][a] = both, both
		}
	}
	r.addNoise(noise, &[raws]float64{})
}

// addNoise adds that of the readings other than the air, less what it is by other standard
// uncertainties.
func (r *readings) addNoise(noise *matrix, less *[raws]float64) {
	for raw, all := range &makes {
		by := r.std[raw]*r.std[raw] - less[raw]*less[raw]
		if by == 0 || slices.Contains(air[:], raw) {
			continue
		}
		for _, p := range all {
			for _, q := range all {
				noise[p.feature][q.feature] += p.sign * q.sign * by
			}
		}
	}
}
