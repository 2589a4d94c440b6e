package fluiddata

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// An Estimate is the interaction of two components that no paper has fitted.
type Estimate struct {
	// Pair is nil where nothing is known of the two: a model then takes the linear rule.
	Pair *helmholtz.Pair
	// Doubt is the standard uncertainty of γT.
	Doubt float64
}

// LinearDoubt is how far γT of the 220 pairs with one of their own in the papers here, those
// with ammonia and water aside, lies from the linear rule: the root of the mean square.
const LinearDoubt = 0.059

// EstimateOf is what stands in for the published interaction of two components that PairOf
// does not know, in either order.
func EstimateOf(a, b string) Estimate {
	for i := range anchored {
		p := &anchored[i]
		if p.pair.First == a && p.pair.Second == b || p.pair.First == b && p.pair.Second == a {
			return Estimate{&p.pair, p.doubt}
		}
	}
	return Estimate{nil, LinearDoubt}
}

// shifted returns the interaction p of two components, nil for the linear rule, with γT
// greater by so much.
func shifted(p *helmholtz.Pair, a, b *helmholtz.Fluid, by float64) *helmholtz.Pair {
	s := helmholtz.Pair{First: a.Designation, Second: b.Designation, Form: helmholtz.Lemmon}
	if p != nil {
		s = *p
	}
	s.GammaT += by
	s.Xi += 2 * by * math.Sqrt(a.ReducingT*b.ReducingT)
	return &s
}

// An anchor is one of the anchored pairs. Likeness is what γT was taken for before print was
// looked at, spread how sure that was.
type anchor struct {
	pair             helmholtz.Pair
	likeness, spread float64
	doubt            float64
}

const (
	anchoredSource = `γT by least squares to the bubble and dew points of blends in ` +
		`ASHRAE Handbook Fundamentals (SI), 2021, chapter 29, table 2`
	likenessSource = `γT of the most alike pair that is published`

	fromLinear = 0.05 // spread about 1, of two halocarbons
	fromAlike  = 0.03 // spread about the most alike pair
)

// anchored is the pairs of designated blends that no paper has fitted. Of each there is one
// parameter, γT. It makes the least sum of squares of two things: of how far the
// bubble and dew points at one atmosphere of the blends with the pair are from print, each
// over 0.4 K, which is about what blends of published pairs are off the same table; and of how
// far γT is from its likeness, over its spread. Doubt is the standard uncertainty that
// follows. A test holds both.
//
// The likeness is 1 for two halocarbons, and for a hydrocarbon γT of the nearest
// published pair: R-22 with R-290 for isobutane and butane with hydrochlorofluorocarbons,
// butane with the same partner for the pentanes, isobutane with R-1234ze(E) for butane,
// R-170 with R-218 for the other hydrocarbons with it.
//
// R-218 with R-290 and with R-600a have their likeness alone, and as much doubt as the linear
// rule. Print has R-403B at −43.8 °C
// and R-509A, R-22 with R-218 and no propane, at −47 °C, as the published pair has it: nothing
// in R-403B can make that 3 K warmer. It is likewise with R-413A.
//
// R-1132a, R-227ea with R-236fa and R-143a with R-227ea are left to the linear rule: of the
// first no print was at hand, and of the others the blends have next to nothing.
var anchored = [...]anchor{
	anchorOf("R-22", "R-124", 0.9743, 1, fromLinear, 0.0024),
	anchorOf("R-152a", "R-124", 0.9972, 1, fromLinear, 0.0050),
	anchorOf("R-22", "R-600a", 0.9411, 0.942193, fromAlike, 0.0115),
	anchorOf("R-600a", "R-142b", 0.9472, 0.942193, fromAlike, 0.0215),
	anchorOf("R-124", "R-600a", 0.9447, 0.942193, fromAlike, 0.0265),
	anchorOf("R-125", "R-22", 0.9751, 1, fromLinear, 0.0024),
	anchorOf("R-124", "R-600", 0.9616, 0.942193, fromAlike, 0.0260),
	anchorOf("R-125", "R-601a", 0.9169, 0.90412, fromAlike, 0.0290),
	anchorOf("R-134a", "R-601a", 0.9218, 0.89057, fromAlike, 0.0220),
	anchorOf("R-32", "R-601a", 0.8666, 0.8699, fromAlike, 0.0297),
	anchorOf("R-227ea", "R-601a", 0.9014, 0.90171, fromAlike, 0.0300),
	anchorOf("R-125", "R-601", 0.9004, 0.90412, fromAlike, 0.0299),
	anchorOf("R-134a", "R-601", 0.8814, 0.89057, fromAlike, 0.0279),
	anchorOf("R-E170", "R-152a", 0.9743, 1, fromLinear, 0.0044),
	anchorOf("R-1234ze(E)", "R-600", 0.9168, 0.921592, fromAlike, 0.0276),
	likenessOf("R-290", "R-218", 0.93581),
	likenessOf("R-218", "R-600a", 0.93581),
}

func anchorOf(first, second string, gammaT, likeness, spread, doubt float64) anchor {
	return anchor{oneParameter(first, second, gammaT, anchoredSource), likeness, spread, doubt}
}

func likenessOf(first, second string, gammaT float64) anchor {
	return anchor{
		oneParameter(first, second, gammaT, likenessSource), gammaT, fromAlike, LinearDoubt,
	}
}

func oneParameter(first, second string, gammaT float64, source string) helmholtz.Pair {
	return helmholtz.Pair{
		First: first, Second: second, BetaT: 1, GammaT: gammaT, BetaV: 1, GammaV: 1, Source: source,
	}
}
