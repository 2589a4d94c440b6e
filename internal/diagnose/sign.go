package diagnose

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/quantity"
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
	// Source names where the expectation of the sound machine comes from.
	Source string
}

// signs lists the evidence for a component, against a rival.
func (c *caseFile) signs(p, rival component) []Sign {
	healthy := component{a: none, b: none}
	soundMean, soundCov := c.predict(healthy, &c.seen.have, &c.seen.noise)
	mean, cov := c.predict(p, &c.seen.have, &c.seen.noise)
	rivalMean, rivalCov := c.predict(rival, &c.seen.have, &c.seen.noise)
	logNormal := func(x, m, v float64) float64 { return -0.5*math.Log(v) - 0.5*(x-m)*(x-m)/v }
	var out []Sign
	for f := range features {
		if !c.seen.have[f] {
			continue
		}
		v := c.seen.value[f]
		s := Sign{
			Feature: signature.Feature(f), Value: v,
			Sound: soundMean[f], SoundStd: math.Sqrt(soundCov[f][f]),
			Reads: mean[f], ReadsStd: math.Sqrt(cov[f][f]), RivalReads: rivalMean[f],
			overSound: logNormal(v, mean[f], cov[f][f]) - logNormal(v, soundMean[f], soundCov[f][f]),
			rival:     logNormal(v, mean[f], cov[f][f]) - logNormal(v, rivalMean[f], rivalCov[f][f]),
			healthy:   p.a == none,
		}
		for _, x := range c.evidence.expected() {
			if x.Feature == s.Feature {
				s.Source = x.Source
			}
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

// show writes a value of a feature, with its standard uncertainty if that is
// not zero.
func show(f signature.Feature, v, std float64, sys quantity.System) string {
	switch f {
	case signature.Evaporating:
		return quantity.Uncertain[quantity.Temperature]{Value: quantity.Temperature(v), Std: std}.Format(sys)
	case signature.Airflow:
		return quantity.Uncertain[quantity.VolumeFlow]{Value: quantity.VolumeFlow(v), Std: std}.Format(sys)
	case signature.Power:
		// Electric power is in watts in both systems.
		if std == 0 {
			return fmt.Sprintf("%.2f kW", v/1000)
		}
		return fmt.Sprintf("%.2f kW ± %.2f kW", v/1000, std/1000)
	}
	return quantity.Uncertain[quantity.TemperatureDelta]{Value: quantity.TemperatureDelta(v), Std: std}.Format(sys)
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

// Text is the sign as a sentence.
func (s *Sign) Text(sys quantity.System) string {
	name := s.Feature.String()
	value := show(s.Feature, s.Value, 0, sys)
	sound := show(s.Feature, s.Sound, s.SoundStd, sys)
	if s.Source != "" {
		sound += " (" + s.Source + ")"
	}
	reads := show(s.Feature, s.Reads, s.ReadsStd, sys)
	switch {
	case s.blind():
		return fmt.Sprintf("%s %s; a sound machine reads %s here, and with this cause it may be almost anything", name, value, sound)
	case s.healthy && s.Supports() > 0:
		return fmt.Sprintf("%s %s, as a sound machine: %s", name, value, sound)
	case s.healthy:
		return fmt.Sprintf("%s %s; a sound machine would read %s here", name, value, sound)
	case s.Supports() < 0:
		return fmt.Sprintf("%s %s; this would make it %s (sound: %s)", name, value, reads, sound)
	}
	return fmt.Sprintf("%s %s; a sound machine reads %s here, this makes it %s", name, value, sound, reads)
}

// most is how many sentences stand for and against one explanation.
const most = 4

// For returns the evidence for the explanation, the strongest first.
func (x *Explanation) For(sys quantity.System) []string { return x.side(1, sys) }

// Against returns the evidence against the explanation, the strongest first.
func (x *Explanation) Against(sys quantity.System) []string { return x.side(-1, sys) }

// clash says that the readings contradict each other: no cause speaks for it.
func (x *Explanation) clash() bool {
	return len(x.Causes) == 1 && x.Causes[0].Signature == readingsClash
}

func (x *Explanation) side(which int, sys quantity.System) []string {
	var signs []Sign
	for _, s := range x.Signs {
		if s.Supports() == which && !(s.blind() && (which < 0 || x.clash())) {
			signs = append(signs, s)
		}
	}
	strength := func(s *Sign) float64 {
		if s.healthy {
			return math.Abs(s.Value-s.Sound) / s.SoundStd * float64(-which)
		}
		return s.overSound * float64(which)
	}
	slices.SortStableFunc(signs, func(a, b Sign) int { return compare(strength(&b), strength(&a)) })
	var out []string
	for _, s := range signs[:min(most, len(signs))] {
		out = append(out, s.Text(sys))
	}
	for _, n := range x.notes {
		if n.supports == which {
			out = append(out, inUnits(n.text, sys))
		}
	}
	return out
}

// A note is something seen that speaks for or against.
type note struct {
	code     fact.Code
	text     string
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
			out = append(out, note{k.code, k.text, 1})
		case p < usual/1.5:
			out = append(out, note{k.code, k.text, -1})
		}
	}
	return out
}

// Title names the explanation with its size.
func (x *Explanation) Title(sys quantity.System) string {
	if len(x.Causes) == 0 {
		return "nothing wrong that these readings show"
	}
	var parts []string
	for i := range x.Causes {
		text := x.Causes[i].Name()
		if size := x.Causes[i].Size(sys); size != "" {
			text += ", " + size
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; and ")
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

// Size is the severity in words; empty where there is no telling.
func (c *Cause) Size(sys quantity.System) string {
	percent := func(x float64) string { return fmt.Sprintf("%.0f %%", 5*math.Round(20*x)) }
	delta := func(k float64) string { return quantity.TemperatureDelta(math.Abs(k)).Format(sys) }
	switch c.Signature {
	case Undercharge:
		return "about " + percent(c.Severity) + " of the charge missing"
	case Overcharge:
		return "about " + percent(c.Severity) + " too much"
	case LowIndoorAir:
		return "about " + percent(c.Severity) + " less air than it should have"
	case HighIndoorAir:
		return "about " + percent(c.Severity) + " more air than it should have"
	case ReturnLeak:
		return "about " + percent(c.Severity) + " of the air"
	case CondenserAir:
		if c.variant == string(fanDead) {
			return ""
		}
		if c.variant != "" {
			return "air at the coil about " + delta(c.Severity) + " too warm"
		}
		return "about " + percent(c.Severity) + " of the heat transfer lost"
	case SunOnSensor:
		return "about " + delta(c.Severity) + " too warm"
	case Restriction:
		return "about " + percent(c.Severity) + " of the passage closed"
	case Overfeed:
		return "about " + percent(c.Severity) + " too open"
	case VaporLeak:
		return "about " + percent(c.Severity) + " of the compressor's flow"
	case SuctionGauge, LiquidGauge:
		more := "high"
		if c.Severity < 0 {
			more = "low"
		}
		return "about " + quantity.GaugePressure(math.Abs(c.Severity)).Format(sys) + " " + more
	case SupplySensor:
		if c.Severity < 0 {
			return "about " + delta(c.Severity) + " too cold"
		}
		return "about " + delta(c.Severity) + " too warm"
	case OtherRefrigerant:
		if c.Fluid != "" {
			return "the pressures suit " + c.Fluid
		}
	}
	return ""
}
