package heatpump

import (
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// ways are what is done about the conditions that spoil the readings of a machine that heats.
var ways = map[string]fact.Code{
	"panels-off": modes.PanelsOn, "run-short": modes.RunOn, "just-moved": modes.Wait,
}

func (p *planner) spoiled() bool {
	for _, o := range p.c.Spoils {
		way, ours := ways[o.Code]
		if !ours || p.has(modes.Stop) && way != modes.PanelsOn {
			continue
		}
		if p.why.IsZero() {
			p.why = o.Says
		}
		p.add(modes.Do(way, modes.WaitOf(o.Says)...).Because(o.Says))
	}
	if p.why.IsZero() {
		return false
	}
	p.blind = true
	p.dirt()
	p.thaw()
	p.add(modes.Do(modes.ReadAgain))
	return true
}

// notHeating: a supply colder than the room is a defrost, or a machine in cooling.
func (p *planner) notHeating() bool {
	s, r := p.c.SupplyDryBulb, p.c.ReturnDryBulb
	const colder = quantity.TemperatureDelta(4 / 1.8)
	if s == nil || r == nil || r.Value.Sub(s.Value) < colder {
		return false
	}
	p.why = fact.New("charge.heating-cold-supply",
		fact.Amount("supply", s.Value), fact.Amount("return", r.Value))
	p.blind = true
	p.add(modes.Do("step.heating-defrosting").Because(p.why), modes.Do(modes.ReadAgain))
	return true
}

// notARoom: water freezes in the pipes of a room so cold; a temperature typed in °C for °F reads so.
func (p *planner) notARoom() bool {
	const coldest = quantity.Temperature((30 + 459.67) / 1.8)
	r := p.c.ReturnDryBulb
	if r == nil || r.Value >= coldest {
		return false
	}
	p.why = fact.New("charge.heating-cold-room", fact.Amount("return", r.Value))
	p.blind = true
	p.add(modes.Do(modes.Reread).Because(p.why))
	return true
}

func (p *planner) readFirst() {
	var missing fact.Terms
	for _, f := range []struct {
		name string
		has  bool
	}{
		{"suctionPressure", p.c.SuctionPressure != nil}, {"suctionLine", p.c.SuctionLine != nil},
		{"liquidPressure", p.c.LiquidPressure != nil}, {"liquidLine", p.c.LiquidLine != nil},
		{"outdoorDryBulb", p.c.OutdoorDryBulb != nil}, {"returnDryBulb", p.c.ReturnDryBulb != nil},
		{"supplyDryBulb", p.c.SupplyDryBulb != nil},
	} {
		circuit := strings.HasPrefix(f.name, "suction") || strings.HasPrefix(f.name, "liquid")
		if !f.has && !(circuit && p.c.NoLiquidPort) {
			missing = append(missing, fact.Term("reading."+f.name))
			p.j.Charge.Missing = append(p.j.Charge.Missing, f.name)
		}
	}
	p.why = fact.New("charge.heating-few")
	p.dirt()
	p.eyesFirst()
	if p.c.Running == 0 {
		p.add(modes.Do(modes.RunOn, fact.Of("wait", charge.ShortestRun())))
	}
	if len(missing) > 0 {
		p.add(modes.Do(modes.Read, fact.Of("readings", missing)))
		return
	}
	p.add(modes.Do(modes.MakersChart, fact.Of("mode", fact.Term("mode.heating"))))
}

// eyesFirst has done what wants no gauges: ice or dirt outdoors, the air indoors; of a coil that is
// iced, what iced it.
func (p *planner) eyesFirst() {
	eyes := []string{"outdoor-ice", "outdoor-coil", "indoor-air-path"}
	if p.c.Seen.CoilIced {
		eyes = ofIce
	}
	for _, code := range eyes {
		p.askFor(code)
	}
}

// dirt and ice that were seen are cleared; there is nothing to find out about them.
func (p *planner) dirt() {
	if !p.has(modes.Stop) {
		p.thaw()
	}
	if p.c.Seen.FilterDirty {
		p.add(modes.Do(modes.CleanFilter))
	}
	if p.c.Seen.OutdoorCoilDirty {
		p.add(modes.Do(modes.CleanOutdoor))
	}
}

// thaw melts the ice that stays on the outdoor coil, which the machine itself does as a rule.
func (p *planner) thaw() {
	if p.c.Seen.CoilIced && !p.has("step.heating-thaw") {
		thaw := modes.Do("step.heating-thaw")
		thaw.Effect = modes.Effect{Running: true}
		p.add(thaw)
	}
}
