package charge

import (
	"testing"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

func at(v float64) *temperature { u := f(v).PlusMinus(df(0.6)); return &u }

func about(v float64) *delta { u := df(v).PlusMinus(df(1)); return &u }

// sound is a machine that nothing stands in the way of.
func sound(d refrigerant.Metering) Situation {
	return Situation{
		Metering: d, LabelSubcooling: true, LabelApproach: true,
		OutdoorDryBulb: at(82), ReturnDryBulb: at(75), ReturnWetBulb: at(63),
		Superheat: about(14), Subcooling: about(10),
		NominalCapacity: quantity.Tons(3), Running: 40 * time.Minute,
	}
}

func TestNothingStandsInTheWay(t *testing.T) {
	for _, d := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV,
		refrigerant.EXV} {
		m, obstacles := ChooseMethod(sound(d))
		if m != MethodFor(d) || len(obstacles) > 0 {
			t.Errorf("%v: %v, %+v", d, m, obstacles)
		}
	}
}

func TestObstacles(t *testing.T) {
	for code, c := range map[string]struct {
		metering refrigerant.Metering
		change   func(*Situation)
		forbids  bool
	}{
		"fluid-no-liquid-in-summer": {refrigerant.TXV,
			func(s *Situation) { s.Fluid = fluid(t, "R-744") }, true},
		"fluid-toxic-indoors": {refrigerant.TXV,
			func(s *Situation) { s.Fluid = fluid(t, "R-717") }, true},
		"fluid-in-vacuum": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.Fluid = fluid(t, "R-718") }, true},

		"heating": {refrigerant.TXV, func(s *Situation) { s.Heating = true }, true},
		"circuit-opened": {refrigerant.TXV,
			func(s *Situation) { s.SealedSystemOpened = true }, true},
		"coil-iced": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.CoilIced = true }, true},
		"panels-off": {refrigerant.TXV, func(s *Situation) { s.PanelsOff = true }, true},
		"run-short": {refrigerant.TXV,
			func(s *Situation) { s.Running = 6 * time.Minute }, true},
		"just-moved": {refrigerant.TXV,
			func(s *Situation) { s.SinceMove = 3 * time.Minute }, true},
		"coil-wet": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.CoilWet = true }, true},
		"condenser-fan-cycling": {refrigerant.TXV,
			func(s *Situation) { s.CondenserFanCycling = true }, true},
		"economizer-open": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.EconomizerOpen = true }, true},
		"doors-open": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.DoorsOpen = true }, true},
		"airflow-low": {refrigerant.FixedRestrictor, func(s *Situation) {
			a := quantity.CFM(700).PlusMinus(quantity.CFM(30))
			s.Airflow = &a
		}, true},
		"outdoor-cold": {refrigerant.TXV, func(s *Situation) { s.OutdoorDryBulb = at(48) },
			true},
		"return-cold": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.ReturnDryBulb = at(66) }, true},
		"outdoor-above-table": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.OutdoorDryBulb = at(118) }, true},
		"wet-bulb-below-table": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.ReturnWetBulb = at(48) }, true},
		"wet-bulb-above-table": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.ReturnWetBulb = at(78) }, true},
		"target-below-floor": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.OutdoorDryBulb, s.ReturnWetBulb = at(100), at(60) }, true},
		"target-near-floor": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.OutdoorDryBulb, s.ReturnWetBulb = at(95), at(63.8) }, false},
		"no-label-subcooling": {refrigerant.TXV, func(s *Situation) { s.LabelSubcooling = false },
			false},
		"restriction-pattern": {refrigerant.TXV, func(s *Situation) {
			s.Superheat,
				s.Subcooling = about(38), about(27)
		}, true},
		"valve-flooding": {refrigerant.EXV, func(s *Situation) { s.Superheat = about(0.5) },
			false},
		"filter-dirty": {refrigerant.FixedRestrictor,
			func(s *Situation) { s.FilterDirty = true }, false},
		"outdoor-coil-dirty": {refrigerant.TXV, func(s *Situation) { s.OutdoorCoilDirty = true },
			false},
	} {
		s := sound(c.metering)
		c.change(&s)
		obstacles := Obstacles(s, MethodFor(c.metering))
		if len(obstacles) != 1 || obstacles[0].Code != code || obstacles[0].Forbids != c.forbids {
			t.Errorf("%s: %+v", code, obstacles)
			continue
		}
		if o := obstacles[0]; o.Says.IsZero() || o.Source.Standing == 0 {
			t.Errorf("%s: %+v", code, o)
		}
	}
}

func TestChoosePassesOver(t *testing.T) {
	s := sound(refrigerant.FixedRestrictor)
	s.ReturnDryBulb = at(66)
	if m, why := ChooseMethod(s); m != Approach || !Forbidden(why) {
		t.Errorf("low load with an approach on the label: %v, %+v", m, why)
	}
	s.LabelApproach = false
	if m, _ := ChooseMethod(s); m != WeighIn {
		t.Errorf("low load without one: %v", m)
	}
	s = sound(refrigerant.TXV)
	s.OutdoorDryBulb = at(40)
	if m, why := ChooseMethod(s); m != WeighIn || why[0].Code != "outdoor-cold" {
		t.Errorf("a cold night: %v, %+v", m, why)
	}
	// The maker's approach outranks a general subcooling, not the maker's own.
	s = sound(refrigerant.TXV)
	s.LabelApproach = true
	if m, _ := ChooseMethod(s); m != Subcooling {
		t.Errorf("both on the label: %v", m)
	}
	s.LabelSubcooling = false
	if m, why := ChooseMethod(s); m != Approach || Forbidden(why) {
		t.Errorf("only an approach on the label: %v, %+v", m, why)
	}
	s.OutdoorDryBulb = nil
	if m, _ := ChooseMethod(s); m != Subcooling {
		t.Errorf("only an approach on the label, and no outdoor air: %v", m)
	}
	if m, _ := ChooseMethod(Situation{}); m != WeighIn {
		t.Errorf("nothing known: %v", m)
	}
}

// A label superheat needs no table.
func TestLabelSuperheatNeedsNoTable(t *testing.T) {
	s := sound(refrigerant.FixedRestrictor)
	s.LabelSuperheat = true
	s.OutdoorDryBulb, s.ReturnWetBulb = at(117), at(60)
	if o := Obstacles(s, Superheat); len(o) != 0 {
		t.Errorf("%+v", o)
	}
}

// The table and the list of obstacles agree about where there is a target.
func TestObstaclesAgreeWithTable(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := sound(refrigerant.FixedRestrictor)
		s.OutdoorDryBulb = at(rapid.Float64Range(30, 130).Draw(rt, "outdoor"))
		s.ReturnWetBulb = at(rapid.Float64Range(40, 85).Draw(rt, "wet bulb"))
		_, err := TableSuperheat(s.ReturnWetBulb.Value, s.OutdoorDryBulb.Value)
		if (err != nil) != Forbidden(Obstacles(s, Superheat)) {
			rt.Fatalf("%v, %+v", err, Obstacles(s, Superheat))
		}
	})
}
