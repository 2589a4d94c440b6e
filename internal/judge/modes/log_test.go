package modes_test

import (
	"math"
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// logOf reads the air behind a coil every so often, warm from each start for a length.
func logOf(
	every, over time.Duration, starts, lengths []time.Duration,
) (out []modes.Logged) {
	for at := time.Duration(0); at <= over; at += every {
		warm := quantity.Celsius(-20)
		for i, from := range starts {
			if at >= from && at < from+lengths[i] {
				warm = quantity.Celsius(5)
			}
		}
		out = append(out, modes.Logged{
			At: at, Supply: &quantity.Uncertain[quantity.Temperature]{Value: warm, Std: 0.3},
		})
	}
	return out
}

func isWarm(l *modes.Logged) (is, known bool) {
	return l.Supply != nil && l.Supply.Value > quantity.Celsius(0), l.Supply != nil
}

func TestDefrostsOf(t *testing.T) {
	const m = time.Minute
	starts := []time.Duration{30 * m, 210 * m, 390 * m}
	alike := []time.Duration{20 * m, 20 * m, 20 * m}
	for _, x := range []struct {
		name              string
		every, over       time.Duration
		starts, lengths   []time.Duration
		count             int // -1 where the log shows nothing
		longest, shortest time.Duration
		alike, known      bool
	}{
		{"by the clock", m, 480 * m, starts, alike, 3, 20 * m, 20 * m, true, true},
		{"by the coil", m, 480 * m, starts, []time.Duration{12 * m, 18 * m, 15 * m}, 3, 18 * m,
			12 * m, false, true},
		{"read too seldom for their lengths", 4 * m, 480 * m, starts, alike, 3, 20 * m, 20 * m,
			false, false},
		{"read too seldom", 10 * m, 480 * m, starts, alike, -1, 0, 0, false, false},
		{"too short", m, 50 * m, starts, alike, -1, 0, 0, false, false},
		{"none", m, 480 * m, nil, nil, 0, 0, 0, false, false},
		{"begun before the log", m, 100 * m, []time.Duration{-5 * m}, alike[:1], 1, 0, 0, false,
			false},
	} {
		d := modes.DefrostsOf(logOf(x.every, x.over, x.starts, x.lengths), isWarm)
		if d == nil {
			if x.count >= 0 {
				t.Errorf("%s: nothing is shown", x.name)
			}
			continue
		}
		same, known := d.Alike()
		if d.Count != x.count || d.Longest() != x.longest || d.Shortest() != x.shortest ||
			same != x.alike || known != x.known || d.Over != x.over {
			t.Errorf("%s: %+v, alike %v %v", x.name, *d, same, known)
		}
	}
}

func TestTrend(t *testing.T) {
	at := func(l *modes.Logged) *quantity.Uncertain[quantity.Temperature] { return l.Return }
	var log []modes.Logged
	for m := range 90 {
		log = append(log, modes.Logged{
			At: time.Duration(m) * time.Minute,
			Return: &quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Celsius(12 - 4*float64(m)/60), Std: 0.3,
			},
		})
	}
	if got, ok := modes.Trend(log, time.Hour, at); !ok || math.Abs(got+4) > 1e-6 {
		t.Errorf("%v K an hour, %v; it falls by 4", got, ok)
	}
	if _, ok := modes.Trend(log[:10], time.Hour, at); ok {
		t.Error("ten minutes tell a trend")
	}
	if _, ok := modes.Trend(nil, time.Hour, at); ok {
		t.Error("no log tells a trend")
	}
}

func TestLiquidDrops(t *testing.T) {
	read := func(c float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(c), Std: 0.3}
	}
	for _, x := range []struct {
		name         string
		from, to     *quantity.Uncertain[quantity.Temperature]
		drops, known bool
	}{
		{"a clear drop", read(35), read(28), true, true},
		{"none", read(35), read(34.5), false, true},
		{"warmer", read(35), read(37), false, true},
		{"neither", read(35), read(33), false, false},
		{"one clamp", read(35), nil, false, false},
	} {
		var c modes.Case
		c.LiquidLine, c.LiquidAtValve = x.from, x.to
		if drops, known := c.LiquidDrops(); drops != x.drops || known != x.known {
			t.Errorf("%s: %v, %v", x.name, drops, known)
		}
	}
}
