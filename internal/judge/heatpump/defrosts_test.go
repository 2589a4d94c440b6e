package heatpump

import (
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// heated is a log of the air indoors, cooled for a length at the end of every period.
func heated(over, period, length time.Duration) []modes.Logged {
	var out []modes.Logged
	read := func(t float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(t), Std: 0.3}
	}
	for at := time.Duration(0); at <= over; at += time.Minute {
		l := modes.Logged{At: at, Return: read(20), Supply: read(34)}
		if at%period >= period-length {
			l.Supply = read(14)
		}
		out = append(out, l)
	}
	return out
}

// The defrosts of a log are what was seen: often, long, or none in weather that frosts.
func TestLoggedDefrosts(t *testing.T) {
	const m = time.Minute
	outdoor := &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(-2), Std: 0.3}
	coil := &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(-10), Std: 0.3}
	for _, x := range []struct {
		name string
		log  []modes.Logged
		want map[string]bool // the fault that is seen, and whether
	}{
		{"often", heated(100*m, 18*m, 4*m),
			map[string]bool{"defrost-often": true, "defrost-long": false}},
		{"by the clock", heated(250*m, 60*m, 10*m),
			map[string]bool{"defrost-often": false, "defrost-long": true}},
		{"none", heated(4*60*m, 9999*m, 0), map[string]bool{"outdoor-ice": true}},
		{"no log", nil, map[string]bool{}},
	} {
		c := &modes.Case{Log: x.log}
		c.OutdoorDryBulb, c.EvaporatingDew = outdoor, coil
		got := map[string]bool{}
		for _, s := range logged(c) {
			for code := range s.of {
				got[code] = s.seen
			}
		}
		if len(got) != len(x.want) {
			t.Errorf("%s: %v", x.name, got)
		}
		for code, seen := range x.want {
			if s, ok := got[code]; !ok || s != seen {
				t.Errorf("%s: %v", x.name, got)
			}
		}
	}
}
