package charge_test

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// A gauge sends a superheat every second, and the screen says at any moment what to
// make of it.
func ExampleWatch() {
	w, err := charge.NewWatch(quantity.FahrenheitDelta(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range 25 * 60 {
		at := time.Duration(i) * time.Second
		superheat := 12 + 10*math.Exp(-at.Minutes()/4)
		if err := w.Take(charge.Sample[quantity.TemperatureDelta]{At: at,
			Value: quantity.FahrenheitDelta(superheat)}); err != nil {
			fmt.Println(err)
			return
		}
		if i%480 == 479 {
			s := w.Steadiness()
			fmt.Printf(
				"%v: %s, %v\n", at.Round(time.Minute), s.Value.Value.Format(quantity.IP), s.State,
			)
		}
	}
	fmt.Println(len(w.Log()), "readings kept")
	// Output:
	// 8m0s: 13.5 °F, settling
	// 16m0s: 12.5 °F, settled
	// 24m0s: 12.2 °F, settled
	// 150 readings kept
}

// The suction pressure over the stretch that the superheat is taken from.
func ExampleMeanOver() {
	var superheat []charge.Sample[quantity.TemperatureDelta]
	var suction []charge.Sample[quantity.GaugePressure]
	for i := range 80 {
		at := time.Duration(i) * 10 * time.Second
		away := math.Exp(-at.Minutes() / 1.5)
		superheat = append(
			superheat,
			charge.Sample[quantity.TemperatureDelta]{
				At:    at,
				Value: quantity.FahrenheitDelta(10 + 15*away),
			},
		)
		suction = append(
			suction,
			charge.Sample[quantity.GaugePressure]{At: at, Value: quantity.PSIG(118 - 6*away)},
		)
	}
	s, err := charge.SteadinessOf(superheat, quantity.FahrenheitDelta(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	mean, still, _ := charge.MeanOver(suction, s.From, s.To, quantity.PSIG(2))
	fmt.Printf(
		"%v over the last %.0f min: %s, standing still %v\n", s.State, (s.To - s.From).Minutes(),
		mean.Value.Format(quantity.IP), still,
	)
	// Output: settled over the last 9 min: 117.9 psig, standing still true
}

// A valve was turned: what was read before says nothing of what comes.
func ExampleWatch_Restart() {
	w, err := charge.NewWatch(quantity.FahrenheitDelta(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	take := func(from int, superheat float64) {
		for i := range 25 * 6 {
			at := time.Duration(from+10*i) * time.Second
			s := charge.Sample[quantity.TemperatureDelta]{At: at,
				Value: quantity.FahrenheitDelta(superheat)}
			if err := w.Take(s); err != nil {
				fmt.Println(err)
			}
		}
	}
	take(0, 18)
	fmt.Println(w.Steadiness().State)
	w.Restart()
	fmt.Println(len(w.Log()))
	take(0, 12)
	fmt.Println(w.Steadiness().State, w.Steadiness().Value.Value.Format(quantity.IP))
	// Output:
	// settled
	// 0
	// settled 12.0 °F
}
