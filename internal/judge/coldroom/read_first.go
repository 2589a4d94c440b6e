package coldroom

import (
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// stop is first where the machine may harm itself as it runs.
func (p *planner) stop() bool {
	d := p.dangers.Stop()
	if d != nil {
		p.steps = append(p.steps, modes.Do(modes.Stop).Because(d.Says))
		p.unjudged = d.Says
	}
	return d != nil
}

// opened: a circuit that was open is charged by weight.
func (p *planner) opened() bool {
	if !p.c.Seen.SealedSystemOpened {
		return false
	}
	p.unjudged = fact.New("charge.cold-opened")
	p.headline = fact.New("headline.cold-weigh")
	p.closed()
	return true
}

// early: readings that are not those of the machine as it keeps its box.
func (p *planner) early() bool {
	wait := settled - p.c.Running
	switch {
	case p.unjudged.Code != "":
		return false
	case p.c.ReadBeforeMove:
		p.unjudged = fact.New("charge.read-before-move")
		wait = settled
	case p.c.Running > 0 && wait > 0 && !p.c.Seen.CoilIced:
		p.unjudged = fact.New("charge.cold-early", fact.Of("running", p.c.Running))
	default:
		return false
	}
	p.headline = fact.New("headline.cold-early", fact.Of("why", fact.Term(p.unjudged.Code))).
		With(p.unjudged.Values...)
	p.add("step.cold-run", fact.Of("wait", wait.Round(time.Minute)))
	p.add(modes.ReadAgain)
	return true
}

// movedMuch: a good part of the whole charge has been moved, and it is still not right: what else
// lets vapor into the line is looked for, and all of it is weighed in anew.
func (p *planner) movedMuch() bool {
	share := movedShare(p.c)
	if share <= charge.MostMoved() || p.b.cause(sound) >= likely || p.stopped() ||
		p.k.added && p.b.cause(reserve) > p.b.cause(undercharge) {
		return false
	}
	p.unjudged = fact.New("charge.moved-much", fact.Of("share", fact.Share(share)))
	p.headline = fact.New("headline.moved-much")
	p.add(modes.Halt, p.unjudged.Values...)
	p.look("cold-drier-drop", "cold-receiver-low", "cold-head-holds", "cold-glass")
	p.putRight()
	p.add(modes.FindLeak)
	if p.asked != nil {
		p.add(modes.LeaveCharge)
	} else {
		p.wholeCharge()
	}
	p.watch()
	return true
}

// movedShare is the part of the whole charge that has been moved; zero where that is not known.
func movedShare(c *modes.Case) float64 {
	if c.WholeCharge <= 0 {
		return 0
	}
	return math.Abs(float64(c.Moved / c.WholeCharge))
}

// least is how many readings a belief starts from.
const least = 3

// unread asks for the readings that a judgement starts from.
func (p *planner) unread() bool {
	has := 0
	for _, f := range []int{
		signature.Difference, signature.Superheat, signature.Subcooling, signature.OverOutdoor,
	} {
		if p.k.read(f) {
			has++
		}
	}
	if has >= least || has >= 1 && p.unjudged.Code != "" {
		return false
	}
	if p.iced() { // ice that was seen is melted before anything is read
		return true
	}
	c := p.c
	for _, r := range []struct {
		name string
		has  bool
	}{
		{"suctionPressure", c.SuctionPressure != nil}, {"suctionLine", c.SuctionLine != nil},
		{"liquidPressure", c.LiquidPressure != nil}, {"liquidLine", c.LiquidLine != nil},
		{"returnDryBulb", c.ReturnDryBulb != nil}, {"outdoorDryBulb", c.OutdoorDryBulb != nil},
	} {
		if !r.has {
			p.missing = append(p.missing, r.name)
		}
	}
	terms := modes.ReadingTerms(p.missing)
	if p.unjudged.Code == "" {
		p.unjudged = fact.New("charge.cold-unread", fact.Of("readings", terms))
		p.headline = fact.New("headline.cold-unread")
	}
	if p.c.ReturnDryBulb != nil && !p.stopped() { // the eye wants no gauges
		p.look(
			"cold-coil-iced", "cold-evaporator-fans", "cold-condenser-dirt",
			"cold-condenser-fan-stands",
		)
	}
	p.putRight()
	p.add(modes.Read, fact.Of("readings", terms))
	return true
}

// stopped says that the plan begins with a stop.
func (p *planner) stopped() bool {
	return len(p.steps) > 0 && p.steps[0].Do.Code == modes.Stop
}

// complained has looked at what was complained of before a machine is left alone.
func (p *planner) complained() {
	if p.c.Complaint == "water leak" {
		p.add("step.cold-drain")
	}
	if p.c.Complaint != "frozen coil" || p.stopped() {
		return
	}
	for i := range looks {
		l := &looks[i]
		if (l.code == "cold-coil-iced" || l.code == "cold-defrost-works" && p.k.heated) &&
			p.k.open(l) && !slices.Contains(p.looks, l) {
			p.askFor(l)
		}
	}
}
