package coldroom

import (
	"math"
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Where nobody read the air at the condenser, it is that of a room that machines stand in.
const (
	someOutdoor      = 300
	someOutdoorDoubt = 5
)

// evidenceOf is what a belief is made of; the error is that of a refrigerant that no such
// machine runs on.
func evidenceOf(c *modes.Case) (*known, error) {
	f, err := cyclefluid.New(c.Fluid)
	if err != nil {
		return nil, err
	}
	k := &known{
		fluid: f, answers: map[string]bool{},
		valve: c.Metering != refrigerant.Capillary && c.Metering != refrigerant.FixedRestrictor,
	}
	box := c.ReturnDryBulb
	k.usual = usualOf(c)
	if k.heated = k.usual.Frozen; c.Room.Defrost != 0 {
		k.heated = c.Room.Defrost != coldroom.OffCycle
	}
	at := k.usual.Box
	if box != nil {
		at = *box
	}
	k.weather, k.doubt = place{float64(at.Value), someOutdoor}, place{at.Std, someOutdoorDoubt}
	if t := c.OutdoorDryBulb; t != nil {
		k.weather.outdoor, k.doubt.outdoor = float64(t.Value), t.Std
	}
	k.overloaded = runOf(c) > 24*time.Hour
	k.readings(c, at)
	k.runsOn(c.Room.Setpoint != nil)
	k.sights(c)
	k.vacuum = !runsInVacuum(c, k) && c.Dangers.Tell(suctionInVacuum)
	k.hottest = c.Dangers.Tell(headHighest)
	for _, a := range c.Answers {
		k.answers[a.Code] = a.Yes
	}
	k.adds(c)
	if _, answered := k.answers["cold-drier-drop"]; !answered {
		if drops, known := c.LiquidDrops(); known {
			k.answers["cold-drier-drop"] = drops
		}
	}
	k.follow(c)
	k.line()
	if _, asked := k.answers["cold-glass"]; asked && c.Room.Receiver == nil {
		k.usual.Receiver = max(k.usual.Receiver, 0.9)
	}
	return k, nil
}

// usualOf is what is usual for the room, by the temperature found in it where nobody said more.
func usualOf(c *modes.Case) coldroom.Usual {
	if box := c.ReturnDryBulb; box != nil {
		return c.Room.Usual(&box.Value)
	}
	return c.Room.Usual(nil)
}

func (k *known) readings(c *modes.Case, box quantity.Uncertain[quantity.Temperature]) {
	between := func(f int, a, b *quantity.Uncertain[quantity.Temperature]) {
		if a != nil && b != nil {
			k.value[f] = float64(a.Value.Sub(b.Value))
			k.std[f] = max(math.Hypot(a.Std, b.Std), 0.05)
		}
	}
	between(signature.Difference, &box, c.EvaporatingDew)
	between(signature.Superheat, c.SuctionLine, c.EvaporatingDew)
	between(signature.BulbSuperheat, c.BulbLine, c.EvaporatingDew)
	between(signature.Split, c.ReturnDryBulb, c.SupplyDryBulb)
	between(signature.Subcooling, c.CondensingBubble, c.LiquidLine)
	between(signature.Hot, c.DischargeLine, c.CondensingDew)
	between(signature.Rise, c.CondenserLeaving, c.OutdoorDryBulb)
	between(signature.OverOutdoor, middleOf(c), c.OutdoorDryBulb)
	between(signature.OverBox, c.ReturnDryBulb, &k.usual.Box)
	if a := c.Current; a != nil && c.RatedLoadCurrent > 0 {
		k.value[signature.Current] = float64(a.Value) / float64(c.RatedLoadCurrent)
		k.std[signature.Current] = max(a.Std/float64(c.RatedLoadCurrent), 0.01)
	}
}

// runsOn finds a machine that runs on in a box colder than it is kept, by more than a thermostat
// lets it swing: common practice, no source.
func (k *known) runsOn(kept bool) {
	const swing, over = 2.5 / 1.8, signature.OverBox // K
	if kept && k.read(over) && k.value[over]+k.std[over] < -swing {
		k.tooCold = true
	}
}

// line finds a suction line that warms its vapor more than such lines do: common practice, no
// source. Where a second clamp agrees with the first, what it reads at the compressor tells of the
// line, not of the coil.
func (k *known) line() {
	const cooler, freezer = 25 / 1.8, 45 / 1.8 // K
	most := cooler
	if k.usual.Frozen {
		most = freezer
	}
	gain := k.value[signature.Superheat] - k.value[signature.BulbSuperheat]
	if !k.valve || !k.read(signature.Superheat) || !k.read(signature.BulbSuperheat) || gain < most {
		return
	}
	k.gain = quantity.TemperatureDelta(gain)
	if wrong, asked := k.answers["cold-second-clamp"]; asked && !wrong {
		k.std[signature.Superheat], k.std[signature.Hot] = 0, 0
	}
}

// middleOf is the condensing temperature between bubble and dew point; nil where not read.
func middleOf(c *modes.Case) *quantity.Uncertain[quantity.Temperature] {
	b, d := c.CondensingBubble, c.CondensingDew
	if b == nil || d == nil {
		return nil
	}
	return &quantity.Uncertain[quantity.Temperature]{
		Value: b.Value.Add(d.Value.Sub(b.Value) / 2), Std: (b.Std + d.Std) / 2,
	}
}

// adds finds refrigerant that was added and is not in vain: little so far, or the glass is clear of
// bubbles by now.
func (k *known) adds(c *modes.Case) {
	share := movedShare(c)
	bubbles, seen := k.answers["cold-glass"]
	k.added = c.Moved > 0 && (share <= charge.MostMoved() || share < 1 && seen && !bubbles)
}

// sights are looks that were answered without being asked for.
func (k *known) sights(c *modes.Case) {
	s := &c.Seen
	for _, x := range []struct {
		seen bool
		look string
	}{
		{s.CoilIced, "cold-coil-iced"}, {s.OutdoorCoilDirty, "cold-condenser-dirt"},
		{s.DoorsOpen, "cold-door-leaks"},
	} {
		if x.seen && !slices.Contains(k.hints, x.look) {
			k.hints = append(k.hints, x.look)
		}
	}
	// How warm the box is says more than a complaint.
	k.complaint, k.stains = s.NotCoolingComplaint && c.ReturnDryBulb == nil, s.OilStains
	k.weighed = s.ChargeWeighed && c.Moved == 0
}
