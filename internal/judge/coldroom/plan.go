package coldroom

import (
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// settled is how long a machine runs after a start, a defrost or a move of refrigerant before
// its readings count (common practice, no source).
const settled = 15 * time.Minute

// sure is the chance from which a circuit is opened for a shortage that only a level shows.
const sure = 0.75

// A planner puts the steps in order: what keeps the machine from harm, the food, and then the
// machine.
type planner struct {
	c       *modes.Case
	k       *known
	b       *belief
	ranking []ranked
	dangers modes.Dangers

	headline fact.Fact
	steps    []modes.Step
	weighIn  *charge.Weighing
	asked    *asked
	// looks are those of the plan: what they are after is mended where they find it.
	looks []*look
	// unjudged is why the charge is not judged, hold why no refrigerant is moved; missing
	// are the readings that are needed.
	unjudged, hold fact.Fact
	missing        []string
}

func (p *planner) add(code fact.Code, values ...fact.Value) *modes.Step {
	s := modes.Do(code, values...)
	if e, own := effects[code]; own {
		s.Effect = e
	}
	p.steps = append(p.steps, s)
	return &p.steps[len(p.steps)-1]
}

// effects of the steps of this mode alone.
var effects = map[fact.Code]modes.Effect{
	"step.cold-oil":                    {Running: true},
	"step.cold-run":                    {Running: true, Waits: true},
	"step.cold-add":                    {Starts: true, Moves: true, Adds: true},
	"step.cold-add-share":              {Starts: true, Moves: true, Adds: true},
	"step.cold-add-level":              {Starts: true, Moves: true, Adds: true},
	"step.cold-add-level-share":        {Starts: true, Moves: true, Adds: true},
	"step.cold-mend-leak":              {Stops: true, Opens: true},
	"step.cold-recover":                {Running: true, Moves: true},
	"step.cold-level":                  {Running: true},
	"step.cold-recover-standing":       {Moves: true},
	"step.cold-recover-standing-share": {Moves: true},
	"step.cold-start-level":            {Starts: true},
	"step.cold-start-frost":            {Starts: true},
	"step.cold-weigh-frost":            {Moves: true, Adds: true},
	"step.cold-restart":                {Starts: true},
	"step.cold-watch":                  {Running: true},
	"step.cold-weigh-glass":            {Moves: true, Adds: true},
	"step.cold-defrost-now":            {Waits: true},
	"step.cold-recover-share":          {Running: true, Moves: true},

	"mend.cold-compressor-stopped": {Starts: true},
}

func (p *planner) plan() {
	stop := p.stop()
	if !stop && p.dangers.Flood() != nil {
		p.add(modes.FeelCompressor)
	}
	switch {
	case p.opened():
	case p.contradicts():
	case p.early():
	case p.unread():
	case p.movedMuch():
	case p.iced():
	default:
		p.byBelief()
	}
	if p.headline.Code == "" {
		p.headline = p.answer()
	}
	p.foodAway()
	p.food()
}

// believed reports whether the belief is worth telling although the charge is not judged.
func (p *planner) believed() bool {
	return p.missing == nil && p.headline.Code != "headline.cold-early" &&
		!p.c.Seen.SealedSystemOpened
}

func (p *planner) rank(code string) *ranked {
	for i := range p.ranking {
		if p.ranking[i].code == code {
			return &p.ranking[i]
		}
	}
	return &p.ranking[0]
}

// byBelief looks where a look is worth it, and mends what is likely.
func (p *planner) byBelief() {
	stopped := p.stopped()
	top := &p.ranking[0]
	if p.c.ReturnDryBulb == nil && !stopped { // how warm the box is says what to look for
		p.add(modes.Read, fact.Of("readings", fact.Terms{"reading.returnDryBulb"})).
			Field = "returnDryBulb"
	} else {
		p.look()
	}
	p.bulb()
	low := p.low()
	p.heldUp(low)
	if low >= likely && p.dangers.Tell(suctionInVacuum) && p.asked == nil && !p.beside() {
		p.add(modes.FindLeak)
		p.wholeCharge()
		return
	}
	waits := p.asked != nil || p.has(modes.Read) || p.beside()
	p.missingCharge(low, waits)
	p.mends(low, waits || stopped)
	p.slowLookLast()
	if low >= likely && waits && (stopped || p.beside()) {
		p.add(modes.FindLeak)
	}
	p.suctionLine()
	p.tooCold()
	p.complained()
	p.putRight()
	p.oilMarks()
	asks := p.looks != nil || p.has(inSight...) ||
		p.has(modes.Read, "step.cold-too-cold", modes.FindLeak) ||
		slices.ContainsFunc(p.steps, func(s modes.Step) bool { return s.Cause != "" })
	if top.code == sound && !asks && low < likely && !stopped {
		if !p.has("step.cold-drain") {
			p.add("step.cold-leave")
		}
		return
	}
	if stopped && len(p.steps) == 1 {
		p.add("step.cold-why-stopped")
	}
	if p.hold.Code != "" {
		p.add(modes.LeaveCharge)
	}
	p.oil()
	if stopped {
		runs := func(s modes.Step) bool { return s.Starts && s.Cause == "" }
		if !slices.ContainsFunc(p.steps, runs) {
			p.add("step.cold-restart")
		}
		return
	}
	p.watch()
}

// beside says that something was seen, or is likely, that is put right before any refrigerant is
// moved.
func (p *planner) beside() bool {
	for i := range sights {
		if s := &sights[i]; s.coil && p.c.Moved == 0 && p.k.seen(s.look) {
			return true
		}
	}
	return slices.ContainsFunc(p.ranking, func(r ranked) bool {
		return r.chance >= likely && r.code != sound && !p.ofCharge(&r)
	})
}

// low is the chance that refrigerant is missing, whether it shows or not.
func (p *planner) low() float64 { return p.b.cause(undercharge) + p.b.cause(reserve) }

func (p *planner) ofCharge(r *ranked) bool {
	return slices.Contains([]string{undercharge, reserve, overcharge, gas}, r.code)
}

// watch ends a plan: the box tells whether it was right.
func (p *planner) watch() {
	if p.has("step.cold-leave", "step.cold-run") {
		return
	}
	p.add(modes.ReadAgain)
	p.add("step.cold-watch", fact.Amount("box", p.k.usual.Box.Value))
}

func (p *planner) has(codes ...fact.Code) bool {
	return modes.Has(p.steps, codes...)
}
