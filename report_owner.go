package satline

import (
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/paper"
	"github.com/satline/satline/quantity/fact"
)

// owner tells the person who pays, in plain words: no figure of the trade, no chance, and
// nobody's fault.
func (r reporter) owner() []paper.Block {
	a := r.a
	found := paper.Block{Heading: r.book.Term("heading.owner-found")}
	say := func(b *paper.Block, code fact.Code) { b.Paragraphs = append(b.Paragraphs, r.say(code)) }
	causes := 0
	if judged := a.Charge.Outcome != ChargeNotJudged; judged {
		for _, f := range a.Findings {
			if f.Chance >= likely && f.Cause != "sound" {
				code := fact.Code("owner.cause." + f.Cause)
				if ofInstrument(diagnose.Code(f.Cause)) {
					code = "owner.cause.measuring"
				}
				say(&found, code)
				causes++
			}
		}
	}
	switch {
	case causes > 0:
	case a.Charge.Outcome == ChargeInBand:
		say(&found, "owner.sound")
	case a.Charge.Outcome == ChargeNotJudged && a.Mode.Mode == Cooling:
		say(&found, "owner.not-judged")
	case a.Mode.Mode != Cooling:
		say(&found, "owner.other-mode")
	default:
		say(&found, "owner.open")
	}
	ice := a.Freeze != nil && (a.Freeze.Outcome == airside.FrostForming || len(a.Freeze.Causes) > 0)
	if ice {
		say(&found, "owner.ice")
	}
	blocks := []paper.Block{found}
	danger := paper.Block{Heading: r.book.Term("heading.owner-danger")}
	for _, d := range a.Dangers {
		text := r.say(ownerDangers[d.Code])
		if !slices.Contains(danger.Paragraphs, text) {
			danger.Paragraphs = append(danger.Paragraphs, text)
		}
	}
	next := paper.Block{Heading: r.book.Term("heading.owner-next")}
	does := func(of func(Step) bool) bool { return slices.ContainsFunc(a.Plan, of) }
	switch {
	case does(func(s Step) bool { return s.Stops }):
		say(&next, "owner.next.off")
	case does(func(s Step) bool { return s.Do.Code == StepLeave }):
		say(&next, "owner.next.nothing")
	}
	switch {
	case does(func(s Step) bool { return s.Do.Code == StepMendLeak }):
		say(&next, "owner.next.leak")
	case does(func(s Step) bool { return s.Do.Code == StepAdd || s.Do.Code == StepAddLittle }):
		say(&next, "owner.next.add")
	case does(func(s Step) bool { return s.Do.Code == StepRecover || s.Do.Code == StepRecoverLittle }):
		say(&next, "owner.next.recover")
	case does(func(s Step) bool { return s.Do.Code == StepWeighIn || s.Do.Code == StepWeighInLabel }):
		say(&next, "owner.next.weigh-in")
	case does(func(s Step) bool { return s.Cause != "" }):
		say(&next, "owner.next.mend")
	case !does(func(s Step) bool { return s.Do.Code == StepLeave }):
		say(&next, "owner.next.look")
	}
	caution := paper.Block{
		Heading:    r.book.Term("heading.cautions"),
		Paragraphs: []string{r.say("owner.licensed")},
	}
	if a.Refrigerant.Flammable {
		caution.Paragraphs = append(
			caution.Paragraphs,
			r.say("owner.flammable", fact.Of("fluid", a.Refrigerant.Designation)),
		)
	}
	return append(blocks, danger, next, caution)
}

// ownerDangers says in plain words what each danger to the compressor means.
var ownerDangers = map[string]fact.Code{
	"floodback": "owner.danger.liquid", "slugging": "owner.danger.liquid", "superheat-low": "owner.danger.liquid", "discharge-cool": "owner.danger.liquid",
	"discharge-hottest": "owner.danger.hot", "discharge-hot": "owner.danger.hot",
	"compression-ratio-highest": "owner.danger.strain", "compression-ratio-high": "owner.danger.strain",
	"condensing-highest": "owner.danger.strain", "condensing-high": "owner.danger.strain",
	"evaporating-coldest": "owner.danger.ice", "evaporating-cold": "owner.danger.ice",
	"current-highest": "owner.danger.current", "current-high": "owner.danger.current",
	"suction-in-vacuum": "owner.danger.vacuum",
}
