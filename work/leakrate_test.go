package work_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/work"
	"pgregory.net/rapid"
)

func day(n int) time.Time { return time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, n) }

// The steps of both methods, each worked by hand from the text of the definition.
func TestLeakRateBySteps(t *testing.T) {
	definition := verify.Source{Cite: "40 CFR 82.152, leak rate, steps 1 to 4",
		Kind: verify.Published}
	example := verify.Source{
		Cite: "10 lb into 100 lb after 180 days, as training on EPA section 608 works it",
		Kind: verify.Published,
	}
	pounds := quantity.Pounds
	for _, c := range []struct {
		name      string
		source    verify.Source
		full      quantity.Mass
		additions []work.Addition
		method    work.LeakMethod
		want      float64 // per cent
	}{
		{"annualized over 180 days", example, pounds(100), []work.Addition{
			{On: day(0), Mass: pounds(5)}, {On: day(180), Mass: pounds(10)},
		}, work.Annualizing, 20.277778},
		{"no longer than a year is counted", definition, pounds(100), []work.Addition{
			{On: day(0), Mass: pounds(5)}, {On: day(500), Mass: pounds(10)},
		}, work.Annualizing, 10},
		{"the first addition counts as of a year", definition, pounds(200), []work.Addition{
			{On: day(40), Mass: pounds(30)},
		}, work.Annualizing, 15},
		{"those of a day are one", definition, pounds(100), []work.Addition{
			{On: day(0), Mass: pounds(1)}, {On: day(73), Mass: pounds(2)},
			{On: day(73).Add(3 * time.Hour), Mass: pounds(2)},
		}, work.Annualizing, 20},
		{"rolling over a year", definition, pounds(100), []work.Addition{
			{On: day(0), Mass: pounds(50)}, {On: day(100), Mass: pounds(4)},
			{On: day(300), Mass: pounds(6)}, {On: day(400), Mass: pounds(5)},
		}, work.RollingAverage, 15},
		{"rolling since the repair", definition, pounds(100), []work.Addition{
			{On: day(0), Mass: pounds(20), Repaired: true}, {On: day(100), Mass: pounds(4)},
			{On: day(200), Mass: pounds(3)},
		}, work.RollingAverage, 7},
		{"nothing added", definition, pounds(100), nil, work.Annualizing, 0},
	} {
		rate, err := work.LeakRate(c.full, c.additions, c.method)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		verify.Value(t, c.source, c.name, "%", c.want, float64(rate)*100, 1e-5)
	}
}

func TestLeakRateRefuses(t *testing.T) {
	good := []work.Addition{{On: day(0), Mass: 1}}
	for name, f := range map[string]func() (quantity.Ratio, error){
		"no charge": func() (quantity.Ratio, error) {
			return work.LeakRate(0, good,
				work.Annualizing)
		},
		"no method": func() (quantity.Ratio, error) { return work.LeakRate(1, good, 0) },
		"negative mass": func() (quantity.Ratio, error) {
			return work.LeakRate(1,
				[]work.Addition{{Mass: -1}}, work.Annualizing)
		},
		"not a number": func() (quantity.Ratio, error) {
			return work.LeakRate(quantity.Mass(math.NaN()), good, work.Annualizing)
		},
		"out of sequence": func() (quantity.Ratio, error) {
			return work.LeakRate(1, []work.Addition{{On: day(3)}, {On: day(1)}}, work.Annualizing)
		},
	} {
		rate, err := f()
		if _, ok := errors.AsType[*quantity.RangeError](err); !ok || rate != 0 {
			t.Errorf("%s: %v, %v", name, rate, err)
		}
	}
}

// More refrigerant is a higher rate, a larger machine a lower one, and the rolling average never
// falls by an addition.
func TestLeakRateMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		full := quantity.Mass(rapid.Float64Range(1, 500).Draw(t, "full"))
		var list []work.Addition
		at := 0
		for range rapid.IntRange(1, 6).Draw(t, "count") {
			at += rapid.IntRange(1, 200).Draw(t, "days")
			list = append(list, work.Addition{On: day(at),
				Mass: quantity.Mass(rapid.Float64Range(0.1, 20).Draw(t, "mass"))})
		}
		for _, m := range []work.LeakMethod{work.Annualizing, work.RollingAverage} {
			rate, err := work.LeakRate(full, list, m)
			if err != nil || !(rate > 0) || math.IsInf(float64(rate), 0) {
				t.Fatal(rate, err)
			}
			more := append([]work.Addition(nil), list...)
			more[len(more)-1].Mass *= 2
			if higher, _ := work.LeakRate(full, more, m); higher <= rate {
				t.Fatalf("%v: twice as much gives %v after %v", m, higher, rate)
			}
			if lower, _ := work.LeakRate(full*2, list, m); lower >= rate {
				t.Fatalf("%v: a machine twice the size gives %v after %v", m, lower, rate)
			}
		}
	})
}

// Which rule applies, by refrigerant, size, use and day.
func TestWhichLeakRule(t *testing.T) {
	for _, c := range []struct {
		name    string
		fluid   string
		full    float64 // lb
		use     work.Use
		on      time.Time
		applies bool
		limit   quantity.Ratio
	}{
		{"HCFC from 50 lb", "R-22", 50, work.ComfortCooling, day(10), true, 0.10},
		{"HCFC below 50 lb", "R-22", 49, work.ComfortCooling, day(10), false, 0.10},
		{"HFC from 15 lb", "R-410A", 15, work.ComfortCooling, day(10), true, 0.10},
		{"HFC below 15 lb", "R-410A", 14, work.ComfortCooling, day(10), false, 0.10},
		{"HFC before 2026", "R-410A", 100, work.ComfortCooling, day(-10), false, 0.10},
		{"HFC, light comfort cooling", "R-410A", 20, work.LightComfortCooling, day(10), false,
			0.10},
		{"commercial refrigeration", "R-448A", 200, work.CommercialRefrigeration, day(10), true,
			0.20},
		{"industrial process", "R-22", 200, work.IndustrialProcess, day(10), true, 0.30},
		{"propane", "R-290", 60, work.CommercialRefrigeration, day(10), false, 0.20},
		{"carbon dioxide", "R-744", 300, work.CommercialRefrigeration, day(10), false, 0.20},
		{"use not stated", "R-134a", 80, 0, day(10), true, 0.10},
	} {
		m := work.Machine{Equipment: satline.Equipment{Refrigerant: c.fluid}, Use: c.use}
		v, err := work.JudgeLeak(m, quantity.Pounds(c.full),
			[]work.Addition{{On: c.on, Mass: quantity.Pounds(1)}}, work.Annualizing)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if v.Applies != c.applies || v.Threshold != c.limit {
			t.Errorf("%s: applies %v at %v, want %v at %v", c.name, v.Applies, v.Threshold,
				c.applies, c.limit)
		}
	}
}

// At the threshold itself nothing is over it; 125 % in a calendar year is reported.
func TestLeakThreshold(t *testing.T) {
	m := work.Machine{Equipment: satline.Equipment{Refrigerant: "R-410A"}}
	for _, c := range []struct {
		mass          float64
		over, chronic bool
	}{{10, false, false}, {10.1, true, false}, {124.9, true, false}, {125, true, true}} {
		v, err := work.JudgeLeak(m, quantity.Pounds(100),
			[]work.Addition{{On: day(10), Mass: quantity.Pounds(c.mass)}}, work.RollingAverage)
		if err != nil || v.Over != c.over || v.Chronic != c.chronic {
			t.Errorf("%v lb: over %v, chronic %v, %v", c.mass, v.Over, v.Chronic, err)
		}
	}
}
