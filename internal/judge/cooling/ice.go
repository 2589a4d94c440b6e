package cooling

import (
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// IceLook asks for ice on the indoor coil; who found it has a coil that is iced.
const (
	IceLook = "indoor-ice"
	iceLook = fact.Code("look." + IceLook)
)

// nearIce: the first tubes boil a little colder than the gauge at the outdoor unit tells, and it
// errs; common practice, no source.
var nearIce = quantity.Celsius(2.5)

// iceFirst looks for ice where the coil is so cold that it may be there by now: an iced coil
// starves like one behind a dirty filter, and no charge is judged by it. The coldest may ice in
// any case; one near freezing, where ice is what the customer saw.
func (k *planner) iceFirst() {
	cold := k.j.Dangers.Tell("evaporating-coldest")
	dew := k.c.EvaporatingDew
	near := k.c.Seen.FrozenComplaint && dew != nil && dew.Value < nearIce
	if (cold || near) && !k.c.Seen.CoilIced && !k.Stopped() && !k.emptied() {
		k.lookAt(IceLook, fact.Fact{})
	}
}

// Looks lists the looks and tests that a plan of cooling may ask for.
func Looks() []diagnose.Look { return append(diagnose.Looks(), diagnose.Look{Code: IceLook}) }

// whyFroze finds what made the ice while it melts: the way of the air, where that was not looked
// at, and the leak where refrigerant is likely to be missing, or may be and the air is clear.
func (k *planner) whyFroze() {
	blocked, seen := k.answer(airLook)
	clear := seen && !blocked && !k.c.Seen.FilterDirty
	switch {
	case k.c.Seen.FilterDirty:
		k.Add(modes.CleanFilter)
		if !seen {
			k.Add(modes.WhyFrozeBeside)
		}
	case !clear:
		k.Add(modes.WhyFroze)
	}
	least := likely
	if clear {
		least = worth
	}
	if k.c.Seen.OilStains || k.b.Any(diagnose.Undercharge, diagnose.NextToEmpty) >= least {
		k.findLeak()
	}
}
