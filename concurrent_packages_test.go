package satline_test

import (
	"bytes"
	"errors"
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
	"github.com/satline/satline/refrigerant/diagram"
	"github.com/satline/satline/report"
)

// Each package, used from many goroutines at once on values they share, answers all
// of them alike. The race detector watches in CI.
func TestConcurrentUseOfEachPackage(t *testing.T) {
	r, err := refrigerant.Lookup("R-454B")
	if err != nil {
		t.Fatal(err)
	}
	blend, err := refrigerant.NewBlend(
		"half and half",
		[]refrigerant.Component{
			{Designation: "R-32", MassFraction: 0.5}, {Designation: "R-134a", MassFraction: 0.5},
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	machine, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := diagram.New(r, diagram.Options{})
	if err != nil {
		t.Fatal(err)
	}
	air, err := chart.New(chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	coil, err := airside.RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	fan, err := airside.NewFanCurve([]airside.FanPoint{
		{
			Flow:   quantity.CFM(1400),
			Static: quantity.InchesWater(0.3),
		}, {Flow: quantity.CFM(1000), Static: quantity.InchesWater(0.8)},
	})
	if err != nil {
		t.Fatal(err)
	}
	log := make([]charge.Sample[quantity.TemperatureDelta], 60)
	for i := range log {
		log[i] = charge.Sample[quantity.TemperatureDelta]{
			At:    time.Duration(i) * 15 * time.Second,
			Value: quantity.FahrenheitDelta(12 + float64(i%3)/10),
		}
	}
	text := func(v any, err error) string { return fmt.Sprint(v, err) }

	for name, ask := range map[string]func() string{
		"quantity": func() string { return text(quantity.ParseGaugePressure("118 psig")) },
		"refrigerant": func() string {
			s, err := blend.StateAtEnthalpy(quantity.PSIA(200), quantity.KilojoulesPerKilogram(300))
			leak, err2 := r.Leak(refrigerant.LeakCase{Temperature: quantity.Celsius(25),
				From: refrigerant.Vapor, Lost: []float64{0.2}})
			return fmt.Sprint(s, err, leak[0].Pressure, err2)
		},
		"psychro": func() string {
			a, err := psychro.RealGas.FromWetBulb(quantity.Fahrenheit(80), quantity.Fahrenheit(67),
				quantity.StandardAtmosphere)
			p, err2 := psychro.IAPWS.Pressure(quantity.Celsius(20))
			return fmt.Sprint(a, a.Enthalpy(), err, p, err2)
		},
		"charge": func() string {
			course, err := charge.SteadinessOf(log, quantity.FahrenheitDelta(1))
			target, err2 := charge.SmoothSuperheat(quantity.Fahrenheit(64), quantity.Fahrenheit(85))
			return fmt.Sprint(course, target, errors.Join(err, err2), len(charge.Rules()))
		},
		"airside": func() string {
			p, err := coil.Through(airside.StandardAir(), quantity.CFM(1200),
				quantity.Fahrenheit(45))
			met, err2 := fan.Meets(airside.FanPoint{Flow: quantity.CFM(1200),
				Static: quantity.InchesWater(0.5)})
			return fmt.Sprint(p.Split, p.Surface, met, errors.Join(err, err2))
		},
		"cycle": func() string {
			o, err := machine.WithHeadPressure(quantity.Fahrenheit(90)).
				Solve(cycle.RatingConditions(), cycle.Faults{Charge: -0.1})
			return fmt.Sprint(o, err)
		},
		"diagram": func() string {
			var b bytes.Buffer
			return fmt.Sprint(picture.SVG(&b, diagram.Phone()), b.Len(), picture.Describe())
		},
		"chart": func() string {
			var b bytes.Buffer
			return fmt.Sprint(air.SVG(&b, chart.Phone()), b.Len(), air.Describe())
		},
		"satline": func() string {
			a, err := satline.Assess(satline.Visit{
				Scope: satline.VerdictOnly,
				Equipment: satline.Equipment{Refrigerant: "R-407C", Metering: satline.TXV,
					NominalCapacity: quantity.Tons(3)},
				Readings: satline.Readings{
					SuctionPressure: satline.Measured(quantity.PSIG(66)),
					LiquidPressure:  satline.Measured(quantity.PSIG(250)),
					SuctionLine:     satline.Measured(quantity.Fahrenheit(55)),
					LiquidLine:      satline.Measured(quantity.Fahrenheit(100)),
				},
			})
			var b bytes.Buffer
			return fmt.Sprint(a, err, report.HTML(&b, a, report.Owner), b.String())
		},
	} {
		const many = 6
		var answers [many]string
		var work sync.WaitGroup
		for i := range many {
			work.Go(func() { answers[i] = ask() })
		}
		work.Wait()
		for _, a := range answers {
			if a != answers[0] {
				t.Errorf("%s answered otherwise:\n%s\n%s", name, answers[0], a)
			}
		}
	}
}
