package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// shared are the dangers by the limits of package charge that hold for every compressor; the
// others are limits of machines that cool rooms.
var shared = []string{
	"condensing-highest", "condensing-high", "suction-in-vacuum", "discharge-hottest",
	"discharge-hot", "current-highest", "current-high", "floodback", "slugging",
}

// Limits of cold rooms, common practice without a source. A compressor that is cooled by its
// suction gas wants it below suctionWarm; one that gets it with less than leastSuperheat is
// near to liquid; one stage does not compress further than ratioHighest.
const (
	leastSuperheat = quantity.TemperatureDelta(8 / 1.8)
	suctionWarm    = quantity.Temperature((65 + 459.67) / 1.8)
	ratioHighest   = 14.0
)

// dangersOf are the dangers to the food and to the compressor, the food first.
func dangersOf(c *modes.Case, k *known) []modes.Danger {
	var out []modes.Danger
	limit := k.usual.FoodLimit()
	if t := c.ReturnDryBulb; t != nil && t.Value > limit.At && c.Room.Application.KeepsFood() {
		code := "cold-food"
		if k.usual.Frozen {
			code = "cold-frozen-food"
		}
		out = append(out, danger(code, true, limit.Source, t.Value, limit.At))
	}
	for _, d := range modes.Distinct(c.Dangers, nil) {
		if !d.Meter && !slices.Contains(shared, d.Code) ||
			d.Code == "suction-in-vacuum" && runsInVacuum(c, k) {
			continue
		}
		out = append(out, d)
	}
	practice := fact.Source{Standing: fact.CommonPractice}
	told := func(code string) bool {
		return slices.ContainsFunc(out, func(d modes.Danger) bool { return d.Code == code })
	}
	if s := c.Superheat; s != nil && s.Value+quantity.TemperatureDelta(s.Std) < leastSuperheat &&
		!told("floodback") {
		out = append(out, danger("cold-superheat-low", false, practice, s.Value, leastSuperheat))
	}
	if t := c.SuctionLine; t != nil && t.Value-quantity.Temperature(t.Std) > suctionWarm {
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
