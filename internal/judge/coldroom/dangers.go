package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

const (
	suctionInVacuum = "suction-in-vacuum"
	headHighest     = "condensing-highest"
	headRaised      = "condensing-high"
)

// shared are the dangers by the limits of package charge that hold for every compressor; the
// others are limits of machines that cool rooms.
var shared = []string{
	headHighest, headRaised, suctionInVacuum, "discharge-hottest", "discharge-hot",
	"current-highest", "current-high", "floodback", "slugging",
}

// bySuction are those of shared that the suction gauge shows.
var bySuction = []string{suctionInVacuum, "floodback", "slugging"}

// Limits of cold rooms, common practice without a source. A compressor that is cooled by its
// suction gas wants it below suctionWarm, but for a small one behind a tube that is soldered to
// the suction line; one that gets it with less than leastSuperheat is near to liquid; one stage
// does not compress further than ratioHighest. Condensing up to endured harms none at once, however
// far over its air it is, and a stop would warm the food.
const (
	leastSuperheat = quantity.TemperatureDelta(8 / 1.8)
	suctionWarm    = quantity.Temperature((65 + 459.67) / 1.8)
	ratioHighest   = 14.0
	endured        = quantity.Temperature((130 + 459.67) / 1.8)
)

// dangersOf are the dangers to the food and to the compressor, the food first.
func dangersOf(c *modes.Case, k *known, b *belief) modes.Dangers {
	out := foodDangers(c, k)
	for _, d := range modes.Distinct(c.Dangers, nil) {
		if !d.Meter && !slices.Contains(shared, d.Code) ||
			d.Code == suctionInVacuum && !k.vacuum ||
			swapped(c) && slices.Contains(bySuction, d.Code) {
			continue
		}
		if t := c.CondensingDew; d.Code == headHighest && t != nil && t.Value <= endured {
			d.Code, d.Grave, d.Stops = headRaised, false, false
			d.Says.Code = "danger." + headRaised
		}
		out = append(out, d)
	}
	if swapped(c) {
		return out
	}
	practice := fact.Source{Standing: fact.CommonPractice}
	if s := c.Superheat; s != nil && s.Value+quantity.TemperatureDelta(s.Std) < leastSuperheat &&
		!out.Tell("floodback") {
		out = append(out, danger("cold-superheat-low", false, practice, s.Value, leastSuperheat))
	}
	if t := c.SuctionLine; t != nil && k.valve &&
		t.Value-quantity.Temperature(t.Std) > suctionWarm && b.cause(clamp) < likely {
		out = append(out, danger("cold-suction-warm", false, practice, t.Value, suctionWarm))
	}
	if r := ratioOf(c); r > ratioHighest {
		out = append(out, modes.Danger{
			Code: "cold-ratio", Source: practice,
			Says: fact.New(
				"danger.cold-ratio", fact.Of("figure", fact.Times(r)),
				fact.Of("limit", fact.Times(ratioHighest)),
			),
		})
	}
	return out
}

// foodDangers is that of a box too warm for what is in it, where it is.
func foodDangers(c *modes.Case, k *known) modes.Dangers {
	limit := k.usual.FoodLimit()
	t := c.ReturnDryBulb
	if t == nil || t.Value <= limit.At || !c.Room.Application.KeepsFood() {
		return nil
	}
	code := "cold-food"
	if k.usual.Frozen {
		code = "cold-frozen-food"
	}
	return modes.Dangers{danger(code, true, limit.Source, t.Value, limit.At)}
}

func danger[T quantity.Quantity](
	code string, grave bool, s fact.Source, figure, limit T,
) modes.Danger {
	return modes.Danger{
		Code: code, Grave: grave, Source: s,
		Says: fact.New(
			fact.Code("danger."+code), fact.Amount("figure", figure), fact.Amount("limit", limit),
		),
	}
}

// runsInVacuum says that the refrigerant is one that boils below the atmosphere in such a
// box, as isobutane in a small freezer does.
func runsInVacuum(c *modes.Case, k *known) bool {
	boils, err := c.Fluid.DewTemperature(c.Atmosphere)
	return err == nil &&
		boils > k.usual.Box.Value.Add(-k.usual.Difference.Value-quantity.FahrenheitDelta(15))
}

func ratioOf(c *modes.Case) float64 {
	low, high := c.SuctionPressure, c.LiquidPressure
	if low == nil || high == nil {
		return 0
	}
	suction := float64(low.Value.Absolute(c.Atmosphere))
	if !(suction > 0) {
		return 0
	}
	return float64(high.Value.Absolute(c.Atmosphere)) / suction
}
