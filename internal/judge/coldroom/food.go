package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// foodAway finds the food another cold place before the machine is opened, which takes hours.
func (p *planner) foodAway() {
	opens := slices.IndexFunc(p.steps, func(s modes.Step) bool {
		return s.Opens || s.Do.Code == modes.RecoverRest || s.Do.Code == modes.Nitrogen
	})
	warm := p.dangers.Tell("cold-food", "cold-frozen-food")
	if opens < 0 || !p.c.Room.Application.KeepsFood() || warm {
		return
	}
	p.steps = slices.Insert(p.steps, opens, modes.Do(foodAway))
}

const foodAway = fact.Code("step.cold-food-away")

// food comes before everything that can wait, where it may get too warm or the machine is held up.
// A box that is as cold as it is kept, with a machine that runs on, is left in peace.
func (p *planner) food() {
	const screen = 3 // steps that are read at once
	told := modes.Has(p.steps[:min(screen, len(p.steps))], foodAway)
	if !p.warms() && (told || !p.holdsUp()) {
		return
	}
	first := 0
	if p.stopped() || !p.dangers.Tell("cold-food", "cold-frozen-food") && p.c.ReturnDryBulb != nil &&
		len(p.steps) > 0 && p.steps[0].Do.Code == modes.FeelCompressor {
		first = 1 // what harms the compressor at once comes before food that is cold
	}
	p.steps = slices.Insert(p.steps, first, p.aboutFood())
}

// warms says that the box may be too warm or get so: it is unread, near the limit of its food or
// warmer than it is kept, or the machine stands or defrosts first.
func (p *planner) warms() bool {
	const near = quantity.TemperatureDelta(2 / 1.8)
	box := p.c.ReturnDryBulb
	return box == nil || p.stopped() || p.has("step.cold-defrost-now", "step.cold-start-frost") ||
		p.k.value[signature.OverBox] > warmBox ||
		p.c.Room.Application.KeepsFood() && box.Value > p.k.usual.FoodLimit().At.Add(-near)
}

// holdsUp says that the plan stops the machine or takes something in hand, for which it stands.
func (p *planner) holdsUp() bool {
	stopping := []string{"cold-standing", "cold-pump-down", "cold-defrost-works"}
	return p.has(inSight...) || slices.ContainsFunc(p.steps, func(s modes.Step) bool {
		return s.Stops || s.Opens || s.Cause != "" && s.Cause != clamp ||
			slices.Contains(stopping, s.Look)
	})
}

func (p *planner) aboutFood() modes.Step {
	if !p.c.Room.Application.KeepsFood() {
		return modes.Do("step.cold-room-warms")
	}
	limit := p.k.usual.FoodLimit()
	box := p.c.ReturnDryBulb
	frozen := ""
	if p.k.usual.Frozen {
		frozen = "-frozen"
	}
	at := fact.Amount("limit", limit.At)
	switch {
	case box == nil:
		return modes.Do(fact.Code("step.cold-food-unknown"+frozen), at)
	case box.Value > limit.At:
		return modes.Do(
			fact.Code("step.cold-food-move"+frozen), fact.Amount("box", box.Value), at,
		)
	}
	return modes.Do(fact.Code("step.cold-food"+frozen), fact.Amount("box", box.Value), at)
}

// tooCold has what should have stopped a machine seen to that runs on in a box colder than it is
// kept.
func (p *planner) tooCold() {
	if p.k.tooCold {
		p.add("step.cold-too-cold", fact.Amount("box", p.k.usual.Box.Value))
	}
}
