package live

import (
	"cmp"
	"math"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Charts are what the page draws, in the units of the visit; nil where the
// readings do not give one.
type Charts struct {
	Air   *AirChart  `json:"air,omitempty"`
	Cycle *CycleView `json:"cycle,omitempty"`
}

// A Trend is superheat or subcooling over the log.
type Trend struct {
	Method string       `json:"method"`
	Of     string       `json:"of"` // the method in words
	Unit   string       `json:"unit"`
	Points [][2]float64 `json:"points"` // minutes, value
	Moves  []TrendMove  `json:"moves"`
	Band   *Band        `json:"band,omitempty"`
	// Settled is where it comes to rest, as far as can be told.
	Settled *float64 `json:"settled,omitempty"`
	Text    string   `json:"text,omitempty"`
}

// A TrendMove is refrigerant moved during the log.
type TrendMove struct {
	Minutes float64 `json:"minutes"`
	Text    string  `json:"text"`
}

// An AirChart is a psychrometric chart: humidity ratio over dry bulb.
type AirChart struct {
	XUnit string `json:"xUnit"`
	YUnit string `json:"yUnit"`
	// Lines of constant relative humidity, saturation last.
	Lines  []Line  `json:"lines"`
	Points []Point `json:"points"`
}

// A CycleView is a pressure-enthalpy diagram.
type CycleView struct {
	XUnit string `json:"xUnit"`
	YUnit string `json:"yUnit"`
	// Lines are the saturation dome.
	Lines []Line `json:"lines"`
	// Points in the order of flow. Their line is closed.
	Points []Point `json:"points"`
	// Ideal says that the discharge was not measured and is that of a perfect
	// compressor.
	Ideal bool `json:"ideal,omitempty"`
}

// A Line is a curve with its name.
type Line struct {
	Name   string       `json:"name"`
	Points [][2]float64 `json:"points"`
}

// A Point is a state with its name.
type Point struct {
	Name string  `json:"name"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	Text string  `json:"text"`
}

func charts(v satline.Visit, a satline.Assessment, fluid *refrigerant.Refrigerant) *Charts {
	atm, now := a.Atmosphere.Pressure.Value, latest(v)
	return &Charts{airChart(now, atm, v.Units), cycleView(now, fluid, atm, v.Units)}
}

// latest is the last of the log with what only the readings have.
func latest(v satline.Visit) satline.Readings {
	r := v.Readings
	if len(v.Log) == 0 {
		return r
	}
	l := v.Log[len(v.Log)-1].Readings
	take(&r.SuctionPressure, l.SuctionPressure)
	take(&r.LiquidPressure, l.LiquidPressure)
	take(&r.SuctionLine, l.SuctionLine)
	take(&r.LiquidLine, l.LiquidLine)
	take(&r.DischargeLine, l.DischargeLine)
	take(&r.ReturnDryBulb, l.ReturnDryBulb)
	take(&r.ReturnWetBulb, l.ReturnWetBulb)
	take(&r.SupplyDryBulb, l.SupplyDryBulb)
	take(&r.SupplyWetBulb, l.SupplyWetBulb)
	return r
}

func take[T quantity.Quantity](to *satline.Reading[T], from satline.Reading[T]) {
	if from.Taken() {
		*to = from
	}
}

func trend(v satline.Visit, a satline.Assessment, fluid *refrigerant.Refrigerant,
	atm quantity.Pressure) *Trend {
	method := methodOf(v)
	degrees := quantity.UnitOf[quantity.TemperatureDelta](v.Units)
	out := &Trend{
		Method: method.String(), Of: satline.Word("method."+method.String(), v.Language),
		Unit: degrees.Symbol(), Points: [][2]float64{}, Moves: []TrendMove{},
	}
	for _, e := range v.Log {
		if d, ok := at(method, e.Readings, fluid, atm); ok {
			out.Points = append(out.Points, [2]float64{e.At.Minutes(), degrees.Number(d)})
		}
	}
	if len(out.Points) == 0 {
		return nil
	}
	for _, m := range v.Moves {
		text := "+" + m.Added.Format(v.Units)
		if m.Recovered > 0 {
			text = "−" + m.Recovered.Format(v.Units)
		}
		out.Moves = append(out.Moves, TrendMove{m.At.Minutes(), text})
	}
	if s := a.Steadiness; s != nil {
		out.Text = s.Says.Text
		if s.Course.Steady() {
			out.Settled = new(degrees.Number(s.Course.Value.Value))
		}
	}
	return out
}

func at(method charge.Method, r satline.Readings, fluid *refrigerant.Refrigerant,
	atm quantity.Pressure) (quantity.TemperatureDelta, bool) {
	var d quantity.TemperatureDelta
	var err error
	low, suction := r.SuctionPressure.Get(), r.SuctionLine.Get()
	high, liquid := r.LiquidPressure.Get(), r.LiquidLine.Get()
	switch {
	case method == charge.Superheat && low != nil && suction != nil:
		d, err = fluid.Superheat(low.Value.Absolute(atm), suction.Value)
	case method == charge.Subcooling && high != nil && liquid != nil:
		d, err = fluid.Subcooling(high.Value.Absolute(atm), liquid.Value)
	default:
		return 0, false
	}
	return d, err == nil
}

func airChart(r satline.Readings, atm quantity.Pressure, sys quantity.System) *AirChart {
	degrees := quantity.UnitOf[quantity.Temperature](sys)
	out := &AirChart{XUnit: degrees.Symbol(), YUnit: "gr/lb"}
	moisture := 7000.0 // grains in a pound
	if sys == quantity.SI {
		out.YUnit, moisture = "g/kg", 1000
	}
	place := func(a psychro.Air) (x, y float64) {
		return degrees.Number(a.DryBulb()), moisture * a.HumidityRatio()
	}
	add := func(name string, dry, wet *quantity.Uncertain[quantity.Temperature]) {
		if dry == nil || wet == nil {
			return
		}
		if a, err := psychro.FromWetBulb(dry.Value, wet.Value, atm); err == nil {
			x, y := place(a)
			out.Points = append(out.Points, Point{name, x, y,
				dry.Value.Format(sys) + " dry, " + wet.Value.Format(sys) + " wet"})
		}
	}
	add("return", r.ReturnDryBulb.Get(), r.ReturnWetBulb.Get())
	add("supply", r.SupplyDryBulb.Get(), r.SupplyWetBulb.Get())
	if len(out.Points) == 0 {
		return nil
	}
	for _, c := range []struct {
		name string
		rh   float64
	}{{"20 %", 0.2}, {"40 %", 0.4}, {"60 %", 0.6}, {"80 %", 0.8}, {"100 %", 1}} {
		l := Line{Name: c.name}
		for t := 2.0; t <= 36; t += 2 {
			if a, err := psychro.FromRelativeHumidity(quantity.Celsius(t), c.rh, atm); err == nil {
				x, y := place(a)
				l.Points = append(l.Points, [2]float64{x, y})
			}
		}
		out.Lines = append(out.Lines, l)
	}
	return out
}

func cycleView(r satline.Readings, fluid *refrigerant.Refrigerant, atm quantity.Pressure,
	sys quantity.System) *CycleView {
	low, high := r.SuctionPressure.Get(), cmp.Or(r.LiquidPressure.Get(), r.DischargePressure.Get())
	suctionLine, liquidLine := r.SuctionLine.Get(), r.LiquidLine.Get()
	if low == nil || high == nil || suctionLine == nil || liquidLine == nil {
		return nil
	}
	coil, up := low.Value.Absolute(atm), high.Value.Absolute(atm)
	suction, err := stateBeside(fluid, coil, suctionLine.Value)
	if err != nil {
		return nil
	}
	liquid, err := stateBeside(fluid, up, liquidLine.Value)
	if err != nil {
		return nil
	}
	enthalpy := quantity.UnitOf[quantity.SpecificEnthalpy](sys)
	pressure := quantity.UnitOf[quantity.Pressure](sys)
	hot := r.DischargeLine.Get()
	out := &CycleView{XUnit: enthalpy.Symbol(), YUnit: pressure.Symbol(), Ideal: hot == nil}
	discharge, err := fluid.StateAtEntropy(up, suction.Entropy)
	if hot != nil {
		discharge, err = fluid.State(up, hot.Value)
	}
	if err != nil {
		return nil
	}
	inlet, err := fluid.StateAtEnthalpy(coil, liquid.Enthalpy)
	if err != nil {
		return nil
	}
	place := func(h quantity.SpecificEnthalpy, p quantity.Pressure) [2]float64 {
		return [2]float64{enthalpy.Number(h), pressure.Number(p)}
	}
	name := "discharge"
	if out.Ideal {
		name = "discharge, ideal"
	}
	for _, s := range []struct {
		name  string
		state refrigerant.State
	}{{"suction", suction}, {name, discharge}, {"liquid", liquid}, {"coil inlet", inlet}} {
		at := place(s.state.Enthalpy, s.state.Pressure)
		out.Points = append(out.Points, Point{s.name, at[0], at[1],
			s.state.Temperature.Format(sys) + ", " + s.state.Pressure.Format(sys)})
	}
	out.Lines = dome(fluid, min(coil, inlet.Pressure), place)
	return out
}

// stateBeside takes a reading on the wrong side of saturation as saturated: the
// doubt about it is the assessment's to tell.
func stateBeside(fluid *refrigerant.Refrigerant, p quantity.Pressure,
	t quantity.Temperature) (refrigerant.State, error) {
	s, err := fluid.State(p, t)
	if err == nil {
		return s, nil
	}
	return fluid.StateAtQuality(p, 1)
}

// dome is the saturated liquid and the saturated vapor from below a pressure to
// near the critical point.
func dome(fluid *refrigerant.Refrigerant, from quantity.Pressure,
	place func(quantity.SpecificEnthalpy, quantity.Pressure) [2]float64) []Line {
	low, err := fluid.DewTemperature(from * 0.7)
	if err != nil {
		return nil
	}
	high := fluid.Critical().Temperature
	liquid, vapor := Line{Name: "bubble"}, Line{Name: "dew"}
	const steps = 30
	for i := range steps + 1 {
		// Closer together towards the critical point, where the dome bends.
		share := math.Sin(float64(i) / steps * math.Pi / 2)
		t := low + quantity.Temperature(share)*(high-0.3-low)
		if h, err := fluid.BubbleEnthalpy(t); err == nil {
			if p, err := fluid.BubblePressure(t); err == nil {
				liquid.Points = append(liquid.Points, place(h, p))
			}
		}
		if h, err := fluid.DewEnthalpy(t); err == nil {
			if p, err := fluid.DewPressure(t); err == nil {
				vapor.Points = append(vapor.Points, place(h, p))
			}
		}
	}
	return []Line{liquid, vapor}
}
