package charge

import (
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Situation is what is known of a machine while it is read: what decides
// whether a method has an answer at all. Fields that are not known stay zero; a
// reading is written new(quantity.Fahrenheit(82).PlusMinus(quantity.FahrenheitDelta(0.6))).
type Situation struct {
	Metering refrigerant.Metering
	// Fluid is the refrigerant, nil where it is not known. The methods are those of comfort
	// cooling: one that refrigerant.ComfortCooling refuses is judged by none of them.
	Fluid *refrigerant.Refrigerant
	// LabelSuperheat, LabelSubcooling and LabelApproach say that the unit's
	// own figure is known.
	LabelSuperheat, LabelSubcooling, LabelApproach bool

	OutdoorDryBulb *quantity.Uncertain[quantity.Temperature]
	ReturnDryBulb  *quantity.Uncertain[quantity.Temperature]
	ReturnWetBulb  *quantity.Uncertain[quantity.Temperature]

	Superheat  *quantity.Uncertain[quantity.TemperatureDelta]
	Subcooling *quantity.Uncertain[quantity.TemperatureDelta]

	Airflow         *quantity.Uncertain[quantity.VolumeFlow]
	NominalCapacity quantity.Power

	// Running is the time since the last start, SinceMove the time since
	// refrigerant was last added or recovered.
	Running, SinceMove time.Duration

	Heating             bool
	CoilWet             bool // outdoor coil wet from washing or rain
	PanelsOff           bool // panels or doors of the unit
	DoorsOpen           bool // doors and windows of the building
	EconomizerOpen      bool
	CondenserFanCycling bool
	CoilIced            bool
	FilterDirty         bool
	OutdoorCoilDirty    bool
	SealedSystemOpened  bool // the circuit was open to air and not evacuated since
}

// Obstacles finds what stands in the way of a method in a situation, and what
// to do instead, in the order in which to mend it. None means that nothing
// known forbids it. Values that cannot be readings, as those that are not
// numbers, are left out.
func Obstacles(s Situation, m Method) []Obstacle {
	s = s.readable()
	var out []Obstacle
	add := func(c *condition, measured any) {
		if c.forbids.has(m) || c.doubts.has(m) {
			out = append(out, c.obstacle(m, c.forbids.has(m), measured))
		}
	}
	offTable := s.offTable()
	for _, c := range conditions {
		switch {
		case offTable != nil && offTable.condition == c && c.holds == nil:
			add(c, offTable.measured)
		case c.holds != nil:
			if measured, yes := c.holds(&s); yes {
				add(c, measured)
			}
		}
	}
	return out
}

// readable returns s without the values that cannot be readings.
func (s Situation) readable() Situation {
	s.OutdoorDryBulb, s.Airflow = readable(s.OutdoorDryBulb), readable(s.Airflow)
	s.ReturnDryBulb, s.ReturnWetBulb = readable(s.ReturnDryBulb), readable(s.ReturnWetBulb)
	s.Superheat, s.Subcooling = readable(s.Superheat), readable(s.Subcooling)
	if !canBeRead(float64(s.NominalCapacity)) {
		s.NominalCapacity = 0
	}
	return s
}

// Forbidden reports whether any of the obstacles rules its method out.
func Forbidden(obstacles []Obstacle) bool {
	for _, o := range obstacles {
		if o.Forbids {
			return true
		}
	}
	return false
}

// ChooseMethod returns the method to judge the charge by: the one that shows it for
// the device, then the label's approach, then, where neither may be used now,
// WeighIn. On a valve the label's approach also comes before a subcooling that
// the label does not give, for the maker's figure outranks the general one. The
// obstacles are those of the first method, so that it is plain why it was passed
// over.
func ChooseMethod(s Situation) (Method, []Obstacle) {
	first := MethodFor(s.Metering)
	obstacles := Obstacles(s, first)
	if first == WeighIn {
		return first, obstacles
	}
	forbidden := Forbidden(obstacles)
	general := first == Subcooling && !s.LabelSubcooling && s.OutdoorDryBulb != nil
	if s.LabelApproach && (forbidden || general) && !Forbidden(Obstacles(s, Approach)) {
		return Approach, obstacles
	}
	if forbidden {
		return WeighIn, obstacles
	}
	return first, obstacles
}

// offTable returns why the table of target superheat has no target, nil where
// it has one, is not needed, or cannot be read.
func (s *Situation) offTable() *NotNowError {
	if s.LabelSuperheat || s.ReturnWetBulb == nil || s.OutdoorDryBulb == nil {
		return nil
	}
	_, err := TableSuperheat(s.ReturnWetBulb.Value, s.OutdoorDryBulb.Value)
	notNow, _ := err.(*NotNowError)
	return notNow
}

func targetWithinDoubtOfFloor(s *Situation) (any, bool) {
	if s.LabelSuperheat || s.ReturnWetBulb == nil || s.OutdoorDryBulb == nil {
		return nil, false
	}
	target, err := SuperheatTarget(nil, *s.ReturnWetBulb, *s.OutdoorDryBulb)
	if err != nil {
		return nil, false
	}
	low, _ := target.Value.Interval(1)
	return target.Value, low < targetFloor.value
}

// starvedBesideStackedLiquid: a high superheat alone is a low charge, and a
// high subcooling alone a high one. Both together are neither.
func starvedBesideStackedLiquid(s *Situation) (any, bool) {
	if s.Superheat == nil || s.Subcooling == nil {
		return nil, false
	}
	limit := starvedSuperheat.value
	if s.Metering.Fixed() && !s.LabelSuperheat && s.ReturnWetBulb != nil &&
		s.OutdoorDryBulb != nil {
		target, err := TableSuperheat(s.ReturnWetBulb.Value, s.OutdoorDryBulb.Value)
		if err == nil {
			limit = max(limit, target+superheatTolerance.value)
		}
	}
	starved := float64(s.Superheat.Value-limit) > coverage*s.Superheat.Std
	stacked := float64(s.Subcooling.Value-stackedSubcooling.value) > coverage*s.Subcooling.Std
	return s.Superheat.Value, starved && stacked
}

func measuredBelow(t *temperature, limit quantity.Temperature) (any, bool) {
	if t == nil {
		return nil, false
	}
	return t.Value, t.Value < limit
}

// shorter says that a time that is known has not come to a limit. It is told in the minutes that
// are full: 14 min 20 s is not 15 min yet.
func shorter(d time.Duration, limit figure[time.Duration]) (any, bool) {
	told := d
	if d > time.Minute {
		told = d.Truncate(time.Minute)
	}
	return told, d > 0 && d < limit.value
}

func flag(set func(*Situation) bool) func(*Situation) (any, bool) {
	return func(s *Situation) (any, bool) { return nil, set(s) }
}
