package cooling

import (
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// floods: liquid comes back, whatever makes it.
func (k *planner) floods() bool { return k.j.Dangers.Flood() != nil }

// leave: nothing to do, and nothing more to read. A machine that liquid comes back to is not
// left before it is known why.
func (k *planner) leave() {
	if k.c.Seen.WaterComplaint {
		k.Add(modes.OtherWater)
		return
	}
	if k.floods() {
		k.whyLiquid()
		return
	}
	complains := k.b.complains()
	if complains && k.seeAir(fact.Fact{}) {
		return // somebody called, whatever it reads now
	}
	lost := k.c.Seen.OilStains || k.c.NetMoved > 0
	if lost && !k.c.Seen.ChargeWeighed && !k.Has(modes.FindLeak) &&
		k.lookAt(leakLook, fact.Fact{}) {
		return // it went out somewhere, however little, and however right the charge is now
	}
	if k.readAside() || k.unread() || k.lookBehind() ||
		k.b.Healthy < likely && k.seeOthers() {
		return
	}
	if k.drawsMuch() {
		k.Add(modes.WhyCurrent)
		return
	}
	if k.c.Complaint == "noise" {
		k.Add(modes.FindNoise)
	}
	switch r := k.c.Reading; {
	case k.warmerDay():
	case r == nil || k.j.Charge.Outcome == modes.ChargeInBand:
		k.Add(modes.Leave)
	case r.Within():
		k.Add(modes.Leave).Why = r.Says
	default:
		k.chargeStays()
	}
	switch {
	case k.c.Seen.FrozenComplaint && k.b.present(diagnose.LowLoad):
		k.mend(diagnose.LowLoad)
	case complains:
		k.Add(modes.AskUse)
	}
}

// drawsMuch: the compressor draws more than its rated current, and nobody has measured why.
func (k *planner) drawsMuch() bool {
	return !k.c.Metered && k.j.Dangers.Tell("current-high")
}

// whyLiquid looks for what sends liquid back, from outside: the bulb or the sensors of a valve, and
// the way of the air, then whether gas is beside the refrigerant. Where all of that is right, what
// is likelier than not too much comes out.
func (k *planner) whyLiquid() {
	switch {
	case k.c.Metering == refrigerant.TXV && k.lookAt("valve-bulb", fact.Fact{}):
	case k.c.Metering == refrigerant.EXV && k.lookAt("valve-sensors", fact.Fact{}):
	case k.seeAir(fact.Fact{}):
	case k.tooFull() && k.lookAt("standing-pressure", fact.Fact{}):
	case k.b.Charge.High >= likely && k.fewOunces():
		k.over()
	case k.seeOthers():
	default:
		k.Add(modes.WhyLiquid)
	}
}
