package satline

import (
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/internal/page/paper"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// decorated adds to a visit what technicians see, do and leave out.
func decorated(rng *rand.Rand, v Visit) Visit {
	often := func(chance float64) bool { return rng.Float64() < chance }
	c := &v.Conditions
	c.CoilIced, c.CoilWet, c.PanelsOff = often(0.03), often(0.03), often(0.02)
	c.DoorsOpen, c.EconomizerOpen, c.CondenserFanCycling = often(0.02), often(0.02), often(0.02)
	c.SealedSystemOpened = often(0.03)
	if often(0.1) {
		c.Running = time.Duration(1+rng.IntN(40)) * time.Minute
	}
	if often(0.1) {
		v.Complaint = Complaint(1 + rng.IntN(int(Maintenance)))
	}
	if often(0.15) {
		for range 1 + rng.IntN(3) {
			at := time.Duration(10*(len(v.Moves)+1)) * time.Minute
			v.Moves = append(v.Moves, Move{At: at, Added: quantity.Ounces(2 + 20*rng.Float64())})
		}
		if often(0.5) {
			c.ReadAt = v.Moves[len(v.Moves)-1].At + time.Duration(1+rng.IntN(40))*time.Minute
		}
	}
	if often(0.1) {
		v.Readings.OutdoorDryBulb = Reading[quantity.Temperature]{}
	}
	if often(0.1) {
		v.Readings.ReturnWetBulb = Reading[quantity.Temperature]{}
	}
	if often(0.05) {
		v.Equipment.NominalCapacity = 0
	}
	for _, l := range Looks(English, quantity.IP) {
		if often(0.03) {
			v.Checks = append(v.Checks, Check{Look: l.Code, Found: often(0.2)})
		}
	}
	if often(0.2) {
		v.Units = quantity.SI
	}
	if often(0.2) {
		v.Language = Spanish
	}
	if often(0.05) {
		v.Equipment.Metering = 0
	}
	if often(0.1) {
		v.Scope = VerdictOnly
	}
	if often(0.1) {
		v.Equipment.Label.RatedLoadCurrent = quantity.Amperes(10)
		v.Readings.CompressorCurrent = Measured(quantity.Amperes(4 + 14*rng.Float64()))
	}
	return v
}

// A law is what every plan keeps, whatever the visit.
type law struct {
	name   string
	broken func(v *Visit, a *Assessment) string
}

var laws = []law{
	{
		"nothing that needs the machine running stands after a stop before a start",
		func(_ *Visit, a *Assessment) string {
			stopped := false
			for _, s := range a.Plan {
				if s.Running && stopped {
					return string(s.Do.Code)
				}
				stopped = s.Stops || stopped && !s.Starts
			}
			return ""
		},
	},
	{"a danger that stops the machine stops it first", func(_ *Visit, a *Assessment) string {
		for _, d := range a.Dangers {
			if d.Stops && a.Plan[0].Do.Code != StepStop {
				return d.Code + ", and first " + string(a.Plan[0].Do.Code)
			}
		}
		return ""
	}},
	{"no machine is left as it is while something is asked", func(_ *Visit, a *Assessment) string {
		if last := a.Plan[len(a.Plan)-1]; a.Ask != nil && last.Do.Code == StepLeave {
			return string(a.Ask.Take.Code)
		}
		return ""
	}},
	{"no machine is left as it is that is stopped", func(_ *Visit, a *Assessment) string {
		stops := func(s Step) bool { return s.Do.Code == StepStop }
		for _, s := range a.Plan {
			left := s.Do.Code == StepLeave || s.Do.Code == "step.cold-leave"
			if left && slices.ContainsFunc(a.Plan, stops) {
				return string(s.Do.Code)
			}
		}
		return ""
	}},
	{
		"no dose while the charge is not called, or something is still to be looked at; " +
			"but some comes out where too much is likely and nothing is left to look at",
		func(_ *Visit, a *Assessment) string {
			called := a.Charge.Outcome == ChargeLow || a.Charge.Outcome == ChargeHigh
			looks := slices.ContainsFunc(
				a.Plan, func(s Step) bool { return s.Look != "" || s.Field != "" },
			)
			for _, s := range a.Plan {
				full := a.Charge.High >= 0.7 && !s.Adds
				if isDose(s) && (!called && !full || looks) {
					return string(s.Do.Code) + " at " + string(a.Charge.Outcome)
				}
			}
			return ""
		},
	},
	{"what is called low is looked for as a leak before it is read again",
		func(v *Visit, a *Assessment) string {
			leak, read := -1, -1
			// In a cold room the bulb tells a shortage from a valve, and the receiver hides it.
			if a.Mode.Mode == Refrigeration || slices.ContainsFunc(
				v.Checks, func(c Check) bool { return c.Look == "oil-and-leak" },
			) {
				return ""
			}
			for i, s := range a.Plan {
				switch {
				case s.Do.Code == StepFindLeak && leak < 0:
					leak = i
				case s.Field != "" && read < 0:
					read = i
				}
			}
			if a.Charge.Outcome == ChargeLow && read >= 0 && (leak < 0 || leak > read) {
				return a.Plan[read].Field
			}
			return ""
		}},
	{"no dose on a machine that a danger stops, nor where a leak was found",
		func(v *Visit, a *Assessment) string {
			found := slices.ContainsFunc(
				v.Checks, func(c Check) bool { return c.Look == "oil-and-leak" && c.Found },
			)
			for _, s := range a.Plan {
				adds := s.Do.Code == StepAdd || s.Do.Code == StepAddLittle
				stops := slices.ContainsFunc(a.Dangers, func(d Danger) bool { return d.Stops })
				if isDose(s) && stops || adds && found {
					return string(s.Do.Code)
				}
			}
			return ""
		}},
	{"a verdict alone moves no refrigerant", func(v *Visit, a *Assessment) string {
		moves := func(s Step) bool { return s.Moves || s.Opens }
		if i := slices.IndexFunc(a.Plan, moves); v.Scope == VerdictOnly && i >= 0 {
			return string(a.Plan[i].Do.Code)
		}
		return ""
	}},
	{"no dose while a reading is doubted", func(_ *Visit, a *Assessment) string {
		wrong := diagnose.WrongInstruments()
		for _, s := range a.Plan {
			if slices.ContainsFunc(
				wrong, func(f diagnose.Fault) bool { return string(f.Signature) == s.Cause },
			) && slices.ContainsFunc(a.Plan, isDose) {
				return s.Cause
			}
		}
		return ""
	}},
	{"the dose goes the way the charge is called", func(_ *Visit, a *Assessment) string {
		for _, s := range a.Plan {
			adds := s.Do.Code == StepAdd || s.Do.Code == StepAddLittle
			if isDose(s) && adds != (a.Charge.Outcome == ChargeLow) {
				return string(s.Do.Code)
			}
		}
		return ""
	}},
	{
		"after a move nothing but waiting, or an end of moving, until later readings are there",
		func(v *Visit, a *Assessment) string {
			if len(v.Moves) == 0 || v.Conditions.ReadAt > v.Moves[len(v.Moves)-1].At {
				return ""
			}
			for _, s := range a.Plan {
				if isDose(s) {
					return string(s.Do.Code)
				}
			}
			return ""
		},
	},
	{
		"a step that hangs on a cause names its chance, and none is below 20 %",
		func(_ *Visit, a *Assessment) string {
			for _, s := range a.Plan {
				if s.Cause != "" && s.Chance < 0.2 {
					return s.Cause
				}
			}
			return ""
		},
	},
	{"no step is surer of what it names than of its cause", func(_ *Visit, a *Assessment) string {
		for _, s := range a.Plan {
			chance, ok := s.Do.Value("chance")
			if share, is := chance.Of.(fact.Share); ok && is && float64(share) > s.Chance+1e-9 {
				return string(s.Do.Code)
			}
		}
		return ""
	}},
	{"what was answered or read is not asked for again", func(v *Visit, a *Assessment) string {
		for _, s := range a.Plan {
			if s.Look != "" &&
				slices.ContainsFunc(v.Checks, func(c Check) bool { return c.Look == s.Look }) {
				return s.Look
			}
			if slices.ContainsFunc(readingFields, func(f readingField) bool {
				return f.name == s.Field && f.has(&v.Readings)
			}) {
				return s.Field
			}
		}
		return ""
	}},
	{
		"a leak is found, recovered, mended, tested, evacuated and weighed in, in that order",
		func(_ *Visit, a *Assessment) string {
			order := []fact.Code{
				StepFindLeak, StepRecoverRest, StepMendLeak, StepNitrogen, StepEvacuate,
				StepWeighIn,
			}
			last := -1
			for _, s := range a.Plan {
				if i := slices.Index(order, s.Do.Code); i >= 0 {
					if i < last {
						return string(s.Do.Code)
					}
					last = i
				}
			}
			return ""
		},
	},
	{"no step stands twice, and there is one", func(_ *Visit, a *Assessment) string {
		for i, s := range a.Plan {
			same := func(x Step) bool { return x.Do.Text == s.Do.Text && !s.Starts }
			if slices.ContainsFunc(a.Plan[:i], same) {
				return s.Do.Text
			}
		}
		if len(a.Plan) == 0 {
			return "no step"
		}
		return ""
	}},
	{"the first screen has at most 60 words", func(_ *Visit, a *Assessment) string {
		text := a.Headline.Text
		for _, d := range a.Dangers[:min(2, len(a.Dangers))] {
			text += " " + d.Says.Text
		}
		for _, s := range a.Plan[:min(3, len(a.Plan))] {
			text += " " + s.Do.Text
		}
		if len(paper.Words(text)) > 60 {
			return text
		}
		return ""
	}},
	{"every fact has its words", func(_ *Visit, a *Assessment) string {
		for _, f := range factsOf(reflect.ValueOf(a)) {
			if f.Text == "" || strings.HasPrefix(f.Text, string(f.Code)) {
				return f.String()
			}
		}
		return ""
	}},
	{"chances add up", func(_ *Visit, a *Assessment) string {
		sum := a.Charge.Low + a.Charge.InBand + a.Charge.High
		if a.Charge.Outcome != ChargeNotJudged && (sum < 0.999 || sum > 1.001) {
			return string(a.Charge.Outcome)
		}
		return ""
	}},
}

// factsOf lists every fact that a value holds.
func factsOf(v reflect.Value) []fact.Fact {
	var out []fact.Fact
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			out = factsOf(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			out = append(out, factsOf(v.Index(i))...)
		}
	case reflect.Struct:
		if f, ok := v.Interface().(fact.Fact); ok {
			if f.IsZero() {
				return nil
			}
			return []fact.Fact{f}
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out = append(out, factsOf(v.Field(i))...)
			}
		}
	}
	return out
}

func isDose(s Step) bool {
	return slices.Contains(
		[]fact.Code{StepAdd, StepAddLittle, StepRecover, StepRecoverLittle}, s.Do.Code,
	)
}

// lawful is over how many visits the laws are held.
func lawful() int {
	switch {
	case os.Getenv("SATLINE_TRIAL") == "full":
		return 10000
	case testing.Short():
		return 200
	}
	return 1000
}

// The laws of a plan hold over simulated visits of every kind; over ten thousand of them
// with SATLINE_TRIAL=full.
func TestLawsOfAPlan(t *testing.T) {
	i := 0
	holdLaws(t, lawful(), func(rng *rand.Rand) Visit {
		v, _ := simulated(t, rng, simulate.Options{Other: i%2 == 1})
		i++
		return decorated(rng, v)
	})
}
