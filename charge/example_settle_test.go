package charge_test

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// A superheat that swings between 6 and 14 °F has a mean to judge by.
func ExampleSteadinessOf() {
	var log []charge.Sample[quantity.TemperatureDelta]
	for i := range 120 {
		t := 5 * float64(i)
		log = append(log, charge.Sample[quantity.TemperatureDelta]{
			At:    time.Duration(t) * time.Second,
			Value: quantity.FahrenheitDelta(10 + 4*math.Sin(2*math.Pi*t/100)),
		})
	}
	s, err := charge.SteadinessOf(log, quantity.FahrenheitDelta(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v every %.0f s about %s, from %s to %s\n", s.State, s.Period.Seconds(),
		s.Value.Value.Format(quantity.IP), s.Low.Format(quantity.IP), s.High.Format(quantity.IP))
	// Output: hunting every 100 s about 10.0 °F, from 6.1 °F to 13.9 °F
}

// After a move the superheat falls on its way to a value that can be seen.
func ExampleSteadiness_WaitAfter() {
	var log []charge.Sample[quantity.TemperatureDelta]
	for i := range 60 {
		t := 8 * float64(i)
		noise := 0.1 * math.Sin(float64(i*i)) // stands for the scatter of an instrument
		log = append(log, charge.Sample[quantity.TemperatureDelta]{
			At:    time.Duration(t) * time.Second,
			Value: quantity.FahrenheitDelta(12 + 18*math.Exp(-t/240) + noise),
		})
	}
	s, _ := charge.SteadinessOf(log, quantity.FahrenheitDelta(1))
	fmt.Printf(
		"%.0f °F now, %v towards some %.0f °F, in about %.0f min\n", s.Value.Value.Fahrenheit(),
		s.State, s.Estimate.Value.Fahrenheit(), s.Wait.Minutes(),
	)
	fmt.Printf(
		"after the next 10 °F wait %.0f min\n", s.WaitAfter(quantity.FahrenheitDelta(10)).Minutes(),
	)
	// Output:
	// 15 °F now, settling towards some 12 °F, in about 7 min
	// after the next 10 °F wait 15 min
}

// A log that is still on its way is not to be charged by.
func ExampleSteadiness_Steady() {
	var log []charge.Sample[quantity.TemperatureDelta]
	for i := range 40 {
		t := 15 * float64(i)
		log = append(log, charge.Sample[quantity.TemperatureDelta]{
			At:    time.Duration(t) * time.Second,
			Value: quantity.FahrenheitDelta(12 + 10*math.Exp(-t/400)),
		})
	}
	s, err := charge.SteadinessOf(log, quantity.FahrenheitDelta(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.State, s.Steady(), s.Wait.Round(time.Minute))
	// Output: settling false 6m0s
}
