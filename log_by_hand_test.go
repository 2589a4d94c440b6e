package satline

import (
	"testing"
	"time"

	"github.com/satline/satline/quantity"
)

// Invented: a log by hand, every few minutes, of a machine that stands still or does not; what is
// judged without a log is judged with a few entries that agree.
func TestLogsByHand(t *testing.T) {
	read := func(liquid float64) Readings {
		return Readings{
			SuctionPressure: Measured(quantity.PSIG(118)),
			LiquidPressure:  Measured(quantity.PSIG(340)),
			SuctionLine:     Measured(quantity.Fahrenheit(52)),
			LiquidLine:      Measured(quantity.Fahrenheit(liquid)),
			OutdoorDryBulb:  Measured(quantity.Fahrenheit(90)),
		}
	}
	type entry struct {
		at     time.Duration
		liquid float64
	}
	const minute = time.Minute
	for _, c := range []struct {
		name   string
		moved  time.Duration // zero for not at all
		log    []entry
		judged bool
	}{
		{"none", 0, nil, true},
		{"one", 0, []entry{{0, 95}}, true},
		{"two that agree", 0, []entry{{0, 95}, {2 * minute, 95.4}}, true},
		{"two that differ", 0, []entry{{0, 92}, {2 * minute, 95}}, false},
		{"still at last", 0, []entry{{0, 92}, {3 * minute, 95}, {8 * minute, 95.2}}, true},
		{"still for too short", 0, []entry{{0, 92}, {3 * minute, 95}, {6 * minute, 95.2}}, false},
		{"a stream that began", 0, []entry{{0, 95}, {10 * time.Second, 95}}, false},
		{"soon after a move", minute, []entry{{0, 95}, {9 * minute, 95}}, false},
		{"long after a move", minute, []entry{{0, 95}, {17 * minute, 93}}, true},
		{"and on the way", minute, []entry{{0, 95}, {17 * minute, 93}, {19 * minute, 95}}, false},
	} {
		v := Visit{
			Equipment: Equipment{Refrigerant: "R-410A", Metering: TXV}, Readings: read(95),
		}
		for _, e := range c.log {
			v.Log = append(v.Log, LogEntry{At: e.at, Readings: read(e.liquid)})
			v.Readings = read(e.liquid)
		}
		if c.moved > 0 {
			v.Moves = []Move{{At: c.moved, Added: quantity.Ounces(4)}}
		}
		a, err := Assess(v)
		if err != nil {
			t.Fatal(err)
		}
		if judged := a.Charge.Outcome != ChargeNotJudged; judged != c.judged {
			t.Errorf("%s: judged is %v: %s", c.name, judged, a.Headline.Text)
		}
	}
}
