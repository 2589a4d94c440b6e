package airside

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

var cecTable = verify.Source{
	Cite: "California Energy Commission, Reference Residential Appendix RA3.2, Table RA3.2-3",
	Kind: verify.FromMemory,
}

type splitCell struct{ dryBulb, wetBulb, split float64 }

func readSplitTable(t *testing.T) (cells, blanks []splitCell) {
	f, err := os.Open("testdata/temperature-split.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for lines := bufio.NewScanner(f); lines.Scan(); {
		fields := strings.Split(lines.Text(), ",")
		db, err := strconv.ParseFloat(fields[0], 64)
		if err != nil {
			continue
		}
		for j, s := range fields[1:] {
			if s == "?" {
				continue
			}
			c := splitCell{db, float64(splitMinWetBulb + j), 0}
			if c.split, err = strconv.ParseFloat(s, 64); err == nil {
				cells = append(cells, c)
			} else {
				blanks = append(blanks, c)
			}
		}
	}
	return cells, blanks
}

func TestTargetSplitMeetsTheTable(t *testing.T) {
	cells, blanks := readSplitTable(t)
	if len(cells) < 350 || len(blanks) < 45 {
		t.Fatalf("%d cells and %d blanks read", len(cells), len(blanks))
	}
	worst, worstCell, sum, n := 0.0, splitCell{}, 0.0, 0
	var slope [4]float64 // of the sum of squares by each coefficient, over −2
	for _, c := range cells {
		got, err := TargetSplit(quantity.Fahrenheit(c.dryBulb), quantity.Fahrenheit(c.wetBulb))
		if c.wetBulb > c.dryBulb {
			// The table prints cells there; there is no such air.
			if err == nil {
				t.Errorf(
					"a wet bulb of %v above a dry bulb of %v has a target", c.wetBulb, c.dryBulb,
				)
			}
			continue
		}
		if err != nil {
			t.Errorf("%v/%v: %v", c.dryBulb, c.wetBulb, err)
			continue
		}
		d := got.Fahrenheit() - c.split
		sum, n = sum+d*d, n+1
		x, y := c.dryBulb-splitCenterDryBulb, c.wetBulb-splitCenterWetBulb
		for i, basis := range [4]float64{1, x, y, y * y} {
			slope[i] += d * basis
		}
		if math.Abs(d) > worst {
			worst, worstCell = math.Abs(d), c
		}
		if c.dryBulb == 80 && c.wetBulb == 67 || c.dryBulb == 75 && c.wetBulb == 62 {
			verify.Value(
				t, cecTable,
				fmt.Sprintf("target split at %v °F dry bulb, %v °F wet bulb", c.dryBulb, c.wetBulb),
				"°F", c.split, got.Fahrenheit(), 0.06,
			)
		}
	}
	got, _ := TargetSplit(
		quantity.Fahrenheit(worstCell.dryBulb), quantity.Fahrenheit(worstCell.wetBulb),
	)
	verify.Value(
		t,
		cecTable,
		fmt.Sprintf(
			"target split, worst of %d cells (%v °F dry bulb, %v °F wet bulb)", n,
			worstCell.dryBulb, worstCell.wetBulb,
		),
		"°F",
		worstCell.split,
		got.Fahrenheit(),
		0.06,
	)
	for i, s := range slope {
		if math.Abs(s) > 0.05 {
			t.Errorf("coefficient %d is not that of the least-squares fit: %v", i, s)
		}
	}
	// Rounding to 0.1 has a standard deviation of 0.1/√12 = 0.029.
	if rms := math.Sqrt(sum / float64(n)); rms > 0.031 {
		t.Errorf("residuals of %.4f °F are more than the rounding of the table", rms)
	}
	for _, c := range blanks {
		if v, err := TargetSplit(quantity.Fahrenheit(c.dryBulb),
			quantity.Fahrenheit(c.wetBulb)); err == nil {
			t.Errorf("%v/%v is blank in the table and got %v", c.dryBulb, c.wetBulb, v)
		}
	}
}

func fahrenheit(v, std float64) quantity.Uncertain[quantity.Temperature] {
	return quantity.Fahrenheit(v).PlusMinus(quantity.FahrenheitDelta(std))
}

// Common practice, no source: a split of 20 to 21 °F at a 62 °F wet bulb and a
// return of 73 to 74 °F is sound airflow.
func TestSoundSplitOfPractice(t *testing.T) {
	practice := verify.Source{
		Cite: "a split of 20 to 21 °F at 62 °F wet bulb is sound",
		Kind: verify.CommonPractice,
	}
	for _, c := range []struct{ db, split float64 }{{73, 20}, {73, 21}, {74, 20}, {74, 21}} {
		v, err := JudgeSplit(
			SplitReadings{fahrenheit(c.db, 0), fahrenheit(62, 0), fahrenheit(c.db-c.split, 0), 0},
		)
		if err != nil || v.Outcome != SplitInBand {
			t.Errorf("%v °F at %v/62: %v, %v", c.split, c.db, v.Outcome, err)
		}
		// With field thermometers too it is not the air that is looked at first.
		v, err = JudgeSplit(
			SplitReadings{
				fahrenheit(c.db, 0.6), fahrenheit(62, 0.7), fahrenheit(c.db-c.split, 0.6), 0,
			},
		)
		if err != nil || v.AirflowFirst() || v.InBand < 0.5 {
			t.Errorf(
				"%v °F at %v/62 with field thermometers: %v, in band %.2f, %v", c.split, c.db,
				v.Outcome, v.InBand, err,
			)
		}
		verify.Value(
			t, practice, fmt.Sprintf("target split at %v °F dry bulb, 62 °F wet bulb", c.db), "°F",
			c.split, v.Target.Value.Fahrenheit(), 3,
		)
	}
}

func TestJudgeSplit(t *testing.T) {
	for _, c := range []struct {
		supply, std float64
		want        SplitOutcome
		airFirst    bool
	}{
		{57, 0.3, SplitInBand, false}, {51, 0.3, SplitHigh, true}, {63, 0.3, SplitLow, false},
		{54, 1.5, SplitCannotTell, false}, {52, 1.5, SplitCannotTell, true},
		{60, 1.5, SplitCannotTell, false},
	} {
		v, err := JudgeSplit(
			SplitReadings{
				fahrenheit(75, c.std), fahrenheit(62, c.std), fahrenheit(c.supply, c.std), 0,
			},
		)
		if err != nil {
			t.Fatal(err)
		}
		if v.Outcome != c.want || v.AirflowFirst() != c.airFirst {
			t.Errorf("supply %v: %v, airflow first %v", c.supply, v.Outcome, v.AirflowFirst())
		}
		if v.Source.Standing == 0 {
			t.Errorf("%v says nothing", v.Outcome)
		}
		b, err := json.Marshal(v)
		var back SplitVerdict
		if err == nil {
			err = json.Unmarshal(b, &back)
		}
		if err != nil || back != v {
			t.Errorf("%v does not survive JSON (%v): %s", v.Outcome, err, b)
		}
	}
}

func TestSplitRefusesWhatIsNotThere(t *testing.T) {
	nan := math.NaN()
	for name, r := range map[string]SplitReadings{
		"return cold":   {fahrenheit(62, 1), fahrenheit(55, 1), fahrenheit(50, 1), 0},
		"return hot":    {fahrenheit(90, 1), fahrenheit(70, 1), fahrenheit(70, 1), 0},
		"wet above dry": {fahrenheit(72, 1), fahrenheit(74, 1), fahrenheit(55, 1), 0},
		"dry corner":    {fahrenheit(82, 1), fahrenheit(55, 1), fahrenheit(60, 1), 0},
		"not a number":  {fahrenheit(nan, 1), fahrenheit(62, 1), fahrenheit(55, 1), 0},
		"no wet bulb":   {fahrenheit(75, 1), fahrenheit(nan, 1), fahrenheit(55, 1), 0},
		"no supply":     {fahrenheit(75, 1), fahrenheit(62, 1), fahrenheit(-459.67, 0), 0},
		"uncertainty < 0": {quantity.Uncertain[quantity.Temperature]{Value: quantity.Fahrenheit(75),
			Std: -1}, fahrenheit(62, 1), fahrenheit(55, 1), 0},
		"uncertainty NaN": {quantity.Uncertain[quantity.Temperature]{Value: quantity.Fahrenheit(75),
			Std: nan}, fahrenheit(62, 1), fahrenheit(55, 1), 0},
	} {
		_, err := JudgeSplit(r)
		var re *RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The split falls as the wet bulb rises and rises with the dry bulb, and its
// derivatives are those of the function.
func TestTargetSplitIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		db := rapid.Float64Range(70, 83.9).Draw(t, "dry bulb")
		wb := rapid.Float64Range(driestSplit(db)+0.1, min(db, splitMaxWetBulb)-0.1).
			Draw(t, "wet bulb")
		v, perDB, perWB, err := splitTarget(quantity.Fahrenheit(db), quantity.Fahrenheit(wb))
		if err != nil {
			t.Fatal(err)
		}
		const h = 0.05
		up, err := TargetSplit(quantity.Fahrenheit(db), quantity.Fahrenheit(wb+h))
		down, err2 := TargetSplit(quantity.Fahrenheit(db), quantity.Fahrenheit(wb-h))
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if !(up < v && v < down) || perDB <= 0 {
			t.Fatalf("not monotone at %v/%v", db, wb)
		}
		if got := (up - down).Fahrenheit() / (2 * h); math.Abs(got-perWB) > 1e-6 {
			t.Fatalf("slope %v, derivative %v", got, perWB)
		}
	})
}

// The figure of SplitAltitude against the model it is computed with.
func TestSplitAltitudeIsThatOfTheModel(t *testing.T) {
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	plant := CapacityLine{
		Coil:        c,
		Capacity:    quantity.Tons(3),
		Evaporating: quantity.Fahrenheit(45),
		Outdoor:     quantity.Fahrenheit(95),
	}
	for _, feet := range []float64{3000, 6000, 9000} {
		sum, n := 0.0, 0.0
		for _, at := range []struct{ db, wb, outdoor float64 }{{75, 62, 85}, {80, 67, 95},
			{78, 62, 90}, {72, 62, 80}, {84, 70, 90}, {70, 58, 75}, {75, 58, 85}} {
			split := func(p quantity.Pressure) float64 {
				r, err := plant.Run(
					Conditions{
						mustAir(t, at.db, at.wb, p), quantity.CFM(1200),
						quantity.Fahrenheit(at.outdoor),
					},
				)
				if err != nil {
					t.Fatal(err)
				}
				return quantity.Fahrenheit(at.db).Sub(r.Supply).Fahrenheit()
			}
			sea := split(quantity.StandardAtmosphere)
			grown := split(quantity.AtmosphereAt(quantity.Feet(feet))) - sea
			added, err := SplitAltitude(
				quantity.FahrenheitDelta(sea), quantity.AtmosphereAt(quantity.Feet(feet)),
			)
			if err != nil {
				t.Fatal(err)
			}
			if z := (grown - added.Value.Fahrenheit()) /
				quantity.TemperatureDelta(added.Std).Fahrenheit(); math.Abs(
				z,
			) > 2 {
				t.Errorf(
					"%v ft, %+v: %.2f °F, stated %.2f", feet, at, grown, added.Value.Fahrenheit(),
				)
			}
			sum += grown - added.Value.Fahrenheit()
			n++
		}
		if math.Abs(sum/n) > 0.2 {
			t.Errorf("at %v ft the model is %.2f °F off on average", feet, sum/n)
		}
	}
	for _, p := range []quantity.Pressure{0, quantity.Pressure(math.NaN())} {
		if _, err := SplitAltitude(10, p); err == nil {
			t.Errorf("%v was taken", p)
		}
	}
}

// Air that comes out no colder than it went in says nothing of charge or airflow.
func TestSplitOfAMachineThatDoesNotCool(t *testing.T) {
	v, err := JudgeSplit(
		SplitReadings{fahrenheit(75, 0.3), fahrenheit(62, 0.3), fahrenheit(95, 0.3), 0},
	)
	if err != nil || v.Outcome != SplitLow {
		t.Errorf("%v, %v", v.Outcome, err)
	}
}

func TestJudgeSplitAtAltitudeAndAgainst(t *testing.T) {
	r := SplitReadings{fahrenheit(75, 0.3), fahrenheit(62, 0.3), fahrenheit(56, 0.3), 0}
	sea, err := JudgeSplit(r)
	if err != nil {
		t.Fatal(err)
	}
	r.Atmosphere = highAtmosphere
	high, err := JudgeSplit(r)
	if err != nil || high.Target.Value <= sea.Target.Value ||
		high.Deviation.Std <= sea.Deviation.Std {
		t.Errorf("%+v, %v", high, err)
	}
	chart := fact.Source{Title: "the unit's chart", Standing: fact.Label}
	own, err := JudgeSplitAgainst(
		r, quantity.FahrenheitDelta(24).PlusMinus(quantity.FahrenheitDelta(0.5)),
		quantity.FahrenheitDelta(2), chart,
	)
	if err != nil || own.Outcome != SplitLow || own.Source != chart {
		t.Errorf("%+v, %v", own, err)
	}
	if _, err := JudgeSplitAgainst(r, quantity.TemperatureDelta(math.NaN()).PlusMinus(0), 1,
		fact.Source{}); err == nil {
		t.Error("not a number is a target")
	}
	for _, p := range []float64{math.NaN(), math.Inf(1), -1, 1e308} {
		r.Atmosphere = quantity.Pressure(p)
		if _, err := JudgeSplitAgainst(r, own.Target, 1, fact.Source{}); err == nil {
			t.Errorf("an atmosphere of %g Pa is taken", p)
		}
	}
}

func BenchmarkTargetSplit(b *testing.B) {
	b.ReportAllocs()
	db, wb := quantity.Fahrenheit(76), quantity.Fahrenheit(63)
	for b.Loop() {
		if _, err := TargetSplit(db, wb); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkJudgeSplit(b *testing.B) {
	b.ReportAllocs()
	r := SplitReadings{
		fahrenheit(75, 0.5), fahrenheit(62, 0.5), fahrenheit(56, 0.5), highAtmosphere,
	}
	for b.Loop() {
		if _, err := JudgeSplit(r); err != nil {
			b.Fatal(err)
		}
	}
}
