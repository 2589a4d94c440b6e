package heatpump

import (
	"slices"
	"sort"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// mendBeside puts right what is worth it beside the cause that was decided on.
func (p *planner) mendBeside(d decision) {
	if ofCharge(d.mend) {
		return
	}
	for i := range p.ranked {
		s := &p.ranked[i]
		if s.chance >= worth && s.chance > p.b.of(sound) && s.code != sound &&
			!ofCharge(s.code) && s.code != d.mend && !s.lookedAt(d.looks) &&
			(s.chance >= likely || !s.denied(p.c)) {
			p.mend(s.code)
		}
	}
}

// instrumentsFirst puts what is wrong with an instrument before what is wrong with the machine:
// it takes minutes, and the machine is judged by it. Mends come last in a plan so far.
func (p *planner) instrumentsFirst() {
	at := slices.IndexFunc(p.j.Steps, func(s modes.Step) bool { return s.Cause != "" })
	if at < 0 {
		return
	}
	rank := func(s modes.Step) int {
		if s.Cause != "" && p.standing(s.Cause).ofInstrument {
			return 0
		}
		return 1
	}
	after := p.j.Steps[at:]
	sort.SliceStable(after, func(i, j int) bool { return rank(after[i]) < rank(after[j]) })
}

func (p *planner) standing(code string) *standing {
	i := slices.IndexFunc(p.ranked, func(s standing) bool { return s.code == code })
	return &p.ranked[i]
}

// mend puts a cause right, by the name of its fault where one is likeliest by far.
func (p *planner) mend(code string) {
	if code == p.secured || code == contradiction {
		return
	}
	if code == gas && (p.askFor("liquid-clamp-second") || p.askFor(atRest)) {
		return // no charge is thrown away before the gas is proved, and a clamp takes minutes
	}
	s := p.standing(code)
	name, opens := code, false
	if len(s.faults) > 0 && s.faults[0].Chance >= 0.7 {
		name = s.faults[0].Fault
		i := slices.IndexFunc(s.cause.faults, func(f fault) bool { return f.code == name })
		opens = s.cause.faults[i].opens
	}
	if p.has(cleared[name]) {
		return
	}
	if other, ok := inHeating[name]; ok {
		name = other
	}
	for _, x := range found {
		if name == x.name && slices.Contains(p.c.Answers, diagnose.Answer{Code: x.look, Yes: true}) {
			name = x.then
		}
	}
	if name == "valve-before-compressor" && (answered(p.c, "reversing-valve") ||
		answered(p.c, "pressures-at-stop")) {
		name = code
	}
	if clear := (diagnose.Answer{Code: "indoor-air-path"}); code == lowIndoorAir &&
		slices.Contains(p.c.Answers, clear) {
		name = "air-beyond"
	}
	chance := fact.Of("chance", fact.Share(s.chance))
	p.add(modes.Step{
		Do: fact.New(fact.Code("mend."+name), chance), Cause: code, Chance: s.chance,
		// A drop of temperature shows while liquid flows.
		Effect: modes.Effect{Opens: opens, Running: code == "restriction"},
	})
}

// cleared are the steps that put right what was seen, by the fault that it is.
var cleared = map[string]fact.Code{
	"filter": modes.CleanFilter, "outdoor-dirt": modes.CleanOutdoor,
}

// atRest is the look that proves a gas in the refrigerant.
const atRest = "standing-pressure"

// found are the names of what is proved by its look, and how that is put right then.
var found = []struct{ name, look, then string }{
	{"reversing-valve-leak", reversing, "reversing-valve-found"},
	{reversing, reversing, "reversing-valve-found"},
	{gas, atRest, "gas-proved"},
}

// inHeating are causes that are gone about otherwise than in cooling.
var inHeating = map[string]string{
	"restriction": "heating-restriction", "overfeed": "heating-overfeed",
	notPumping: "heating-not-pumping", "vapor-leak": "valve-before-compressor",
	"compressor-valves": "valve-before-compressor",
}

// inSight are the steps that put right what a look found, whatever else is the matter, by the
// look, with the causes whose mending does so too.
var inSight = []struct {
	look   string
	step   fact.Code
	causes []string
}{
	{"indoor-air-path", "step.seen-indoor", []string{lowIndoorAir}},
	{"outdoor-coil", "step.seen-outdoor", []string{outdoorAir}},
	{"strips-current", "step.heating-seen-strips", []string{strips}},
	{"defrost-test", "step.heating-seen-defrost", []string{defrost, outdoorAir}},
	{"check-valves", "step.heating-seen-check", []string{"overfeed"}},
	{"valve-bulb", "step.heating-seen-bulb", []string{"overfeed", "restriction"}},
}

// putRight adds what a look found and no step of the plan is for yet.
func (p *planner) putRight() {
	for _, s := range inSight {
		found := slices.Contains(p.c.Answers, diagnose.Answer{Code: s.look, Yes: true})
		mended := slices.ContainsFunc(p.j.Steps, func(x modes.Step) bool {
			return slices.Contains(s.causes, x.Cause)
		})
		cleared := s.look == "indoor-air-path" && p.has(modes.CleanFilter) ||
			s.look == "outdoor-coil" && p.has(modes.CleanOutdoor)
		if found && !mended && !cleared {
			p.add(modes.Do(s.step))
		}
	}
}
