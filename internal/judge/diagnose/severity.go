package diagnose

import "github.com/satline/satline/internal/judge/diagnose/signature"

// A further size is past the gravest of the table, where a machine runs for minutes and the
// table was not learnt: so many steps on along the line through the last two sizes, and less
// sure. The steps are those by which the system model moves there.
type further struct {
	variant         Code // empty: of the signature itself
	steps, severity float64
	also            *aside
}

// An aside is what a further size does besides, and how widely.
type aside struct{ shift, std vector }

// A head at which valves and controls let go: gas passes the condenser, and the compressor
// hardly lifts more.
var still = &aside{
	shift: vector{signature.Evaporating: 3, signature.Subcooling: -3, signature.Split: -3},
	std: vector{
		signature.Evaporating: 3.5, signature.Superheat: 5, signature.CondensingOver: 3,
		signature.Subcooling:    4.5,
		signature.DischargeOver: 12, signature.Split: 3, signature.WetBulbSplit: 2,
		signature.CondenserRise: 12, signature.Power: 8,
	},
}

// fanDead is the variant of an outdoor fan that does not turn: a head that no dirt makes.
const fanDead Code = "condenser-fan-dead"

// doubtPerStep is how the variance that the table leaves grows with each step past it.
const doubtPerStep = 0.5

// No machine answers a fault as the model of it does. What the table leaves is the scatter of
// machines that all obey one model; leastDoubt, in kelvin, and shiftDoubt, of each shift, are
// what that model itself may be off by. They were chosen on simulated visits, not those of
// the trial: smaller ones make an explanation of two causes from what is one cause that the
// model has not quite right.
var leastDoubt = vector{
	signature.Evaporating: 0.5, signature.Superheat: 0.8, signature.CondensingOver: 0.5,
	signature.Subcooling:    0.8,
	signature.DischargeOver: 2, signature.Split: 0.3, signature.WetBulbSplit: 0.2,
	signature.CondenserRise: 0.5,
}

const shiftDoubt = 0.2

// modelDoubt is the variance of a shift by the model itself.
func modelDoubt(shift *vector) (v vector) {
	for f, least := range leastDoubt {
		by := shiftDoubt * shift[f]
		v[f] = least*least + by*by
	}
	return v
}

// trySizes tries the states of a tabled signature: the sizes of its entry and past it, then
// those of its variants.
func (c *caseFile) trySizes(code Code) {
	variants := variantsOf[code]
	own := 1.0
	for _, v := range variants {
		own -= v.share
	}
	c.trySizesOf(code, "", own)
	for _, v := range variants {
		c.trySizesOf(code, v.name, v.share)
	}
}

// trySizesOf tries the states of one variant.
func (c *caseFile) trySizesOf(code, variant Code, share float64) {
	first := len(c.work.states)
	entry := code
	if variant != "" {
		entry = variant
	}
	for k, levels := 0, c.levels(entry); k < len(levels); k++ {
		l := &levels[k]
		s := c.try()
		s.severity, s.variant, s.capacity = l.Severity, string(variant), l.Capacity
		s.level, s.gain, s.rest = l, &l.Gain, &l.Rest
		s.shift = l.Shift(c.seen.at)
		s.doubt = modelDoubt(&s.shift)
	}
	for _, x := range furtherOf(code) {
		if x.variant == variant {
			*c.try() = c.past(c.levels(code), x)
		}
	}
	for i := range halts {
		if h := &halts[i]; h.signature == code && h.variant == variant {
			c.tryHalted(h).severity = 1
		}
	}
	tried := c.work.states[first:]
	if code == Overcharge && c.table == signature.For(signature.Valve) {
		for k := range tried {
			tried[k].disagree(c.work, &overfullValve)
		}
	}
	weights := severityPrior(len(tried))
	for k := range tried {
		tried[k].weight = share * weights[k]
	}
}

// overfullValve is how far published machines with a valve differ, either side of their
// middle, at a quarter too much refrigerant, all in one: a capacity of −9 % to +2.5 %, in kelvin
// of the air, with a power of −4 to +5 %. The first is that of Cheung and Braun 2015,
// NREL/SR-5500-65030 (rooftop units of a rated COP of 4.2 at 67 °F wet bulb and 95 °F outdoors),
// the second that of Payne, Cho and Domanski 2014, NIST TN 1848. The table, learnt from one
// model, has one sign.
var overfullValve = vector{signature.Split: 0.6, signature.WetBulbSplit: 0.3, signature.Power: 4.4}

// disagree widens a state by a spread that was published for a size of a quarter.
func (s *state) disagree(w *workspace, spread *vector) {
	rest := w.matrix()
	by := s.severity * s.severity / (0.25 * 0.25)
	for f := range rest {
		for g := range rest {
			rest[f][g] = (1+s.restMore)*s.rest[f][g] + by*spread[f]*spread[g]
		}
	}
	s.rest, s.restMore = rest, 0
}

// levels of an entry, those of machines of this arrangement where they were learnt apart.
func (c *caseFile) levels(entry Code) []signature.Level {
	if c.evidence.HeatPump {
		if own := c.table.Cause(string(entry) + signature.OfHeatPumps); own != nil {
			return own
		}
	}
	return c.table.Cause(string(entry))
}

// past continues a signature past its gravest tabled size.
func (c *caseFile) past(levels []signature.Level, x further) state {
	last, before := &levels[len(levels)-1], &levels[len(levels)-2]
	s := state{
		severity: x.severity, variant: string(x.variant), level: last, gain: &last.Gain,
		rest:     &last.Rest,
		restMore: doubtPerStep * x.steps,
		capacity: min(1, last.Capacity+x.steps*(last.Capacity-before.Capacity)),
		shift:    last.Shift(c.seen.at),
	}
	for f, was := range before.Shift(c.seen.at) {
		s.shift[f] += x.steps * (s.shift[f] - was)
	}
	s.doubt = modelDoubt(&s.shift)
	if x.also != nil {
		for f, std := range x.also.std {
			s.shift[f] += x.also.shift[f]
			s.doubt[f] += std * std
		}
	}
	return s
}

// A variantShare is an entry of a signature besides its own, with its share of its faults.
type variantShare struct {
	name  Code
	share float64
}

var variantsOf = func() map[Code][]variantShare {
	out := map[Code][]variantShare{}
	total := map[Code]float64{}
	for i := range library {
		total[library[i].Signature] += library[i].Share
	}
	for i := range library {
		f := &library[i]
		if f.Variant != "" {
			out[f.Signature] = append(
				out[f.Signature], variantShare{Code(f.Variant), f.Share / total[f.Signature]},
			)
		}
	}
	return out
}()
