package satline_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
	"golang.org/x/text/language"
)

// Words of cooling, in both languages, by the mode that they do not belong in, and the codes that
// may use them in heating since they speak of changing over.
var (
	ofCooling = regexp.MustCompile(
		`(?i)\b(cooling|cools?|hot(ter)? day|warmer weather|iced indoor|indoor coil is iced|` +
			`approach|split|economizer|enfriamiento|enfría|día (más )?caluroso|clima más cálido)\b`,
	)
	ofHouses = regexp.MustCompile(
		`(?i)\b(house|building|filter|blower|registers|ducts?|indoor coil|wet bulb|approach|` +
			`economizer|comfort|casa|edificio|filtro de aire|soplador|rejillas|ductos|` +
			`bulbo húmedo)\b`,
	)
	changesOver = map[fact.Code]bool{
		"charge.heating-warm": true, "step.heating-change-over": true,
		"finding.reversing-valve": true, "owner.cause.reversing-valve": true,
		"caution.label-first": true,
	}
)

// codesOf are the codes of all facts of an assessment, and of the terms in them.
func codesOf(t *testing.T, a satline.Assessment) map[fact.Code]bool {
	t.Helper()
	out := map[fact.Code]bool{}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	codes := regexp.MustCompile(`"(?:code|value)":"([a-z]+\.[a-zA-Z.-]+)"`)
	for _, m := range codes.FindAllSubmatch(text, -1) {
		out[fact.Code(m[1])] = true
	}
	found, dangers, next := report.OwnerFacts(a)
	for _, list := range [][]fact.Fact{found, dangers, next} {
		for _, f := range list {
			out[f.Code] = true
		}
	}
	return out
}

// No sentence of cooling is said of a machine that heats, nor one of houses of a cold room.
func TestNoCoolingSentenceInAnotherMode(t *testing.T) {
	for _, x := range []struct {
		visits string
		mode   satline.Mode
		never  *regexp.Regexp
	}{
		{"heating-*.json", satline.Heating, ofCooling},
		{"cold-*.json", satline.Refrigeration, ofHouses},
	} {
		files, err := filepath.Glob("testdata/visits/" + x.visits)
		if err != nil || len(files) < 12 {
			t.Fatal(len(files), err)
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			v, err := satline.DecodeVisit(data)
			if err != nil {
				t.Fatal(file, err)
			}
			a, err := satline.Assess(v)
			if err != nil {
				t.Fatal(file, err)
			}
			if a.Mode.Mode != x.mode {
				t.Errorf("%s is judged in %v", file, a.Mode.Mode)
			}
			for code := range codesOf(t, a) {
				neverSays(t, filepath.Base(file), code, x.never)
			}
		}
	}
}

// neverSays holds that no language has words of another mode for a code.
func neverSays(t *testing.T, file string, code fact.Code, never *regexp.Regexp) {
	t.Helper()
	for _, tag := range []language.Tag{language.English, language.Spanish} {
		if _, ok := words.Shapes(tag)[string(code)]; !ok || changesOver[code] {
			continue
		}
		if said := words.In(tag, quantity.IP).Term(string(code)); never.MatchString(said) {
			t.Errorf("%s says %s: %s", file, code, said)
		}
	}
}

// A liquid line far above the outdoor air is that of a machine that heats where it is too cold
// outdoors to cool a house; where it is milder, it is asked.
func TestWarmLiquidLine(t *testing.T) {
	for outdoor, want := range map[float64]satline.Mode{40: satline.Heating, 58: 0} {
		a, err := satline.Assess(satline.Visit{
			Equipment: satline.Equipment{
				Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.SplitHeatPump,
			},
			Readings: satline.Readings{
				SuctionPressure: satline.Measured(quantity.PSIG(88)),
				LiquidPressure:  satline.Measured(quantity.PSIG(345)),
				LiquidLine:      satline.Measured(quantity.Fahrenheit(96)),
				OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(outdoor)),
			},
		})
		if err != nil || a.Mode.Mode != want {
			t.Errorf("%g °F: %v, %v", outdoor, a.Mode.Mode, err)
		}
	}
}

// Where the readings are those of two modes it is asked, and what tells one is taken for it.
func TestModeInDoubt(t *testing.T) {
	gauge := func(psig float64) satline.Reading[quantity.GaugePressure] {
		return satline.Measured(quantity.PSIG(psig))
	}
	cold := satline.Readings{SuctionPressure: gauge(32), LiquidPressure: gauge(196)} // 10, 100 °F
	winter := satline.Readings{
		SuctionPressure: gauge(60), LiquidPressure: gauge(318),
		OutdoorDryBulb: satline.Measured(quantity.Fahrenheit(30)),
	}
	for _, x := range []struct {
		name      string
		equipment satline.Equipment
		readings  satline.Readings
		complaint satline.Complaint
		want      satline.Mode
	}{
		{"R-22 behind a valve far below freezing, no box read",
			satline.Equipment{Refrigerant: "R-22", Metering: satline.TXV}, cold, 0, 0},
		{"the same behind a piston",
			satline.Equipment{Refrigerant: "R-22", Metering: satline.FixedRestrictor}, cold, 0,
			satline.Cooling},
		{"the same in a split air conditioner",
			satline.Equipment{
				Refrigerant: "R-22", Metering: satline.TXV, Arrangement: satline.Split,
			}, cold, 0, satline.Cooling},
		{"a refrigerant of cold rooms",
			satline.Equipment{Refrigerant: "R-404A", Metering: satline.TXV}, cold, 0,
			satline.Refrigeration},
		{"a cellar, or a house in the morning",
			satline.Equipment{Refrigerant: "R-22", Metering: satline.TXV}, satline.Readings{
				SuctionPressure: gauge(62),
				ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(56)),
			}, 0, 0},
		{"a head far above a winter's day",
			satline.Equipment{Refrigerant: "R-410A", Metering: satline.TXV}, winter, 0, 0},
		{"the same of a heat pump",
			satline.Equipment{
				Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.SplitHeatPump,
			}, winter, 0, satline.Heating},
		{"a heat pump that is said not to heat",
			satline.Equipment{
				Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: satline.SplitHeatPump,
			}, satline.Readings{}, satline.NotHeating, satline.Heating},
	} {
		a, err := satline.Assess(satline.Visit{
			Equipment: x.equipment, Readings: x.readings, Complaint: x.complaint,
		})
		if err != nil || a.Mode.Mode != x.want {
			t.Errorf("%s: %v, %v", x.name, a.Mode.Mode, err)
			continue
		}
		if x.want == 0 && (len(a.Plan) == 0 || a.Plan[len(a.Plan)-1].Do.Code != "step.ask-mode") {
			t.Errorf("%s: nothing is asked", x.name)
		}
	}
}

// Of the two thermometers in the ducts one is in the wrong one where nothing heats: a machine that
// only cools, or a heat pump on a day on which nobody heats.
func TestSupplyAndReturnExchanged(t *testing.T) {
	visit := func(kind satline.Arrangement, outdoor float64) satline.Visit {
		return satline.Visit{
			Equipment: satline.Equipment{
				Refrigerant: "R-410A", Metering: satline.TXV, Arrangement: kind,
			},
			Readings: satline.Readings{
				SuctionPressure: satline.Measured(quantity.PSIG(126)),
				LiquidPressure:  satline.Measured(quantity.PSIG(378)),
				SuctionLine:     satline.Measured(quantity.Fahrenheit(53)),
				LiquidLine:      satline.Measured(quantity.Fahrenheit(102)),
				OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(outdoor)),
				ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(56)),
				ReturnWetBulb:   satline.Measured(quantity.Fahrenheit(54)),
				SupplyDryBulb:   satline.Measured(quantity.Fahrenheit(76)),
			},
		}
	}
	for _, kind := range []satline.Arrangement{satline.Split, satline.SplitHeatPump} {
		a, err := satline.Assess(visit(kind, 94))
		if err != nil || a.Mode.Mode != satline.Cooling ||
			a.Plan[0].Do.Code != "doubt.supply-above-return.mend" {
			t.Errorf("%v: %v, %v, %v", kind, a.Mode.Mode, a.Plan, err)
		}
	}
	if a, err := satline.Assess(visit(satline.SplitHeatPump, 45)); err != nil ||
		a.Mode.Mode != satline.Heating {
		t.Errorf("a heat pump in the cold is in %v: %v", a.Mode.Mode, err)
	}
}

// A dead outdoor fan on a mild day is no heating: a room gets cold air, and the liquid is far above
// it too. Where the air that comes in is warm, or was not read, it is asked still.
func TestDeadFanOnAMildDay(t *testing.T) {
	for supply, want := range map[float64]satline.Mode{61: satline.Cooling, 71: 0, 0: 0} {
		r := satline.Readings{
			SuctionPressure: satline.Measured(quantity.PSIG(72)),
			LiquidPressure:  satline.Measured(quantity.PSIG(287)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(114)),
			OutdoorDryBulb:  satline.Measured(quantity.Fahrenheit(68)),
			ReturnDryBulb:   satline.Measured(quantity.Fahrenheit(77)),
		}
		if supply > 0 {
			r.SupplyDryBulb = satline.Measured(quantity.Fahrenheit(supply))
		}
		a, err := satline.Assess(satline.Visit{
			Equipment: satline.Equipment{
				Refrigerant: "R-22", Metering: satline.FixedRestrictor,
				Arrangement: satline.SplitHeatPump,
			},
			Readings: r,
		})
		if err != nil || a.Mode.Mode != want {
			t.Errorf("supply %g °F: %v, %v", supply, a.Mode.Mode, err)
		}
	}
}
