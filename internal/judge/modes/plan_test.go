package modes_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func codes(steps []modes.Step) (out []fact.Code) {
	for _, s := range steps {
		out = append(out, s.Do.Code)
	}
	return out
}

func TestInOrder(t *testing.T) {
	for _, x := range []struct {
		name       string
		from, want []fact.Code
	}{
		{"as they come", []fact.Code{modes.CleanFilter, modes.ReadAgain},
			[]fact.Code{modes.CleanFilter, modes.ReadAgain}},
		{"once each", []fact.Code{modes.FindLeak, modes.CleanFilter, modes.FindLeak},
			[]fact.Code{modes.FindLeak, modes.CleanFilter}},
		{"readings as often as asked for", []fact.Code{modes.Read, modes.CleanFilter, modes.Read},
			[]fact.Code{modes.Read, modes.CleanFilter, modes.Read}},
		{"started before it has to run",
			[]fact.Code{modes.Stop, modes.OutdoorFan, modes.ReadAgain},
			[]fact.Code{modes.Stop, modes.OutdoorFan, modes.StartAgain, modes.ReadAgain}},
		{"started once", []fact.Code{modes.Thaw, modes.StartAgain, modes.RunOn},
			[]fact.Code{modes.Thaw, modes.StartAgain, modes.RunOn}},
	} {
		var steps []modes.Step
		for _, code := range x.from {
			steps = append(steps, modes.Do(code))
		}
		if d := cmp.Diff(x.want, codes(modes.InOrder(steps))); d != "" {
			t.Errorf("%s: %s", x.name, d)
		}
	}
}

// Whatever is asked for, no step needs a machine running that is stopped, and what is in order
// stays as it is.
func TestInOrderOfAnything(t *testing.T) {
	all := []fact.Code{
		modes.Stop, modes.Thaw, modes.StartAgain, modes.Wait, modes.Read, modes.Add,
		modes.RecoverRest, modes.Evacuate, modes.WeighIn, modes.CleanFilter, "look.gauge-zero",
	}
	rapid.Check(t, func(t *rapid.T) {
		var steps []modes.Step
		for _, code := range rapid.SliceOf(rapid.SampledFrom(all)).Draw(t, "codes") {
			steps = append(steps, modes.Do(code))
		}
		out, stopped := modes.InOrder(steps), false
		for _, s := range out {
			if s.Running && stopped {
				t.Fatalf("%s on a machine that is stopped", s.Do.Code)
			}
			stopped = s.Stops || stopped && !s.Starts
		}
		if d := cmp.Diff(out, modes.InOrder(out)); d != "" {
			t.Fatal(d)
		}
	})
}

func TestDistinct(t *testing.T) {
	none := func(string) bool { return false }
	only := func(code string) func(string) bool { return func(c string) bool { return c == code } }
	for _, x := range []struct {
		name     string
		from     []string
		apparent func(string) bool
		want     []string
	}{
		{name: "all",
			from: []string{"floodback", "current-high"},
			want: []string{"floodback", "current-high"}},
		{name: "a cool discharge says what floodback does", apparent: none,
			from: []string{"floodback", "discharge-cool"}, want: []string{"floodback"}},
		{name: "alone it is told", apparent: none,
			from: []string{"discharge-cool"}, want: []string{"discharge-cool"}},
		{name: "a floodback that only seems so hides nothing", apparent: only("floodback"),
			from: []string{"floodback", "discharge-cool"}, want: []string{"discharge-cool"}},
	} {
		var all []modes.Danger
		for _, code := range x.from {
			all = append(all, modes.Danger{Code: code})
		}
		var got []string
		for _, d := range modes.Distinct(all, x.apparent) {
			got = append(got, d.Code)
		}
		if d := cmp.Diff(x.want, got); d != "" {
			t.Errorf("%s: %s", x.name, d)
		}
	}
}
