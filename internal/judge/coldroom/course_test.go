package coldroom

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// freezer is a case of a freezer whose looks were not answered, found some way over what it is
// kept at.
func freezer(t *testing.T, over quantity.TemperatureDelta) *modes.Case {
	t.Helper()
	for i := range uint64(200) {
		c := caseOf(t, bench.Draw(rand.New(rand.NewPCG(19, i)), 1))
		if c.Room.Setpoint == nil || !c.Room.Usual(nil).Frozen || c.ReturnDryBulb == nil {
			continue
		}
		c.Answers = nil
		c.ReturnDryBulb.Value = c.Room.Setpoint.Add(over)
		return c
	}
	t.Fatal("no freezer")
	return nil
}

// logged is a log of the box and the air behind the coil, which is warm from each start for a
// length.
func logged(over, length time.Duration, fall float64, starts ...time.Duration) []modes.Logged {
	var out []modes.Logged
	read := func(t float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(t), Std: 0.3}
	}
	for at := time.Duration(0); at <= over; at += 2 * time.Minute {
		box := -18 + fall*(over-at).Hours()
		l := modes.Logged{At: at, Return: read(box), Supply: read(box - 3)}
		for _, from := range starts {
			if at >= from && at < from+length {
				l.Supply = read(4)
			}
		}
		out = append(out, l)
	}
	return out
}

// What a log shows of defrosts answers the looks that ask for it.
func TestLoggedDefrosts(t *testing.T) {
	const m = time.Minute
	often := []time.Duration{60 * m, 200 * m, 340 * m, 480 * m}
	c := freezer(t, 4)
	c.Log = logged(9*time.Hour, 40*m, 0, often...)
	k, err := evidenceOf(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, code := range []string{"cold-defrost-often", "cold-defrost-by-clock"} {
		if !k.answers[code] {
			t.Errorf("%s is not answered with a yes", code)
		}
	}
	many := believe(k).chance(defrostHeats)
	c.Log = nil
	if k, err = evidenceOf(c); err != nil {
		t.Fatal(err)
	}
	if few := believe(k).chance(defrostHeats); many < 3*few {
		t.Errorf("too many defrosts: %.3f without the log, %.3f with it", few, many)
	}
	c.Log = logged(15*time.Hour, 0, 0)
	none, err := evidenceOf(c)
	if err != nil {
		t.Fatal(err)
	}
	odds := func(p float64) float64 { return p / (1 - p) }
	without, with := believe(k).chance("cold-defrost"), believe(none).chance("cold-defrost")
	if odds(with) < 5*odds(without) {
		t.Errorf("no defrost at all: %.3f without the log, %.3f with it", without, with)
	}
}

// A box that falls is pulled down; one that stands warm has another reason.
func TestLoggedBox(t *testing.T) {
	c := freezer(t, 9)
	for _, x := range []struct {
		name  string
		fall  float64
		falls bool
	}{{"it falls", 4, true}, {"it stands", 0, false}} {
		c.Log = logged(2*time.Hour, 0, x.fall)
		k, err := evidenceOf(c)
		if err != nil {
			t.Fatal(err)
		}
		b := believe(k)
		if falls := b.chance(pullsDown) > b.chance("cold-door"); falls != x.falls ||
			k.course.falls() != x.falls {
			t.Errorf("%s: pulled down %.3f, door %.3f", x.name, b.chance(pullsDown),
				b.chance("cold-door"))
		}
		if wait, ok := k.course.rest(k); ok != x.falls ||
			ok && (wait < 2*time.Hour || wait > 3*time.Hour) {
			t.Errorf("%s: it is there in %v", x.name, wait)
		}
	}
}

func (b *belief) chance(code string) float64 {
	for i := range faults {
		if faults[i].code == code {
			return b.faults[i]
		}
	}
	return 0
}
