package diagnose

import (
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity/fact"
)

// A Sign is one measured feature beside what a sound machine and what the
// explanation would read. Values are in kelvin, m³/s or W; each Std is one
// standard uncertainty, machine to machine and instruments together.
type Sign struct {
	Feature          signature.Feature
	Value            float64
	Sound, SoundStd  float64
	Reads, ReadsStd  float64 // under the explanation
	RivalReads       float64 // under the explanation it competes with
	overSound, rival float64 // log likelihood ratios
	healthy          bool    // the explanation is 'nothing wrong'
	// Current says that the values are the compressor's current, in amperes, which stands
	// for the power.
	Current bool
}

// foreseen is what a component lets the features that were read be, each by itself, and the log
// likelihood of what it is, up to a constant.
type foreseen struct{ mean, variance, fit vector }

func (c *caseFile) foresee(p component) (r foreseen) {
	w := c.work
	first, second := c.packed(p)
	cov := c.covariance(first, second)
	for i, f := range w.at[:w.n] {
		off, variance := w.x[i], cov[place(i, i)]+w.noise[place(i, i)]
		r.mean[f], r.variance[f] = c.seen.value[f]-off, variance
		r.fit[f] = -0.5*math.Log(variance) - 0.5*off*off/variance
	}
	return r
}

// signs appends the evidence for a component by what it and a rival let the features be;
// healthy says that it is 'nothing wrong'.
func (c *caseFile) signs(out []Sign, own, rival, sound *foreseen, healthy bool) []Sign {
	for f := range features {
		unread := signature.Feature(f) == signature.CondensingOver && !c.seen.raw.have[rOutdoor]
		if !c.seen.have[f] || unread { // over air that nobody read
			continue
		}
		v := c.seen.value[f]
		s := Sign{
			Feature: signature.Feature(f), Value: v,
			Sound: sound.mean[f], SoundStd: math.Sqrt(sound.variance[f]),
			Reads: own.mean[f], ReadsStd: math.Sqrt(own.variance[f]), RivalReads: rival.mean[f],
			overSound: own.fit[f] - sound.fit[f],
			rival:     own.fit[f] - rival.fit[f],
			healthy:   healthy,
		}
		c.scale(&s)
		out = append(out, s)
	}
	return out
}

// scale turns features into what a technician reads.
func (c *caseFile) scale(s *Sign) {
	switch s.Feature {
	case signature.Evaporating:
		for _, x := range [...]*float64{&s.Value, &s.Sound, &s.Reads, &s.RivalReads} {
			*x += c.seen.raw.evapGlide
		}
	case signature.Airflow, signature.Power:
		if s.Feature == signature.Power && c.seen.raw.byCurrent {
			s.Current = true
			amperes := func(x float64) float64 { return c.seen.raw.ampere(c.evidence, x) }
			s.SoundStd *= amperes(s.Sound) / 100
			s.ReadsStd *= amperes(s.Reads) / 100
			for _, x := range [...]*float64{&s.Value, &s.Sound, &s.Reads, &s.RivalReads} {
				*x = amperes(*x)
			}
			return
		}
		unit := c.unit(s.Feature)
		s.SoundStd *= unit * math.Exp(s.Sound/100) / 100
		s.ReadsStd *= unit * math.Exp(s.Reads/100) / 100
		for _, x := range [...]*float64{&s.Value, &s.Sound, &s.Reads, &s.RivalReads} {
			*x = unit * math.Exp(*x/100)
		}
	}
}

// unit is what an airflow or power of 0 % stands for.
func (c *caseFile) unit(f signature.Feature) float64 {
	if f == signature.Power {
		return float64(c.evidence.NominalCapacity)
	}
	if c.evidence.NominalCapacity > 0 {
		return float64(c.evidence.NominalCapacity) / wattsPerTon * flowPerTon
	}
	return float64(c.evidence.RatedAirflow)
}

// Supports says whether the sign speaks for the explanation, against it, or
// neither: +1, -1 or 0.
func (s *Sign) Supports() int {
	off := math.Abs(s.Value-s.Reads) / s.ReadsStd
	strange := math.Abs(s.Value-s.Sound) / s.SoundStd
	switch {
	case s.healthy && strange <= 1.3:
		return 1
	case s.healthy && strange > 1.7:
		return -1
	case s.healthy:
		return 0
	case off > 1.8, s.overSound < -0.5:
		return -1
	case s.overSound > 0.4 && strange > 0.9:
		return 1
	}
	return 0
}

// blind says that the explanation spreads the reading so widely that it says
// little.
func (s *Sign) blind() bool {
	const times = 2.5 // the spread of sound machines
	return s.ReadsStd > times*s.SoundStd
}

// most is how many sentences stand for and against one explanation.
const most = 4

// clash says that the readings contradict each other: no cause speaks for it.
func (x *Explanation) clash() bool {
	return len(x.Causes) == 1 && x.Causes[0].Signature == readingsClash
}

// A note is something seen that speaks for or against.
type note struct {
	code     fact.Code
	supports int
}

func (c *caseFile) notes(a, b int) []note {
	var out []note
	for j := range c.clues {
		k := &c.clues[j]
		p := k.usual
		for _, x := range [...]int{a, b} {
			if x != none {
				p = max(p, c.suspects[x].notes[j])
				if b == none {
					p = c.suspects[x].notes[j]
				}
			}
		}
		switch usual, p := k.as(k.usual), k.as(p); {
		case p > 1.5*usual:
			out = append(out, note{k.code, 1})
		case p < usual/1.5:
			out = append(out, note{k.code, -1})
		}
	}
	return out
}

// Code names the explanation for programs: "sound", or the signatures in
// alphabetical order, joined by "+".
func (x *Explanation) Code() string {
	if len(x.Causes) == 0 {
		return "sound"
	}
	var codes []string
	for i := range x.Causes {
		codes = append(codes, string(x.Causes[i].Signature))
	}
	slices.Sort(codes)
	return strings.Join(codes, "+")
}
