package diagnose

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// How far a lie moves the readings from those of sound machines, in standard
// deviations of all readings together, is what limits whether it can be named: a
// cause that is a thirtieth as common as a sound machine needs more than 2.6 to be
// as likely. Gauge zeros stay near that on R-410A, and an atmosphere taken too high stays
// below it, whatever the inference; its steep pressure curve is what they are read by.
func TestLiesAtTheLimit(t *testing.T) {
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	limited := map[Code]float64{SuctionGauge: 10 * psi, LiquidGauge: 25 * psi, Altitude: 3.2 * psi}
	for _, device := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV} {
		sound := &signature.For(deviceOf(device)).Sound
		at := sound.At(signature.Rated, signature.UsualFluid)
		e := reads(signature.Rated, sound.Mean(at))
		e.Metering, e.Fluid, e.Atmosphere = device, r, quantity.StandardAtmosphere
		gauge := func(p quantity.Pressure, err error) *quantity.Uncertain[quantity.GaugePressure] {
			if err != nil {
				t.Fatal(err)
			}
			u := p.Gauge(e.Atmosphere).PlusMinus(quantity.PSIG(0.6))
			return &u
		}
		e.SuctionPressure, e.LiquidPressure = gauge(r.DewPressure(e.EvaporatingDew.Value)),
			gauge(r.BubblePressure(e.CondensingBubble.Value))
		c := open(&e)
		for a, s := range c.suspects {
			size, known := limited[s.signature]
			for k := range c.states[a] {
				if !known || math.Abs(c.states[a][k].severity) != size {
					continue
				}
				far := c.apart(component{a: none, b: none}, component{a: a, b: none, sa: k})
				t.Logf(
					"metering %d: %s %+.1f psi: %.1f standard deviations", device, s.signature,
					c.states[a][k].severity/psi, far,
				)
				if far < 1.2 || far > 3.4 {
					t.Errorf(
						"%s %+.1f psi is %.2f standard deviations from sound", s.signature,
						c.states[a][k].severity/psi, far,
					)
				}
			}
		}
	}
}

// apart is the distance between the means of two components, in standard
// deviations of the first.
func (c *caseFile) apart(p, q component) float64 {
	mean, cov := c.predict(p, &c.seen.have, c.seen.noise)
	other, _ := c.predict(q, &c.seen.have, c.seen.noise)
	_, squared, _ := c.distance(&other, &mean, &cov)
	return math.Sqrt(squared)
}

// distance is the squared Mahalanobis distance of v from a mean over the n features that
// were read; false where the covariance is none. It leaves the factor of that in the
// triangle.
func (c *caseFile) distance(v, mean *vector, cov *matrix) (n int, squared float64, ok bool) {
	var x [features]float64
	for f := range features {
		if !c.seen.have[f] {
			continue
		}
		x[n] = v[f] - mean[f]
		k := 0
		for g := range f + 1 {
			if c.seen.have[g] {
				c.work.triangle.l[n][k] = cov[f][g]
				k++
			}
		}
		n++
	}
	if !c.work.triangle.factor(n) {
		return n, 0, false
	}
	c.work.triangle.whiten(x[:n])
	for i := range n {
		squared += x[i] * x[i]
	}
	return n, squared, true
}
