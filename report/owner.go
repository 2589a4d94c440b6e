package report

import (
	"slices"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/page/paper"
	"github.com/satline/satline/quantity/fact"
)

// OwnerFacts is what the person who pays is told, in plain words: what was found, what can
// harm the machine, what comes next. No figure of the trade is in it, no chance, and nobody's
// fault.
func OwnerFacts(a satline.Assessment) (found, dangers, next []fact.Fact) {
	for _, d := range a.Dangers {
		switch code, of := ownerDangers[d.Code]; {
		case !of:
			say(&dangers, "owner.danger.electrical")
		case code != "":
			say(&dangers, code)
		}
	}
	return ownerFound(a), dangers, ownerNext(a)
}

// say adds a fact of the code, once.
func say(to *[]fact.Fact, code fact.Code) {
	if !slices.ContainsFunc(*to, func(f fact.Fact) bool { return f.Code == code }) {
		*to = append(*to, fact.New(code))
	}
}

func ownerFound(a satline.Assessment) (found []fact.Fact) {
	judged := a.Charge.Outcome != satline.ChargeNotJudged ||
		a.Headline.Code == "headline.cause" ||
		len(a.Findings) > 0 && a.Mode.Mode != satline.Cooling
	if code := ofHeadline[a.Headline.Code]; code != "" {
		say(&found, code)
		return found
	}
	for _, f := range a.Findings {
		if judged && f.Chance >= likely && f.Cause != "sound" && f.Cause != "cold-sound" {
			code := fact.Code("owner.cause." + f.Cause)
			if ofInstrument(f.Cause) {
				code = "owner.cause.measuring"
			}
			say(&found, code)
		}
	}
	if e := a.Electrical; e != nil && !e.Finding.IsZero() {
		part, _ := e.Finding.Value("part")
		found = append(found, fact.New("owner.electrical", part))
	}
	switch {
	case len(found) > 0:
	case a.Headline.Code == "headline.open" && a.Mode.Mode == satline.Refrigeration:
		say(&found, "owner.open")
	case a.Charge.Outcome == satline.ChargeInBand:
		say(&found, "owner.sound")
	case !judged && a.Mode.Mode != 0:
		say(&found, "owner.not-judged")
	case a.Mode.Mode == satline.Heating && a.Headline.Code == "headline.heating-sound":
		say(&found, "owner.heating-sound")
	case a.Mode.Mode == 0:
		say(&found, "owner.other-mode")
	default:
		say(&found, "owner.open")
	}
	if a.Freeze != nil && (a.Freeze.Outcome == airside.FrostForming || len(a.Freeze.Causes) > 0) {
		say(&found, "owner.ice")
	}
	return found
}

// ofHeadline are what is found where the headline says more than its cause.
var ofHeadline = map[fact.Code]fact.Code{
	"headline.cold-pull-down": "owner.cold-pulls-down",
	"headline.cold-too-small": "owner.cold-too-small",
}

func ownerNext(a satline.Assessment) (next []fact.Fact) {
	does := func(codes ...fact.Code) bool {
		return slices.ContainsFunc(
			a.Plan, func(s satline.Step) bool { return slices.Contains(codes, s.Do.Code) },
		)
	}
	switch {
	case slices.ContainsFunc(a.Plan, func(s satline.Step) bool { return s.Stops }):
		say(&next, "owner.next.off")
	case does(satline.StepLeave, "step.cold-leave"):
		say(&next, "owner.next.nothing")
	}
	switch {
	case does(satline.StepMendLeak, "step.cold-mend-leak"):
		say(&next, "owner.next.leak")
	case does(satline.StepAdd, satline.StepAddLittle):
		say(&next, "owner.next.add")
	case does(
		satline.StepRecover, satline.StepRecoverLittle,
		"step.cold-recover", "step.cold-recover-share",
	):
		say(&next, "owner.next.recover")
	case does(
		satline.StepWeighIn, satline.StepWeighInLabel,
		"step.cold-weigh-glass", "step.cold-weigh-frost",
	):
		say(&next, "owner.next.weigh-in")
	case does("mend.cold-product"):
		say(&next, "owner.next.watch")
	case a.Electrical != nil && !a.Electrical.Finding.IsZero(),
		slices.ContainsFunc(a.Plan, func(s satline.Step) bool { return s.Cause != "" }):
		say(&next, "owner.next.mend")
	case !does(satline.StepLeave, "step.cold-leave"):
		say(&next, "owner.next.look")
	}
	return next
}

// likely is the chance from which a cause is told to the owner.
const likely = 0.5

func ofInstrument(cause string) bool {
	return slices.ContainsFunc(
		diagnose.WrongInstruments(),
		func(f diagnose.Fault) bool { return string(f.Signature) == cause },
	)
}

// owner lays out what the person who pays is told.
func (r reporter) owner() []paper.Block {
	found, dangers, next := OwnerFacts(*r.a)
	block := func(heading string, facts []fact.Fact) paper.Block {
		b := paper.Block{Heading: r.book.Term(heading)}
		for _, f := range facts {
			b.Paragraphs = append(b.Paragraphs, r.book.Say(f))
		}
		return b
	}
	cautions := []fact.Fact{fact.New("owner.licensed")}
	if f := r.a.Refrigerant; f.Flammable {
		cautions = append(cautions, fact.New("owner.flammable", fact.Of("fluid", f.Designation)))
	}
	return []paper.Block{
		block("heading.owner-found", found), block("heading.owner-danger", dangers),
		block("heading.owner-next", next), block("heading.cautions", cautions),
	}
}

// ownerDangers says in plain words what each danger to the compressor means; that of a leak that
// burns stands among the cautions.
var ownerDangers = map[string]fact.Code{
	"floodback": "owner.danger.liquid", "slugging": "owner.danger.liquid",
	"superheat-low": "owner.danger.liquid", "discharge-cool": "owner.danger.liquid",
	"discharge-hottest": "owner.danger.hot", "heating-discharge-hot": "owner.danger.hot",
	"discharge-hot":             "owner.danger.hot",
	"compression-ratio-highest": "owner.danger.strain",
	"compression-ratio-high":    "owner.danger.strain",
	"condensing-highest":        "owner.danger.strain", "condensing-high": "owner.danger.strain",
	"evaporating-coldest": "owner.danger.ice", "evaporating-cold": "owner.danger.ice",
	"current-highest": "owner.danger.current", "current-high": "owner.danger.current",
	"suction-in-vacuum": "owner.danger.vacuum",
	"cold-food":         "owner.danger.food", "cold-frozen-food": "owner.danger.food",
	"cold-superheat-low": "owner.danger.liquid", "cold-suction-warm": "owner.danger.hot",
	"cold-ratio": "owner.danger.strain", "leak-burns": "",
}
