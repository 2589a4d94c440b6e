package heatpump

import (
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A look has the chance of a yes on any machine, and where a fault or a cause is present.
// Chances are common practice, no source.
type look struct {
	code    string
	minutes float64
	running bool
	usual   float64
	of      map[string]float64
	fits    func(*modes.Case) bool
}

// chance of a yes where an atom is so: of two causes, either brings it about.
func (l *look) chance(a *atom) float64 {
	no := 1.0
	a.each(func(p part) { no *= 1 - l.byPart(p) })
	if a.beside.cause != nil {
		no = min(max(no/(1-l.usual), 0.002), 0.998)
	}
	return 1 - no
}

// byPart is the chance of a yes where one part of an atom is so.
func (l *look) byPart(p part) float64 {
	if chance, ok := l.of[p.fault.code]; ok {
		return chance
	}
	if chance, ok := l.of[p.cause.code]; ok {
		return chance
	}
	return l.usual
}

func frosting(c *modes.Case) bool {
	return c.OutdoorDryBulb == nil || c.OutdoorDryBulb.Value < warmestFrost
}

// warmestFrost is where an outdoor coil in heating stops taking on frost: common practice.
var warmestFrost = quantity.Fahrenheit(45)

var looks = []look{
	{code: "outdoor-ice", minutes: 1, running: true, usual: 0.04, fits: frosting,
		of: map[string]float64{
			"outdoor-ice": 0.97, undercharge: 0.15, nextToEmpty: 0.3, "outdoor-fan": 0.4,
			"defrost-often": 0.02,
		}},
	{code: "outdoor-coil", minutes: 4, usual: 0.1, of: map[string]float64{
		"outdoor-dirt": 0.93, "outdoor-fan": 0.9, "outdoor-ice": 0.3,
	}},
	{code: "defrost-test", minutes: 12, running: true, usual: 0.05, fits: frosting,
		of: map[string]float64{
			"outdoor-ice": 0.85, "defrost-often": 0.6, "defrost-long": 0.85,
		}},
	{code: "strips-current", minutes: 4, running: true, usual: 0.04,
		of: map[string]float64{"strips-on": 0.97}},
	{code: "reversing-valve", minutes: 4, running: true, usual: 0.04, of: map[string]float64{
		"reversing-valve-leak": 0.93, "reversing-valve-midway": 0.95,
	}},
	{code: "pressures-at-stop", minutes: 6, running: true, usual: 0.06, of: map[string]float64{
		"compressor-valves": 0.8, "reversing-valve-leak": 0.7, notPumping: 0.9,
	}},
	{code: "liquid-line-drop", minutes: 6, running: true, usual: 0.04, of: map[string]float64{
		"liquid-line-restriction": 0.9, "check-valve-stuck": 0.85, undercharge: 0.07,
	}},
	{code: "check-valves", minutes: 5, running: true, usual: 0.05, of: map[string]float64{
		"check-valve-leaking": 0.85, "outdoor-device-large": 0.1,
	}},
	{code: "valve-bulb", minutes: 6, running: true, usual: 0.06, fits: func(c *modes.Case) bool {
		return c.Metering == refrigerant.TXV
	}, of: map[string]float64{"outdoor-device-starving": 0.6, "outdoor-device-large": 0.6}},
	{code: "indoor-air-path", minutes: 6, usual: 0.1, of: map[string]float64{
		"filter": 0.97, "indoor-coil": 0.85, "ducts": 0.85, "blower": 0.55,
	}},
	{code: "static-pressure", minutes: 8, running: true, usual: 0.15,
		fits: func(c *modes.Case) bool { return c.ExternalStatic == nil },
		of:   map[string]float64{"filter": 0.75, "ducts": 0.9, "indoor-coil": 0.4, "blower": 0.03}},
	{code: "suction-port", minutes: 1, usual: 0.01, of: map[string]float64{suctionPort: 0.98}},
	{code: "suction-clamp-second", minutes: 3, running: true, usual: 0.04,
		of: map[string]float64{"suction-clamp": 0.95}},
	{code: "liquid-clamp-second", minutes: 3, running: true, usual: 0.04,
		of: map[string]float64{"liquid-clamp": 0.95}},
	{code: "discharge-clamp-second", minutes: 3, running: true, usual: 0.04,
		of: map[string]float64{dischargeClamp: 0.95}},
	{code: "gauge-zero", minutes: 6, usual: 0.03, of: map[string]float64{
		"suction-gauge-zero": 0.95, "liquid-gauge-zero": 0.95,
	}},
	{code: "supply-second", minutes: 3, running: true, usual: 0.06,
		of: map[string]float64{"supply-sensor": 0.95}},
	{code: "refrigerant-label", minutes: 2, usual: 0.001,
		of: map[string]float64{otherFluid: 0.995}},
	{code: "standing-pressure", minutes: 25, usual: 0.03,
		of: map[string]float64{"non-condensables": 0.95}},
	{code: "oil-and-leak", minutes: 15, usual: 0.06,
		of: map[string]float64{undercharge: 0.65, nextToEmpty: 0.9}},
}

// Looks lists what a technician can be asked to look at or try.
func Looks() []diagnose.Look {
	out := make([]diagnose.Look, len(looks))
	for i := range looks {
		out[i] = diagnose.Look{Code: looks[i].code, Running: looks[i].running}
	}
	return out
}

// answered says that a look was taken.
func answered(c *modes.Case, code string) bool {
	for _, a := range c.Answers {
		if a.Code == code {
			return true
		}
	}
	return code == "outdoor-ice" && c.Seen.CoilIced
}

// sights are what catches the eye without being asked for; a complaint says something only
// where it is that one.
func sights(c *modes.Case) []sight {
	s := &c.Seen
	out := []sight{
		{s.CoilIced, 0.02, map[string]float64{"outdoor-ice": 0.8, undercharge: 0.1,
			nextToEmpty: 0.2, "outdoor-fan": 0.3}},
		{s.FilterDirty, 0.07, map[string]float64{"filter": 0.6}},
		{s.OutdoorCoilDirty, 0.07, map[string]float64{"outdoor-dirt": 0.55}},
		{s.ChargeWeighed && c.Moved == 0, 0.002, map[string]float64{undercharge: 1e-4, overcharge: 1e-4,
			nextToEmpty: 1e-5, "non-condensables": 1e-4}},
		{s.OilStains, 0.03, map[string]float64{undercharge: 0.3, nextToEmpty: 0.4}},
	}
	if d, t := c.DischargeLine, c.CondensingBubble; d != nil && t != nil &&
		d.Value.Sub(t.Value) < coolDischarge {
		out = append(out, sight{true, 0.03, liquidCools})
	}
	out = append(out, logged(c)...)
	if of, ok := complaints[c.Complaint]; ok {
		out = append(out, sight{true, complaintsUsual, of})
	}
	return out
}

// complaints by what makes them, with the chance that a customer has that one.
var complaints = map[string]map[string]float64{
	"high bill": {strips: 0.7, defrost: 0.7, undercharge: 0.2, outdoorAir: 0.2,
		"reversing-valve": 0.2},
	"frozen coil": {"outdoor-ice": 0.7, "outdoor-fan": 0.4, "defrost-long": 0.2, undercharge: 0.2,
		nextToEmpty: 0.2},
}

// liquidCools are what sends liquid through a compressor that is cool; one that leaks within
// compresses part of its gas again and is hot.
var liquidCools = map[string]float64{
	"overfeed": 0.2, overcharge: 0.1, notPumping: 0.2, sound: 0.03, "vapor-leak": 0.01,
	"reversing-valve": 0.01,
}

const complaintsUsual = 0.08

type sight struct {
	seen  bool
	usual float64
	of    map[string]float64
}
