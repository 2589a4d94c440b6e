package airside

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func TestIcingRule(t *testing.T) {
	rule := verify.Source{Cite: "a coil ices from about 29 °F down", Kind: verify.CommonPractice}
	for _, c := range []struct{ fahrenheit, chance float64 }{{40, 0}, {29, 0.5}, {24, 1}} {
		got := IcingChance(
			quantity.Fahrenheit(c.fahrenheit).PlusMinus(quantity.FahrenheitDelta(0.3)),
		)
		verify.Value(t, rule, "chance of ice on a coil", "", c.chance, got, 0.01)
	}
	var none quantity.Uncertain[quantity.Temperature]
	none.Value = quantity.Temperature(math.NaN())
	if p := IcingChance(none); p != 0 {
		t.Errorf("no temperature: %v", p)
	}
}

func TestIcingChanceFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := quantity.Fahrenheit(rapid.Float64Range(-20, 70).Draw(t, "evaporating"))
		std := quantity.FahrenheitDelta(rapid.Float64Range(0, 5).Draw(t, "std"))
		cold, warm := IcingChance(at.PlusMinus(std)), IcingChance((at + 1).PlusMinus(std))
		if !(cold >= warm && cold <= 1 && warm >= 0) {
			t.Errorf("%v at %v, %v a kelvin warmer", cold, at, warm)
		}
	})
}
