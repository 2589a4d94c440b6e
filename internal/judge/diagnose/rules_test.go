package diagnose

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/refrigerant"
)

// A published rule: which way each reading moves with a fault. The columns are
// evaporating temperature, superheat, condensing temperature, subcooling,
// discharge line temperature, rise of the condenser air, fall of the evaporator
// air; '+' up, '-' down, '0' hardly, '.' not stated or not recalled.
type rule struct {
	fault  Code
	device signature.Device
	signs  string
}

var columns = [7][]struct {
	feature signature.Feature
	sign    float64
}{
	{
		{signature.Evaporating, 1},
	}, {{signature.Superheat, 1}}, {{signature.CondensingOver, 1}}, {{signature.Subcooling, 1}},
	{
		{signature.DischargeOver, 1}, {signature.CondensingOver, 1},
	}, {{signature.CondenserRise, 1}}, {{signature.Split, 1}},
}

var published = []struct {
	source verify.Source
	rules  []rule
}{
	{
		verify.Source{
			Cite: "Rossi and Braun 1997, HVAC&R Research 3(1):19-37, fault diagnosis rules, as " +
				"reprinted by Li and Braun 2003, Fault Detection and Diagnostics for Rooftop " +
				"Air Conditioners, table 1-1",
			Kind: verify.Published,
		},
		[]rule{
			{Undercharge, signature.Fixed, "-+--+--"}, {VaporLeak, signature.Fixed, "+------"},
			{Restriction, signature.Fixed, "-+-++--"}, {CondenserAir, signature.Fixed, "+-+-++-"},
			{LowIndoorAir, signature.Fixed, "------+"},
		},
	},
	{
		verify.Source{
			Cite: "Breuker and Braun 1998, HVAC&R Research 4(3):303-318, rules from a 3-ton " +
				"rooftop unit with a fixed orifice",
			Kind: verify.FromMemory,
		},
		[]rule{
			{Undercharge, signature.Fixed, "-+--+--"}, {VaporLeak, signature.Fixed, "+---.--"},
			{Restriction, signature.Fixed, "-+-++--"}, {CondenserAir, signature.Fixed, "+-+.++-"},
			{LowIndoorAir, signature.Fixed, "---.--+"},
		},
	},
	{
		verify.Source{
			Cite: "Kim, Yoon, Payne and Domanski 2008, NIST SP 1087, R-410A split heat pump " +
				"with a TXV in cooling",
			Kind: verify.FromMemory,
		},
		[]rule{
			{Undercharge, signature.Valve, "-+--+--"}, {Overcharge, signature.Valve, ".0+++.."},
			{NonCondensables, signature.Valve, ".0+++.."}, {VaporLeak, signature.Valve, "+.-.+--"},
			{Restriction, signature.Valve, "-+.++--"}, {CondenserAir, signature.Valve, ".0+.++."},
			{LowIndoorAir, signature.Valve, "-.-..-+"},
		},
	},
	{
		verify.Source{
			Cite: "Farzad and O'Neal 1993, ASHRAE Transactions 99(1), charge of a unit with a " +
				"short tube",
			Kind: verify.FromMemory,
		},
		[]rule{{Undercharge, signature.Fixed, "-+--+.."}, {Overcharge, signature.Fixed, ".-++..."}},
	},
}

// hardly is what a rule means by no change, in kelvin at the gravest severity.
const hardly = 2.0

// Each published direction is that of the signature at its gravest, in the
// weather of the rating test.
func TestPublishedDirections(t *testing.T) {
	for _, p := range published {
		cells, agree := 0, 0
		for _, r := range p.rules {
			table := signature.For(r.device)
			levels := table.Cause(string(r.fault))
			at := table.Sound.At(signature.Rated, signature.UsualFluid)
			shift := levels[len(levels)-1].Shift(at)
			for c, want := range r.signs {
				moved := 0.0
				for _, part := range columns[c] {
					moved += part.sign * shift[part.feature]
				}
				if want == '.' {
					continue
				}
				cells++
				ok := want == '+' && moved > 0 || want == '-' && moved < 0 ||
					want == '0' && math.Abs(moved) < hardly
				if ok {
					agree++
				} else {
					t.Logf("%s, %s: column %d moves by %+.2f K, rule %c", p.source.Cite, r.fault,
						c+1, moved, want)
				}
			}
		}
		verify.Value(
			t, p.source, "directions of readings with faults that the signatures share", "cells",
			float64(cells), float64(agree), 0,
		)
	}
}

// A machine whose stated readings, and no others, have moved as the rule says
// and as far as the fault makes them move is diagnosed as the rule says.
func TestPublishedRulesDiagnosed(t *testing.T) {
	for _, p := range published {
		named := 0
		for _, r := range p.rules {
			table := signature.For(r.device)
			levels := table.Cause(string(r.fault))
			at := table.Sound.At(signature.Rated, signature.UsualFluid)
			v := table.Sound.Mean(at)
			d := levels[len(levels)-1].Shift(at)
			for f := range v {
				v[f] += d[f]
			}
			e := reads(signature.Rated, v)
			e.Metering = refrigerant.FixedRestrictor
			if r.device == signature.Valve {
				e.Metering = refrigerant.TXV
			}
			leaveOut(&e, r)
			answer := Infer(e)
			if got := Code(answer.Explanations[0].Code()); got == r.fault {
				named++
			} else {
				t.Logf("%s: pattern %s of %s named %s (%.2f)", p.source.Cite, r.signs, r.fault, got,
					answer.Explanations[0].Probability)
			}
		}
		verify.Value(
			t, p.source, "rule patterns diagnosed as the rule says", "patterns",
			float64(len(p.rules)), float64(named), 0,
		)
	}
}

// leaveOut drops the readings that the rule does not speak of.
func leaveOut(e *Evidence, r rule) {
	e.SupplyWetBulb = nil
	if r.signs[1] == '.' {
		e.SuctionLine = nil
	}
	if r.signs[3] == '.' {
		e.LiquidLine = nil
	}
	if r.signs[4] == '.' {
		e.DischargeLine = nil
	}
	if r.signs[5] == '.' {
		e.CondenserLeaving = nil
	}
	if r.signs[6] == '.' {
		e.SupplyDryBulb = nil
	}
}
