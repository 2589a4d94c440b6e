package airside

import (
	"slices"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// FreezeLimits says what would bring the coil of a machine to 32 °F, each change
// by itself. A limit that is not reached within reason is nil.
type FreezeLimits struct {
	// Now is where the machine runs; Freezes says that its coil is below 32 °F
	// there already, and the limits are then where it stops freezing.
	Now     Running `json:"now"`
	Freezes bool    `json:"freezes"`
	// ReturnDryBulb at the same relative humidity: what a lower set-point does.
	ReturnDryBulb *quantity.Temperature `json:"returnDryBulb,omitzero"`
	// ReturnWetBulb at the same dry bulb: drier air.
	ReturnWetBulb *quantity.Temperature `json:"returnWetBulb,omitzero"`
	// Outdoor is the outdoor dry bulb: a cool night.
	Outdoor *quantity.Temperature `json:"outdoor,omitzero"`
	Airflow *quantity.VolumeFlow  `json:"airflow,omitzero"`
}

// A FreezeChange is one of the changes that FindFreezeLimits looks at.
type FreezeChange int

// The changes, each with the limit that is looked for.
const (
	FreezeByReturn  FreezeChange = iota + 1 // ReturnDryBulb
	FreezeByWetBulb                         // ReturnWetBulb
	FreezeByOutdoor                         // Outdoor
	FreezeByAirflow                         // Airflow
)

// FindFreezeLimits returns at which return temperature, return wet bulb, outdoor
// temperature and airflow the coldest surface of a plant is at 32 °F, with all
// else as at the condition given; where changes are named, only for those. The
// error is a *RangeError, or the plant's own.
func FindFreezeLimits(
	plant Plant, at Conditions, changes ...FreezeChange,
) (FreezeLimits, error) {
	if err := checkPlant(plant, at); err != nil {
		return FreezeLimits{}, err
	}
	now, err := plant.Run(at)
	if err != nil {
		return FreezeLimits{}, err
	}
	l := FreezeLimits{Now: now, Freezes: now.Surface < Freezing}
	s := freezeSearch{plant: plant, at: at, now: now}
	s.line, s.isLine = plant.(CapacityLine)
	asked := func(c FreezeChange) bool { return len(changes) == 0 || slices.Contains(changes, c) }
	if asked(FreezeByReturn) {
		l.ReturnDryBulb = found[quantity.Temperature](s.byReturn())
	}
	if asked(FreezeByWetBulb) {
		l.ReturnWetBulb = found[quantity.Temperature](s.byWetBulb())
	}
	if asked(FreezeByOutdoor) {
		l.Outdoor = found[quantity.Temperature](s.byOutdoor())
	}
	if asked(FreezeByAirflow) {
		l.Airflow = found[quantity.VolumeFlow](s.byAirflow())
	}
	return l, nil
}

func found[Q ~float64](v float64, ok bool) *Q {
	if !ok {
		return nil
	}
	return new(Q(v))
}

// A freezeSearch looks for limits of a plant around a condition that it runs in.
type freezeSearch struct {
	plant  Plant
	line   CapacityLine // the plant, where isLine
	isLine bool
	at     Conditions
	now    Running
}

func (s *freezeSearch) byReturn() (float64, bool) {
	a := s.at.Return
	rh := a.RelativeHumidity()
	return s.crossing(float64(a.DryBulb()), 283.15, 313.15, func(x float64) (Conditions, error) {
		var err error
		c := s.at
		c.Return, err = a.Model().FromRelativeHumidity(quantity.Temperature(x), rh, a.Pressure())
		return c, err
	})
}

func (s *freezeSearch) byWetBulb() (float64, bool) {
	a := s.at.Return
	dry, err := a.Model().FromHumidityRatio(a.DryBulb(), 0, a.Pressure())
	if err != nil {
		return 0, false
	}
	// Where the coil turns dry its surface may turn too, so a line is looked through as well.
	wet, driest := float64(a.WetBulb()), float64(dry.WetBulb())
	return s.look(wet, driest, float64(a.DryBulb()), func(x float64) (Conditions, error) {
		var err error
		c := s.at
		c.Return, err = a.Model().
			FromWetBulb(a.DryBulb(), quantity.Temperature(x), a.Pressure())
		return c, err
	})
}

func (s *freezeSearch) byOutdoor() (float64, bool) {
	const coolest, hottest = 255.15, 318.15
	outdoor := float64(s.at.Outdoor)
	if s.isLine {
		t, ok := s.line.outdoorAt(s.at, s.now)
		if s.now.Surface < Freezing {
			return t, ok && t >= outdoor && t <= hottest
		}
		return t, ok && t <= outdoor && t >= coolest
	}
	return s.look(outdoor, coolest, hottest, func(x float64) (Conditions, error) {
		c := s.at
		c.Outdoor = quantity.Temperature(x)
		return c, nil
	})
}

func (s *freezeSearch) byAirflow() (float64, bool) {
	const least, most = 0.15, 2 // of the flow there is
	flow := float64(s.at.Airflow)
	return s.crossing(flow, least*flow, most*flow, func(x float64) (Conditions, error) {
		c := s.at
		c.Airflow = quantity.VolumeFlow(x)
		return c, nil
	})
}

// end is how far is looked: down to low, or up to high where the coil freezes already.
func (s *freezeSearch) end(low, high float64) float64 {
	if s.now.Surface < Freezing {
		return high
	}
	return low
}

// look goes from x, where the plant runs now, to the end for the nearest place at which its
// coldest surface passes 32 °F. Where the plant has no answer the search ends.
func (s *freezeSearch) look(
	x, low, high float64, at func(float64) (Conditions, error),
) (float64, bool) {
	end, freezes := s.end(low, high), s.now.Surface < Freezing
	margin := func(v float64) (float64, bool) {
		c, err := at(v)
		if err != nil {
			return 0, false
		}
		r, err := s.plant.Run(c)
		return float64(r.Surface - Freezing), err == nil
	}
	const steps, tolerance = 8, 1e-5
	last, lastMargin, ok := x, float64(s.now.Surface-Freezing), true
	for i := 1; ok && i <= steps; i++ {
		v := x + (end-x)*float64(i)/steps
		var m float64
		if m, ok = margin(v); !ok {
			// The plant gives out before: look half as far, once.
			v = (last + v) / 2
			m, ok = margin(v)
		}
		if ok && m < 0 != freezes {
			broken := false
			at := root.Find(func(v float64) float64 {
				m, ok := margin(v)
				broken = broken || !ok
				return m
			}, last, v, lastMargin, m, 0, tolerance)
			return at, !broken
		}
		last, lastMargin = v, m
	}
	return 0, false
}
