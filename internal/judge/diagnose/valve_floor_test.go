package diagnose

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/refrigerant"
)

// A valve that lets the superheat go overfeeds, whatever else the readings would bear; and no
// tenth of a degree turns the belief over.
func TestValveFloor(t *testing.T) {
	table := signature.For(deviceOf(refrigerant.TXV))
	sound := table.Sound.Mean(table.Sound.At(signature.Rated, signature.UsualFluid))
	chance := func(m refrigerant.Metering, superheat float64) float64 {
		v := sound
		v[signature.Superheat] = superheat / 1.8
		v[signature.Split] -= 2.5 / 1.8 // as where the air carries more than it should
		v[signature.Evaporating] += 3 / 1.8
		e := reads(signature.Rated, v)
		e.Metering = m
		d := Infer(e)
		return d.Probability(Overfeed)
	}
	if p := chance(refrigerant.TXV, 1); p < 0.5 {
		t.Errorf("at 1 °F a valve overfeeds with %.2f", p)
	}
	if p := chance(refrigerant.TXV, 9); p > 0.1 {
		t.Errorf("at 9 °F a valve overfeeds with %.2f", p)
	}
	// A controller may aim lower than a spring, and not at liquid.
	if p, q := chance(refrigerant.EXV, 2), chance(refrigerant.TXV, 2); p > q/2 {
		t.Errorf("at 2 °F an electronic valve overfeeds with %.2f, a thermostatic one with %.2f", p, q)
	}
	if p := chance(refrigerant.EXV, -3); p < 0.5 {
		t.Errorf("at -3 °F an electronic valve overfeeds with %.2f", p)
	}
	last := chance(refrigerant.TXV, 0)
	for superheat := 0.1; superheat < 9; superheat += 0.1 {
		now := chance(refrigerant.TXV, superheat)
		if math.Abs(now-last) > 0.06 {
			t.Errorf("from %.2f to %.2f at %.1f °F", last, now, superheat)
		}
		last = now
	}
}
