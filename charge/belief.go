package charge

import (
	"math"

	"github.com/satline/satline/quantity"
)

// belief is what is known of how a machine answers to charge: a set of weighted
// possibilities. Within it every value is turned so that it falls with added
// charge (a subcooling counts negative), in kelvin and kilograms.
type belief struct {
	nodes []node
	// curved says that the value falls the faster the lower it is.
	curved bool
}

// A node is one possibility: at zero net mass the value would be x0, held by no
// floor; near the usual target it falls by gain per kilogram; curvature says
// how much steeper it is near zero than far above.
type node struct {
	gain, curvature float64
	x               float64 // now, after the net mass of the last reading
	weight          float64
}

// The grid. Curvature is (slope at zero)/(slope at the top) − 1.
const (
	gainSteps   = 25
	startSteps  = 41
	hiddenSteps = 81
	gainReach   = 2.5 // standard deviations of the logarithm
)

var (
	curvatures = [...]float64{0, 1, 3}
	// top is a starved superheat: about the return air above the coil.
	top       = float64(quantity.FahrenheitDelta(45))
	reference = float64(quantity.FahrenheitDelta(12)) // a usual target, where the gain is counted
	// deepest is how far a flooded superheat or an empty liquid line may hide
	// behind its zero.
	deepest = float64(quantity.FahrenheitDelta(40))
	// unevenness is the part of a change by which a machine strays from its
	// own curve.
	unevenness = 0.1
)

func newBelief(d Dosing, whole, wholeDoubt float64) *belief {
	m := d.Target.Method
	b := &belief{curved: m == Superheat}
	prior := float64(gainOf(m)) * 100 / whole
	doubt := math.Hypot(math.Log(gainFactor.value), wholeDoubt)
	first, last := d.History[0], d.History[len(d.History)-1]
	spread := max(first.Value.Std, float64(finestField.value))

	from, to, steps := float64(first.Value.Value)-4*spread, float64(first.Value.Value)+4*spread, startSteps
	if hidden := max(coverage*spread, float64(wetLine.value)); float64(first.Value.Value) <= hidden {
		from, steps = -deepest, hiddenSteps
		to = max(to, spread)
	}
	curves := curvatures[:1]
	if b.curved {
		curves = curvatures[:]
	}
	best := math.Inf(-1)
	for i := range gainSteps {
		z := gainReach * (2*float64(i)/(gainSteps-1) - 1)
		for _, c := range curves {
			for k := range steps {
				value := from + (to-from)*float64(k)/float64(steps-1)
				n := node{gain: prior * math.Exp(doubt*z), curvature: c}
				x0 := m.falls() * value
				log := -z * z / 2
				for _, h := range d.History {
					shown := max(m.falls()*n.move(x0, float64(h.Net-first.Net)), 0)
					std := math.Hypot(max(h.Value.Std, float64(finestField.value)), unevenness*float64(h.Value.Value-first.Value.Value))
					// Below zero a reading says no more than zero does.
					r := (max(float64(h.Value.Value), 0) - shown) / std
					log -= r*r/2 + math.Log(std)
				}
				n.x = n.move(x0, float64(last.Net-first.Net))
				n.weight = log
				b.nodes = append(b.nodes, n)
				best = max(best, log)
			}
		}
	}
	b.normalize(best)
	return b
}

// normalize turns logarithms into weights that sum to 1, and drops what hardly
// counts.
func (b *belief) normalize(best float64) {
	const hardly = 1e-4
	sum := 0.0
	kept := b.nodes[:0]
	for _, n := range b.nodes {
		n.weight = math.Exp(n.weight - best)
		if n.weight > hardly {
			kept = append(kept, n)
			sum += n.weight
		}
	}
	for i := range kept {
		kept[i].weight /= sum
	}
	b.nodes = kept
}

// move returns where a value x goes when mass m is added:
//
//	dx/dm = −g·(1 + c·(1 − x/top)) / (1 + c·(1 − reference/top))
//
// solved in closed form.
func (n node) move(x, m float64) float64 {
	if n.curvature == 0 {
		return x - n.gain*m
	}
	unit := n.gain / (1 + n.curvature*(1-reference/top))
	flat := top * (1 + n.curvature) / n.curvature // where the slope would be zero
	x = min(x, 0.95*flat)
	return flat + (x-flat)*math.Exp(unit*n.curvature/top*m)
}

// slope is −dx/dm at x.
func (n node) slope(x float64) float64 {
	if n.curvature == 0 {
		return n.gain
	}
	return n.gain * (1 + n.curvature*(1-min(x, top)/top)) / (1 + n.curvature*(1-reference/top))
}

// past returns the probability that after adding m the value lies beyond edge,
// in the direction that sign moves it; the edge itself is uncertain.
func (b *belief) past(m, sign, edge, edgeStd float64) float64 {
	const far = 5 // standard deviations beyond which a normal tail is nothing
	p := 0.0
	for _, n := range b.nodes {
		beyond := sign * (edge - n.move(n.x, m))
		switch {
		case beyond > far*edgeStd:
			p += n.weight
		case beyond > -far*edgeStd:
			p += n.weight * normalBelow(beyond/edgeStd)
		}
	}
	return p
}

// after returns mean and standard deviation of the value after adding m.
func (b *belief) after(m float64) (mean, std float64) {
	return b.moments(func(n node) float64 { return n.move(n.x, m) })
}

// gain returns mean and standard deviation of the fall per kilogram at the
// present value.
func (b *belief) gain() (mean, std float64) {
	return b.moments(func(n node) float64 { return n.slope(n.x) })
}

func (b *belief) moments(of func(node) float64) (mean, std float64) {
	square := 0.0
	for _, n := range b.nodes {
		v := of(n)
		mean += n.weight * v
		square += n.weight * v * v
	}
	return mean, math.Sqrt(max(0, square-mean*mean))
}
