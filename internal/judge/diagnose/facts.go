package diagnose

import (
	"cmp"
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Side returns what speaks for the explanation (+1) or against it (-1), the strongest first.
func (x *Explanation) Side(which int) []fact.Fact {
	var room [features]*Sign
	signs := room[:0]
	for i := range x.Signs {
		s := &x.Signs[i]
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
	slices.SortStableFunc(signs, func(a, b *Sign) int {
		return cmp.Compare(strength(b), strength(a))
	})
	told := signs[:min(most, len(signs))]
	var out []fact.Fact
	if len(told) > 0 {
		out = make([]fact.Fact, 0, len(told)+len(x.notes))
	}
	for _, s := range told {
		out = append(out, s.fact())
	}
	for _, n := range x.notes {
		if n.supports == which {
			out = append(out, fact.New(n.code))
		}
	}
	return out
}

// fact states the reading beside what a sound machine and the explanation would read.
func (s *Sign) fact() fact.Fact {
	code := fact.Code("sign.for")
	switch {
	case s.healthy && s.Supports() > 0:
		code = "sign.as-sound"
	case s.healthy:
		code = "sign.not-as-sound"
	case s.blind():
		code = "sign.anything"
	case s.Supports() < 0:
		code = "sign.against"
	}
	if s.Current {
		return fact.New(code, fact.Of("feature", fact.Term("reading.compressorCurrent")),
			fact.Amount("value", quantity.Current(s.Value)),
			stated("sound", quantity.Current(s.Sound), s.SoundStd),
			stated("reads", quantity.Current(s.Reads), s.ReadsStd))
	}
	return fact.New(
		code, featureValues[s.Feature], valueOf("value", s.Feature, s.Value, 0),
		valueOf("sound", s.Feature, s.Sound, s.SoundStd),
		valueOf("reads", s.Feature, s.Reads, s.ReadsStd),
	)
}

// featureValues name the features.
var featureValues = [features]fact.Value{
	fact.Of("feature", fact.Term("feature.evaporating")),
	fact.Of("feature", fact.Term("feature.superheat")),
	fact.Of("feature", fact.Term("feature.condensing-over")),
	fact.Of("feature", fact.Term("feature.subcooling")),
	fact.Of("feature", fact.Term("feature.discharge-over")),
	fact.Of("feature", fact.Term("feature.split")),
	fact.Of("feature", fact.Term("feature.wet-bulb-split")),
	fact.Of("feature", fact.Term("feature.condenser-rise")),
	fact.Of("feature", fact.Term("feature.airflow")),
	fact.Of("feature", fact.Term("feature.power")),
}

// valueOf is a value of a feature, with its standard uncertainty where that is not zero.
func valueOf(name string, f signature.Feature, v, std float64) fact.Value {
	switch f {
	case signature.Evaporating:
		return stated(name, quantity.Temperature(v), std)
	case signature.Airflow:
		return stated(name, quantity.VolumeFlow(v), std)
	case signature.Power:
		return stated(name, quantity.Power(v), std)
	}
	return stated(name, quantity.TemperatureDelta(v), std)
}

func stated[T quantity.Quantity](name string, v T, std float64) fact.Value {
	if std == 0 {
		return fact.Amount(name, v)
	}
	return fact.Measured(name, quantity.Uncertain[T]{Value: v, Std: std})
}

// Size is how large it is likely to be, as a value named "size" or "fluid"; false where
// there is no telling.
func (m *Marginal) Size() (fact.Value, bool) { return sizeOf(m.Signature, m.Severity.Mean) }

// sizeOf is the severity of a signature as a value; false where there is no telling.
func sizeOf(code Code, severity float64) (fact.Value, bool) {
	if t := traitsOf[code]; t != nil && t.size != nil {
		return t.size(severity)
	}
	return fact.Value{}, false
}

// Fact says whether the readings moved as was to be expected.
func (x *Change) Fact() fact.Fact {
	code := fact.Code("change.unexplained")
	switch {
	case x.AsSaid && !x.Revised:
		code = "change.as-expected"
	case x.AsSaid:
		code = "change.refined"
	case x.Revised:
		code = "change.revised"
	}
	return fact.New(
		code, fact.Of("before", x.Before.term()), fact.Of("chance", fact.Share(x.Chance)),
	)
}

// Fact says how a feature moved; false where that is not worth a line.
func (m *Move) Fact() (fact.Fact, bool) {
	if m.Feature == signature.Airflow || m.Feature == signature.Power {
		return fact.Fact{}, false
	}
	code := fact.Code("change.moved")
	switch {
	case math.Abs(m.After-m.Expected) > 2*m.ExpectedStd:
		code = "change.moved-otherwise"
	case math.Abs(m.After-m.Before) <= 0.6:
		return fact.Fact{}, false
	}
	return fact.New(
		code, featureValues[m.Feature], valueOf("before", m.Feature, m.Before, 0),
		valueOf("after", m.Feature, m.After, 0),
		valueOf("expected", m.Feature, m.Expected, m.ExpectedStd),
	), true
}

// term names the explanation without size.
func (x *Explanation) term() fact.Terms {
	if len(x.Causes) == 0 {
		return fact.Terms{"cause.sound"}
	}
	var out fact.Terms
	for _, c := range x.Causes {
		out = append(out, fact.Term("cause."+string(c.Signature)))
	}
	return out
}

// Fact says what to look at or read.
func (m *Measurement) Fact() fact.Fact {
	if m.test != nil {
		return fact.New(fact.Code("look." + m.Code))
	}
	return fact.New("step.read", fact.Of("readings", fact.Terms{fact.Term("reading." + m.Field())}))
}

// Field is the name of the reading in a visit; empty for a look.
func (m *Measurement) Field() string {
	if m.reading == nil {
		return ""
	}
	return m.reading.field
}

// Running reports whether the machine has to run for it.
func (m *Measurement) Running() bool { return m.test == nil || m.test.running }

// Facts says what each outcome would mean.
func (m *Measurement) Facts() []fact.Fact {
	var out []fact.Fact
	for i := range m.Outcomes {
		o := &m.Outcomes[i]
		if o.then == nil {
			out = append(out, fact.Fact{})
			continue
		}
		f := fact.New("outcome.reading")
		if m.test != nil {
			f = fact.New("outcome.look", fact.Of("answer", fact.Term(m.test.answer(i == 0))))
		} else {
			show := signature.Evaporating
			if m.reading.feature == signature.Airflow || m.reading.feature == signature.Power {
				show = m.reading.feature
				f = f.With(featureValues[show])
			}
			if !math.IsInf(o.Low, 0) {
				f = f.With(valueOf("low", show, o.Low, 0))
			}
			if !math.IsInf(o.High, 0) {
				f = f.With(valueOf("high", show, o.High, 0))
			}
		}
		out = append(out, f.With(fact.Of("chance", fact.Share(o.Chance)),
			fact.Of("then", o.then.term()), fact.Of("thenChance", fact.Share(o.ThenProbability))))
	}
	return out
}

// Answers reports whether what the look says decides about a cause.
func (m *Measurement) Answers(signature Code) bool {
	return m.test != nil && m.test.decides(signature)
}

// decides reports whether a yes is to be expected where a cause is present.
func (t *test) decides(signature Code) bool {
	const surely = 0.5
	for code, p := range t.of {
		if p < surely {
			continue
		}
		if f := lookup(code); code == signature || f != nil && f.Signature == signature {
			return true
		}
	}
	return false
}

// CauseFacts says what made the ice, by falling chance.
func (f *Freeze) CauseFacts() []fact.Fact {
	if !f.Explains() {
		return []fact.Fact{
			fact.New("freeze.unexplained", fact.Of("chance", fact.Share(f.Explained))),
		}
	}
	var out []fact.Fact
	for _, x := range f.Causes {
		if x.Chance >= 0.1 {
			out = append(
				out,
				fact.New(
					"freeze.cause", fact.Of("cause", fact.Term("cause."+string(x.Code))),
					fact.Of("chance", fact.Share(x.Chance)),
				),
			)
		}
	}
	for _, s := range f.Scenarios {
		if s.Code != asFound && s.Evaporating.Std <= widest {
			out = append(
				out,
				fact.New(
					fact.Code("freeze."+s.Code), fact.Measured("evaporating", s.Evaporating),
					fact.Of("chance", fact.Share(s.Ices)),
				),
			)
		}
	}
	return out
}

// ControlFacts says which controls would have kept the ice away, the best first.
func (f *Freeze) ControlFacts() []fact.Fact {
	var out []fact.Fact
	for _, x := range f.Controls {
		if f.Explains() && x.Prevents >= 0.3 {
			out = append(
				out,
				fact.New(
					fact.Code("freeze.control."+x.Code), fact.Of("share", fact.Share(x.Prevents)),
				),
			)
		}
	}
	return out
}
