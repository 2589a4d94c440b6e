package testbench

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// saturated is saturated moist air at one atmosphere, tabulated from package psychro, since
// a wet coil asks for it some hundred times.
type saturated struct {
	enthalpy, ratio [saturatedPoints]float64
}

const (
	saturatedFrom   = 233.15
	saturatedStep   = 0.5
	saturatedPoints = 241
)

func newSaturated(p quantity.Pressure) (*saturated, error) {
	s := &saturated{}
	for i := range s.enthalpy {
		a, err := psychro.Saturated(quantity.Temperature(saturatedFrom+saturatedStep*float64(i)), p)
		if err != nil {
			return nil, err
		}
		s.enthalpy[i], s.ratio[i] = float64(a.Enthalpy()), a.HumidityRatio()
	}
	return s, nil
}

func (s *saturated) at(t float64) (enthalpy, ratio float64) {
	u := min(max((t-saturatedFrom)/saturatedStep, 0), saturatedPoints-1.001)
	i := int(u)
	u -= float64(i)
	mix := func(a, b float64) float64 { return a + u*(b-a) }
	return mix(s.enthalpy[i], s.enthalpy[i+1]), mix(s.ratio[i], s.ratio[i+1])
}

// temperature at which saturated air has an enthalpy.
func (s *saturated) temperature(h float64) float64 {
	low, high := 0, saturatedPoints-1
	for high-low > 1 {
		if m := (low + high) / 2; s.enthalpy[m] <= h {
			low = m
		} else {
			high = m
		}
	}
	u := (h - s.enthalpy[low]) / (s.enthalpy[high] - s.enthalpy[low])
	return saturatedFrom + saturatedStep*(float64(low)+u)
}

// A draft is the air that enters a coil.
type draft struct {
	flow        float64 // kg/s of dry air
	t, h, w, cp float64 // K, J/kg, kg/kg, J/(kg K), per kilogram of dry air
	// wetBulb is that of adiabatic saturation, about: where saturated air has its enthalpy.
	wetBulb   float64
	saturated *saturated
}

func newDraft(a psychro.Air, volume float64, s *saturated) draft {
	t := float64(a.DryBulb())
	warmer, err := psychro.FromHumidityRatio(a.DryBulb()+1, a.HumidityRatio(), a.Pressure())
	cp := 1006.0
	if err == nil {
		cp = float64(warmer.Enthalpy() - a.Enthalpy())
	}
	return draft{
		flow: volume / float64(a.SpecificVolume()),
		t:    t, h: float64(a.Enthalpy()), w: a.HumidityRatio(),
		cp: cp, wetBulb: s.temperature(float64(a.Enthalpy())), saturated: s,
	}
}

// dry is the heat in W that the air gives to a surface at t all over the coil, through ua in
// W/K.
func (d *draft) dry(t, ua float64) float64 {
	c := d.flow * d.cp
	return c * (1 - math.Exp(-ua/c)) * (d.t - t)
}

// rows a coil is divided into along the air: the front ones may be dry while water runs down
// those behind.
const rows = 3

// through takes the air through all rows of a coil whose refrigerant is at t, and returns the
// heat in W and the air that leaves. outer and inner are the conductances from the air to the
// surface and on to the refrigerant. Each row is dry or wet, whichever gives more heat; that
// is true within 5 %: Braun, Klein and Mitchell 1989, ASHRAE Transactions 95(2),
// "Effectiveness models for cooling towers and cooling coils".
func (d *draft) through(t, outer, inner float64) (heat, leavingH, leavingW float64) {
	at := *d
	outer, inner = outer/rows, inner/rows
	ua := 1 / (1/inner + 1/outer)
	for range rows {
		q := at.dry(t, ua)
		h, w := at.h-q/at.flow, at.w
		if qw, hw, ww := at.wet(t, outer, inner); qw > q {
			q, h, w = qw, hw, ww
		}
		heat += q
		// The warmth left once the water that fell out is allowed for: moist air holds
		// 2501 kJ per kg of water at 0 °C and 1.86 kJ/K above.
		at.t = 273.15 + (h-2.501e6*w)/(1006+1860*w)
		at.h, at.w, at.wetBulb = h, w, at.saturated.temperature(h)
	}
	return heat, at.h, at.w
}

// wet is the heat with water condensing all over a coil, and the air that leaves, by the
// difference of enthalpies: Threlkeld's method in the form of Braun, Klein and Mitchell.
func (d *draft) wet(t, outer, inner float64) (heat, leavingH, leavingW float64) {
	hs, _ := d.saturated.at(t)
	if hs >= d.h || t >= d.wetBulb-1e-6 {
		return 0, d.h, d.w
	}
	// The slope is that of saturated air between refrigerant and surface, which is about
	// half way to the wet bulb.
	half := (d.wetBulb - t) / 2
	middle, _ := d.saturated.at(t + half)
	slope := (middle - hs) / half
	reach := 1 - math.Exp(-outer/(d.flow*d.cp))
	ua := 1 / (slope/inner + d.cp/outer)
	heat = d.flow * (1 - math.Exp(-ua/d.flow)) * (d.h - hs)
	leavingH = d.h - heat/d.flow
	surface := d.saturated.temperature(d.h - (d.h-leavingH)/reach)
	_, ws := d.saturated.at(surface)
	leavingW = min(d.w, d.w+(ws-d.w)*reach)
	return heat, leavingH, leavingW
}
