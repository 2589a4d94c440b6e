package charge

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Compressor is what is known of a running compressor. Fields that are not
// known stay nil.
type Compressor struct {
	// Superheat at the compressor, as measured.
	Superheat *quantity.Uncertain[quantity.TemperatureDelta]
	// LowestSuperheat is the low end of the band of a hunting superheat.
	LowestSuperheat *quantity.TemperatureDelta
	// Evaporating is the dew temperature at the suction pressure, Condensing
	// that at the discharge (or liquid) pressure.
	Evaporating, Condensing *quantity.Uncertain[quantity.Temperature]
	// DischargeLine is the pipe about 6 in (150 mm) from the compressor.
	DischargeLine *quantity.Uncertain[quantity.Temperature]
	// Outdoor is the air that the condenser gives its heat to.
	Outdoor *quantity.Uncertain[quantity.Temperature]
	// Suction and Discharge are absolute pressures; Atmosphere is that around
	// the machine, zero for the standard one.
	Suction, Discharge *quantity.Uncertain[quantity.Pressure]
	Atmosphere         quantity.Pressure
	// Current of the compressor alone, and RatedLoad, its rated-load current on
	// the label; zero where the label cannot be read.
	Current   *quantity.Uncertain[quantity.Current]
	RatedLoad quantity.Current
	// Heating says that the machine heats: its evaporator is outdoors, and may
	// be as cold as the weather makes it, with a ratio to match.
	Heating bool
}

// A Risk is a danger to the compressor.
type Risk struct {
	// Code is a stable name: "floodback".
	Code string `json:"code"`
	// Grave says to act now, or to stop the machine.
	Grave bool `json:"grave"`
	// Stops says to stop the machine before anything else.
	Stops bool `json:"stops,omitzero"`
	// Says is the danger with its figure and its limit, of a head also with how far over outdoors
	// it is: "danger.floodback". What it leads to stands in the catalog beside it, with the same
	// values: "danger.floodback.why".
	Says   fact.Fact   `json:"says"`
	Source fact.Source `json:"source"`
}

// A hazard is a rule about a compressor.
type hazard struct {
	code  string
	grave bool
	// stops says to stop the machine before anything else.
	stops bool
	// limit is what fact.Value holds; holds finds the figure that passed it.
	limit  any
	source fact.Source
	holds  func(*Compressor) (any, bool)
	// cooling limits the rule to a machine that cools.
	cooling bool
	// replaces names the milder hazard that need not be told beside this one.
	replaces string
	ofHead   bool
}

func (h *hazard) rule() Rule {
	return Rule{Code: h.code, Figure: bothSystems(h.limit), Source: h.source}
}

// Risks finds what endangers a compressor, gravest first. A limit counts as
// passed when the measured value passes it; a superheat counts as none when its
// uncertainty cannot tell it from none, and a current as too high when it can be
// told from the rated one. Values that cannot be readings, as those that are
// not numbers, are left out. The limits are general: those of the compressor's
// maker come first.
func Risks(c Compressor) []Risk {
	c = c.readable()
	var out []Risk
	dropped := map[string]bool{}
	for _, grave := range [2]bool{true, false} {
		for _, h := range hazards {
			if h.grave != grave || dropped[h.code] || h.cooling && c.Heating {
				continue
			}
			figure, holds := h.holds(&c)
			if !holds {
				continue
			}
			dropped[h.replaces] = true
			says := fact.New(
				fact.Code("danger."+h.code), fact.Value{Name: "figure", Of: figure},
				fact.Value{Name: "limit", Of: h.limit},
			)
			if over, far := c.overOutdoors(); far && h.ofHead {
				says = says.With(fact.Amount("over", over))
			}
			out = append(out, Risk{
				Code: h.code, Grave: h.grave, Stops: h.stops, Source: h.source, Says: says,
			})
		}
	}
	return out
}

// readable returns c without the values that cannot be readings.
func (c Compressor) readable() Compressor {
	c.Superheat = readable(c.Superheat)
	c.Evaporating, c.Condensing = readable(c.Evaporating), readable(c.Condensing)
	c.DischargeLine = readable(c.DischargeLine)
	c.Outdoor = readable(c.Outdoor)
	c.Suction, c.Discharge = readable(c.Suction), readable(c.Discharge)
	c.Current = readable(c.Current)
	if !canBeRead(float64(1 / c.RatedLoad)) {
		c.RatedLoad = 0
	}
	if c.LowestSuperheat != nil && !canBeRead(float64(*c.LowestSuperheat)) {
		c.LowestSuperheat = nil
	}
	if !(c.Atmosphere > 0) || !canBeRead(float64(c.Atmosphere)) {
		c.Atmosphere = quantity.StandardAtmosphere
	}
	return c
}

func readable[T quantity.Quantity](u *quantity.Uncertain[T]) *quantity.Uncertain[T] {
	if u == nil || !canBeRead(float64(u.Value)) || !canBeRead(u.Std) {
		return nil
	}
	return u
}

// canBeRead reports whether v is a number that an instrument may show, in the SI
// unit of whatever it measures.
func canBeRead(v float64) bool { return math.Abs(v) <= 1e9 }

// CompressionRatio returns the absolute discharge pressure over the absolute
// suction pressure, with its standard uncertainty. Gauge pressures do not do:
// their ratio means nothing. The error is a *RangeError.
func CompressionRatio(
	suction, discharge quantity.Uncertain[quantity.Pressure],
) (ratio, std float64, err error) {
	const most = quantity.Pressure(20e6)
	for _, c := range [2]struct {
		name  string
		value pressure
	}{{"absolute suction pressure", suction}, {"absolute discharge pressure", discharge}} {
		if !(c.value.Value > 0 && c.value.Value <= most) {
			return 0, 0, &RangeError{
				Quantity: c.name,
				Value:    c.value.Value,
				Min:      quantity.Pressure(0),
				Max:      most,
				Advice:   "add the atmosphere at the site to the gauge reading",
			}
		}
		if !(c.value.Std >= 0) || math.IsInf(c.value.Std, 0) {
			return 0, 0, &RangeError{
				Quantity: "standard uncertainty of the " + c.name,
				Value:    quantity.Pressure(c.value.Std),
				Min:      quantity.Pressure(0),
				Advice:   "give one standard deviation of the gauge",
			}
		}
	}
	ratio = float64(discharge.Value / suction.Value)
	std = ratio * math.Hypot(
		suction.Std/float64(suction.Value), discharge.Std/float64(discharge.Value),
	)
	if !canBeRead(ratio) || !canBeRead(std) {
		return 0, 0, &RangeError{
			Quantity: "absolute suction pressure",
			Value:    suction.Value,
			Min:      quantity.Pressure(1),
			Advice:   "so deep a vacuum has no compression ratio; is the machine running?",
		}
	}
	return ratio, std, nil
}

func currentAbove(limit quantity.Ratio) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.Current == nil || !(c.RatedLoad > 0) {
			return nil, false
		}
		surely := float64(c.Current.Value) - coverage*c.Current.Std
		return quantity.Ratio(c.Current.Value / c.RatedLoad),
			surely > float64(limit)*float64(c.RatedLoad)
	}
}

func ratioAbove(limit fact.Times) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.Suction == nil || c.Discharge == nil {
			return nil, false
		}
		ratio, _, err := CompressionRatio(*c.Suction, *c.Discharge)
		const told = 0.1 // a ratio that is told as the limit itself is not above it
		return fact.Times(ratio), err == nil && ratio >= float64(limit)+told/2
	}
}

// told is how near to a limit a temperature is told as the limit itself: it has not passed it.
const told = quantity.TemperatureDelta(0.05)

func dischargeAbove(limit quantity.Temperature) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.DischargeLine == nil {
			return nil, false
		}
		return c.DischargeLine.Value, c.DischargeLine.Value > limit.Add(told)
	}
}

// condensingFar: above the most that switches let it be, so far over the air that carries the
// heat off, or above a limit that a hot day alone does not bring a sound machine to.
func condensingFar(
	limit, most quantity.Temperature, over quantity.TemperatureDelta,
) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.Condensing == nil {
			return nil, false
		}
		at := c.Condensing.Value
		if c.Outdoor == nil {
			return at, at > limit.Add(told)
		}
		above := at.Sub(max(c.Outdoor.Value, heldAgainst))
		return at, above > over || at > limit.Add(told) && above > soundOver ||
			at > most.Add(told)
	}
}

// overOutdoors is how far condensing stands over the outdoor air, and whether that is farther
// than in sound machines.
func (c *Compressor) overOutdoors() (over quantity.TemperatureDelta, far bool) {
	if c.Condensing == nil || c.Outdoor == nil || c.Heating {
		return 0, false
	}
	over = c.Condensing.Value.Sub(c.Outdoor.Value)
	return over, over > soundOver
}

func evaporatingBelow(limit quantity.Temperature) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.Evaporating == nil {
			return nil, false
		}
		return c.Evaporating.Value, c.Evaporating.Value < limit.Add(-told)
	}
}

func superheatNone(c *Compressor) (any, bool) {
	if c.Superheat == nil {
		return nil, false
	}
	return *c.Superheat, Measurement{Method: Superheat, Value: *c.Superheat}.LiquidReturning()
}

func superheatBelow(limit quantity.TemperatureDelta) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.Superheat == nil {
			return nil, false
		}
		return *c.Superheat, c.Superheat.Value < limit-told
	}
}

// dipsToNone: the mean is vapor, and the low end of the swing is not.
func dipsToNone(c *Compressor) (any, bool) {
	if c.LowestSuperheat == nil {
		return nil, false
	}
	_, flooded := superheatNone(c)
	return *c.LowestSuperheat, !flooded && *c.LowestSuperheat <= wetLine.value
}

func dischargeSuperheatBelow(limit quantity.TemperatureDelta) func(*Compressor) (any, bool) {
	return func(c *Compressor) (any, bool) {
		if c.DischargeLine == nil || c.Condensing == nil {
			return nil, false
		}
		d := c.DischargeLine.Value.Sub(c.Condensing.Value)
		return d, d < limit-told
	}
}

func inVacuum(c *Compressor) (any, bool) {
	if c.Suction == nil {
		return nil, false
	}
	return c.Suction.Value, c.Suction.Value < c.Atmosphere
}
