package satline

import (
	"testing"

	"github.com/satline/satline/quantity"
)

// A wall-mounted machine condenses some 30 °F over outdoors by its maker's table: what
// would be poor heat rejection of a split system is sound of it, and surely where the table is
// given.
func TestWhatIsKnownOfTheMachineIsUsed(t *testing.T) {
	sound := func(change func(*Equipment)) float64 {
		v := Visit{
			Equipment: Equipment{
				Refrigerant: "R-410A", Metering: TXV, Arrangement: Split,
				NominalCapacity: quantity.Tons(3),
				Label:           Label{Subcooling: new(quantity.FahrenheitDelta(10).PlusMinus(0))},
			},
			Readings: Readings{
				SuctionPressure: Measured(quantity.PSIG(139)),
				LiquidPressure:  Measured(quantity.PSIG(444)),
				SuctionLine:     Measured(quantity.Fahrenheit(59)),
				LiquidLine:      Measured(quantity.Fahrenheit(114)),
				OutdoorDryBulb:  Measured(quantity.Fahrenheit(95)),
				ReturnDryBulb:   Measured(quantity.Fahrenheit(80)),
				ReturnWetBulb:   Measured(quantity.Fahrenheit(67)),
				SupplyDryBulb:   Measured(quantity.Fahrenheit(61)),
			},
		}
		change(&v.Equipment)
		for _, f := range assess(t, v).Findings {
			if f.Cause == "sound" {
				return f.Chance
			}
		}
		return 0
	}
	split := sound(func(*Equipment) {})
	wall := sound(func(e *Equipment) { e.Arrangement = WallMounted })
	old := sound(func(e *Equipment) { e.Label.Year = 1995 })
	table := sound(func(e *Equipment) {
		e.Label.Normal = []NormalPressures{
			{Suction: quantity.PSIG(140), Liquid: quantity.PSIG(445)},
		}
	})
	t.Logf(
		"split %.2f, of 1995 %.2f, wall-mounted %.2f, by its table %.2f", split, old, wall, table,
	)
	if !(split < 0.3 && wall > split+0.2 && table > 0.7) {
		t.Errorf("sound: %.2f, wall-mounted %.2f, by its maker's table %.2f", split, wall, table)
	}
}

// In its first stage a machine of two condenses some 11 °F over outdoors by its maker's table,
// warmer than it evaporates at full capacity.
func TestStageIsUsed(t *testing.T) {
	sound := func(stages Stages, share float64) float64 {
		v := Visit{
			Equipment: Equipment{
				Refrigerant: "R-410A", Metering: TXV, Arrangement: Split, Stages: stages,
				NominalCapacity: quantity.Tons(3),
				Label: Label{
					SEER2: 15.5, Subcooling: new(quantity.FahrenheitDelta(9).PlusMinus(0)),
				},
			},
			Conditions: Conditions{CapacityShare: share},
			Readings: Readings{
				SuctionPressure: Measured(quantity.PSIG(150)),
				LiquidPressure:  Measured(quantity.PSIG(340)),
				SuctionLine:     Measured(quantity.Fahrenheit(64)),
				LiquidLine:      Measured(quantity.Fahrenheit(96)),
				OutdoorDryBulb:  Measured(quantity.Fahrenheit(95)),
				ReturnDryBulb:   Measured(quantity.Fahrenheit(80)),
				ReturnWetBulb:   Measured(quantity.Fahrenheit(67)),
				SupplyDryBulb:   Measured(quantity.Fahrenheit(61)),
			},
		}
		for _, f := range assess(t, v).Findings {
			if f.Cause == "sound" {
				return f.Chance
			}
		}
		return 0
	}
	full, first := sound(TwoStage, 1), sound(TwoStage, 0.7)
	t.Logf("sound: %.2f at full capacity, %.2f in the first stage", full, first)
	if !(first > full) {
		t.Errorf("sound: %.2f at full capacity, %.2f in the first stage", full, first)
	}
}

func TestNormalPressuresAreChecked(t *testing.T) {
	v := Visit{Equipment: Equipment{Refrigerant: "R-410A", Metering: TXV, Label: Label{
		Year: 95, SEER: 145, SEER2: 1.4,
		Normal: []NormalPressures{
			{Outdoor: quantity.Fahrenheit(95)}, {Liquid: quantity.PSIG(4450)},
		},
	}}}
	kinds := map[string]ProblemKind{}
	for _, err := range v.Validate() {
		kinds[err.Field] = err.Kind
	}
	for field, kind := range map[string]ProblemKind{
		"equipment.label.year":              FieldOutOfRange,
		"equipment.label.seer":              FieldOutOfRange,
		"equipment.label.seer2":             FieldOutOfRange,
		"equipment.label.normal[0].suction": FieldMissing,
		"equipment.label.normal[1].liquid":  FieldOutOfRange,
	} {
		if kinds[field] != kind {
			t.Errorf("%s: %v, want %v", field, kinds[field], kind)
		}
	}
}
