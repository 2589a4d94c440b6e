package coldroom

import (
	"math"

	"github.com/satline/satline/internal/judge/coldroom/signature"
)

// A cluster is a cause at one size in machines of a kind, as what they would read where the
// visit is.
type cluster struct {
	kind        signature.Kind
	cause, size int
	// share of the kind's machines, one size of the cause as likely as the others.
	share  float64
	mean   signature.Vector
	spread signature.Matrix
	// warms says that it costs capacity, so that the box gets the warmer the longer it lasts.
	warms bool
}

// Signatures are of boxes up to warmest over what they are kept at, K. Every kelvin beyond adds
// farDoubt to the standard deviation of what the warmth of the box moves: how wide a valve opens is
// the maker's choice (common practice, no source).
const warmest, farDoubt = 10.0, 0.3

// far says that the box is further over what it is kept at.
func (k *known) far() bool { return k.value[signature.OverBox] > warmest }

// byBox are those features.
var byBox = []int{
	signature.Difference, signature.Superheat, signature.BulbSuperheat, signature.Split,
	signature.OverOutdoor,
}

// clusters are those of the kinds that the machine may be of.
func clusters(k *known) []cluster {
	at := signature.Place{
		Box: k.weather.box, Outdoor: k.weather.outdoor,
		Setpoint: float64(k.usual.Box.Value), Difference: float64(k.usual.Difference.Value),
	}
	at.Refrigerant(k.fluid, float64(k.usual.Superheat.Value))
	kinds := [signature.Kinds]float64{}
	first := signature.Kind(0)
	if k.usual.Frozen {
		first = signature.Freezer
	}
	if kinds[first+signature.Tube] = 1; k.valve {
		kinds[first+signature.Receiver] = k.usual.Receiver
		kinds[first+signature.NoReceiver] = 1 - k.usual.Receiver
		kinds[first+signature.Tube] = 0
	}
	// What is not known of the place spreads what is read.
	elsewhere := [3]signature.Place{at, at, at}
	elsewhere[0].Difference += k.usual.Difference.Std
	elsewhere[1].Box += k.doubt.box
	elsewhere[2].Outdoor += k.doubt.outdoor
	far := max(0, at.Box-at.Setpoint-warmest)
	var out []cluster
	for kind, share := range kinds {
		if share == 0 {
			continue
		}
		for i := range signature.Causes {
			if signature.Causes[i].ColdOnly && at.Outdoor > signature.CoolWeather {
				continue
			}
			rows := signature.Of(signature.Kind(kind), i)
			for n := range rows {
				r := &rows[n]
				c := cluster{
					kind: signature.Kind(kind), cause: i, size: n,
					share: share / float64(len(rows)),
					mean:  r.Mean(&at), spread: r.Spread(&at),
					warms: r.Loss > leastLoss || signature.Causes[i].Code == load,
				}
				for _, f := range byBox {
					c.spread[f][f] += sq(farDoubt * far)
				}
				for j := range elsewhere {
					c.widen(r.Mean(&elsewhere[j]))
				}
				out = append(out, c)
			}
		}
	}
	k.bound(out)
	return out
}

// bound takes a reading beyond what any cluster reads for one of theirs: further tells nothing
// more.
func (k *known) bound(of []cluster) {
	const wide = 3 // standard deviations
	for f := range signature.Features {
		low, high := math.Inf(1), math.Inf(-1)
		for i := range of {
			std := math.Sqrt(of[i].spread[f][f])
			low, high = min(low, of[i].mean[f]-wide*std), max(high, of[i].mean[f]+wide*std)
		}
		if k.read(f) {
			value := k.value[f]
			if f == signature.OverBox && k.tooCold {
				value = 0 // it gives enough, and how much more depends on who lets it run
			}
			y, slope := signature.Bend(f, value)
			k.bounded[f], k.bent[f] = min(max(y, low), high), slope*k.std[f]
		}
	}
}

// floods is the share of machines that hold their head by liquid in the condenser (common practice,
// no source).
const floods = 0.3

// orFlooded is the likelihood of the readings by a cluster where its control may hold the head by
// liquid in the condenser, as a logarithm: of a subcooling beyond what such a machine reads,
// anything from none to all may come of that, in weather in which it may. Where refrigerant is
// missing or the control fails, none does.
func (k *known) orFlooded(c *cluster) float64 {
	const f = signature.Subcooling
	plain := k.likelihood(c)
	more, cause := k.bounded[f]-c.mean[f], signature.Causes[c.cause].Code
	if !k.valve || !k.read(f) || more <= 0 || k.weather.outdoor >= signature.CoolWeather ||
		cause == undercharge || cause == headLow {
		return plain
	}
	held := *c
	held.mean[f] += more / 2
	held.spread[f][f] += sq(more) / 12
	full := k.likelihood(&held)
	top := max(plain, full)
	return top + math.Log((1-floods)*math.Exp(plain-top)+floods*math.Exp(full-top))
}

// widen adds what one standard deviation of something unknown changes.
func (c *cluster) widen(mean signature.Vector) {
	for f := range mean {
		mean[f] -= c.mean[f]
	}
	for f := range mean {
		for g := range mean {
			c.spread[f][g] += mean[f] * mean[g]
		}
	}
}

// leastLoss is the part of the capacity whose loss warms a box for as long as it lasts, and wide
// how many standard deviations over what is usual by then it still is.
const leastLoss, wide = 0.1, 2.6

// likelihood of the readings by a cluster, as a logarithm.
func (k *known) likelihood(c *cluster) float64 {
	var at [signature.Features]int
	n := 0
	for i := range signature.Features {
		if k.read(i) {
			at[n] = i
			n++
		}
	}
	// The covariance becomes its lower Cholesky factor l, and x solves l·x = readings - mean.
	var l [signature.Features]signature.Vector
	var x signature.Vector
	far, logDet := 0.0, 0.0
	for i, a := range at[:n] {
		x[i] = k.bounded[a] - c.mean[a]
		if a == signature.OverBox && c.warms { // nobody knows for how long
			x[i] = min(x[i], wide*math.Sqrt(c.spread[a][a]))
		}
		for j, b := range at[:i+1] {
			sum := c.spread[a][b]
			if i == j {
				sum += sq(k.bent[a])
			}
			for m := range j {
				sum -= l[i][m] * l[j][m]
			}
			if i > j {
				l[i][j] = sum / l[j][j]
				x[i] -= l[i][j] * x[j]
				continue
			}
			if !(sum > 0) {
				return math.Inf(-1)
			}
			l[i][i] = math.Sqrt(sum)
			x[i] /= l[i][i]
			logDet += math.Log(sum)
		}
		far += sq(x[i])
	}
	const wider = 9
	normal := -0.5 * (far + logDet)
	heavy := -0.5*(far/wider+logDet+float64(n)*math.Log(wider)) + math.Log(outlier)
	return math.Max(normal, heavy) + math.Log1p(math.Exp(-math.Abs(normal-heavy)))
}

func sq(x float64) float64 { return x * x }
