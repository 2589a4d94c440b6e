package satline

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
)

// A workedVisit is a visit that somebody works through to its end, who does what the plan says and
// no more.
type workedVisit struct {
	kind, name string // what is wrong
	visit      *Visit
	done       *tasks
	// ready reads the machine anew where that is due; false where it does not run any more. Nil
	// where act does.
	ready func() (bool, error)
	// act takes the first step of a plan that tells something or changes something; false where
	// there is none, and the visit has ended.
	act func(*Assessment) bool
	// right reports whether nothing is wrong any more.
	right       func() bool
	chargeError func() float64
}

// tasks are what was done, and what of it was for nothing.
type tasks struct {
	looks, readings, doses, mends int
	// inVain are mends of what was not there, needless the circuits that were opened for it.
	inVain, needless int
	// wrongWay are doses that make a charge worse which is a tenth off.
	wrongWay int
}

func (t *tasks) add(o *tasks) {
	t.looks, t.readings = t.looks+o.looks, t.readings+o.readings
	t.doses, t.mends = t.doses+o.doses, t.mends+o.mends
	t.inVain, t.needless, t.wrongWay = t.inVain+o.inVain, t.needless+o.needless, t.wrongWay+o.wrongWay
}

// run works a visit through; false where it comes to no end.
func (v *workedVisit) run(t *testing.T) bool {
	for range 40 {
		if v.ready != nil {
			if runs, err := v.ready(); err != nil {
				t.Fatal(err)
			} else if !runs {
				return true
			}
		}
		a, err := Assess(*v.visit)
		if err != nil || !v.act(&a) {
			return true // readings that cannot be are an error of the visit
		}
	}
	return false
}

// visits is how many are worked through.
type visits struct{ short, usual, full int }

// ends is what visits came to, by what was wrong.
type ends map[string]*ended

type ended struct {
	visits, right int
	// worse were in band and are not, or had their circuit opened in vain.
	worse int
	tasks
}

func workThrough(
	t *testing.T, of visits, begin func(i int, rng *rand.Rand) workedVisit,
) (ends, int) {
	n := of.usual
	switch {
	case os.Getenv("SATLINE_TRIAL") == "full":
		n = of.full
	case testing.Short():
		n = of.short
	}
	out := ends{}
	for i := range n {
		v := begin(i, rand.New(rand.NewPCG(81, uint64(i))))
		begun := v.chargeError()
		if !v.run(t) {
			t.Errorf("visit %d, %s, does not end", i, v.name)
		}
		g := out[v.kind]
		if g == nil {
			g = &ended{}
			out[v.kind] = g
		}
		right := v.right()
		if g.visits++; right {
			g.right++
		}
		left, band := v.chargeError(), diagnose.ChargeBand
		if v.done.needless > 0 || math.Abs(begun) <= band && math.Abs(left) > band {
			g.worse++
		}
		g.add(v.done)
		t.Logf("visit %d, %s, %+.1f %%: right %v, %+.1f %%, %+v",
			i, v.name, 100*begun, right, 100*left, *v.done)
	}
	for kind, g := range out {
		t.Logf("%s: %d of %d right, %d worse; %+v", kind, g.right, g.visits, g.worse, g.tasks)
	}
	return out, n
}

// all is what was done in all of them.
func (e ends) all() (sum tasks) {
	for _, g := range e {
		sum.add(&g.tasks)
	}
	return sum
}

// hold wants a share of a kind right in the end, within three standard deviations of the sample.
func (e ends) hold(t *testing.T, kind string, p float64) {
	g := e[kind]
	if g == nil {
		return
	}
	n := float64(g.visits)
	if float64(g.right) < n*p-3*math.Sqrt(n*p*(1-p)) {
		t.Errorf("%s: %d of %d end right", kind, g.right, g.visits)
	}
}

// writeDown is what a look found, in place of what it found before.
func writeDown(v *Visit, look string, found bool) {
	v.Checks = slices.DeleteFunc(v.Checks, func(c Check) bool { return c.Look == look })
	v.Checks = append(v.Checks, Check{Look: look, Found: found})
}
