package charge

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func f(v float64) quantity.Temperature       { return quantity.Fahrenheit(v) }
func df(v float64) quantity.TemperatureDelta { return quantity.FahrenheitDelta(v) }

// eachCell calls do for every cell of the table, with no for the undefined.
func eachCell(do func(wb, db, target float64)) {
	for i := range superheatTable {
		for j, v := range superheatTable[i] {
			do(float64(tableMinWetBulb+j), float64(tableMinOutdoor+i), v)
		}
	}
}

// Table RA3.2-2, from memory: every cell comes back as tabulated, and where the
// table has none there is no number.
func TestTableSuperheatCells(t *testing.T) {
	cells := 0
	eachCell(func(wb, db, want float64) {
		got, err := TableSuperheat(f(wb), f(db))
		if want == no {
			if !errors.Is(err, ErrNotNow) || got != 0 {
				t.Errorf(
					"%v °F wet bulb, %v °F outdoors: %v, %v; the table has no target there", wb, db,
					got, err,
				)
			}
			return
		}
		cells++
		if err != nil || math.Abs(got.Fahrenheit()-want) > 1e-9 {
			t.Errorf(
				"%v °F wet bulb, %v °F outdoors: %v (%v), want %v °F", wb, db, got.Fahrenheit(),
				err, want,
			)
		}
	})
	if cells != 1055 {
		t.Errorf("%d cells have a target", cells)
	}
}

// readPrints returns the table that unit labels print, by outdoor dry bulb from 55 °F in steps of
// 5 and return wet bulb from 50 °F in steps of 2, with no where it has a dash.
func readPrints(t *testing.T) (cells [13][14]float64) {
	t.Helper()
	file, err := os.Open("testdata/label-superheat.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows[1:] {
		for k, text := range row[1:] {
			cells[i][k] = no
			if text == "" {
				continue
			}
			if cells[i][k], err = strconv.ParseFloat(text, 64); err != nil {
				t.Fatal(err)
			}
		}
	}
	return cells
}

// The table with decimals and the one that unit labels print in whole degrees
// are one table: no cell differs by more than the 1 °F by which prints differ,
// and half the cells by no more than rounding.
func TestTableAgreesWithLabels(t *testing.T) {
	var n, rounding, onlyOne int
	sum, worst, worstSmooth := 0.0, [2]float64{}, [2]float64{}
	for i, row := range readPrints(t) {
		for k, label := range row {
			wb, db := float64(50+2*k), float64(55+5*i)
			cell := superheatTable[int(db)-tableMinOutdoor][int(wb)-tableMinWetBulb]
			if (label == no) != (cell == no) {
				// A label rounds 4.8 up to 5, where decimals show it to be below.
				onlyOne++
				if label > 5 || cell > 5 {
					t.Errorf("%v/%v: label %v, table %v", db, wb, label, cell)
				}
				continue
			}
			if cell == no {
				continue
			}
			n++
			diff := math.Abs(cell - label)
			sum += cell - label
			if diff > math.Abs(worst[0]-worst[1]) {
				worst = [2]float64{label, cell}
			}
			if diff > 1+1e-9 {
				t.Errorf("%v/%v: label %v, table %v", db, wb, label, cell)
			}
			smooth, _, _ := smoothSuperheat(wb, db)
			if math.Abs(smooth-label) > math.Abs(worstSmooth[1]-worstSmooth[0]) {
				worstSmooth = [2]float64{label, smooth}
			}
			if diff <= 0.5+1e-9 {
				rounding++
			}
		}
	}
	labels := verify.Source{
		Cite: "superheat charging table in installation instructions of split systems, worst of " +
			"116 cells (prints differ by 1 °F)",
		Kind: verify.Published,
	}
	verify.Value(t, labels, "target superheat of Table RA3.2-2", "°F", worst[0], worst[1], 1+1e-9)
	verify.Value(t, labels, "smooth target superheat", "°F", worstSmooth[0], worstSmooth[1], 1.2)
	t.Logf(
		"%d cells, %d within rounding, mean difference %.3f °F, %d on one side only", n, rounding,
		sum/float64(n), onlyOne,
	)
	if n != 116 || rounding < n*8/10 || math.Abs(sum/float64(n)) > 0.1 || onlyOne > 3 {
		t.Error("the table and the labels are not one")
	}
}

// The cells between those that labels print lie on the plane between them, within the 1 °F by
// which prints differ: so no cell that decides a charge rests on memory alone.
func TestTableLiesBetweenThePrints(t *testing.T) {
	prints := readPrints(t)
	n, worst := 0, [2]float64{}
	eachCell(func(wb, db, cell float64) {
		x, y := (wb-50)/2, (db-55)/5
		k, i := min(int(x), len(prints[0])-2), min(int(y), len(prints)-2)
		x, y = x-float64(k), y-float64(i)
		a, b, c, d := prints[i][k], prints[i][k+1], prints[i+1][k], prints[i+1][k+1]
		if cell == no || a == no || b == no || c == no || d == no {
			return
		}
		n++
		between := (1-y)*((1-x)*a+x*b) + y*((1-x)*c+x*d)
		if math.Abs(cell-between) > math.Abs(worst[1]-worst[0]) {
			worst = [2]float64{between, cell}
		}
	})
	t.Logf("%d cells", n)
	verify.Value(t, verify.Source{
		Cite: "superheat charging table in installation instructions of split systems, " +
			"between its cells, worst of the cells of Table RA3.2-2 that it encloses",
		Kind: verify.Published,
	}, "target superheat of Table RA3.2-2", "°F", worst[0], worst[1], 1+1e-9)
}

// A cell copied wrongly would stand out from its neighbors.
func TestTableIsSmooth(t *testing.T) {
	eachCell(func(wb, db, v float64) {
		i, j := int(db)-tableMinOutdoor, int(wb)-tableMinWetBulb
		bend := func(a, b float64) bool {
			return a != no && b != no && v != no && math.Abs(a+b-2*v) > 0.61
		}
		if i > 0 && i < len(superheatTable)-1 &&
			bend(superheatTable[i-1][j], superheatTable[i+1][j]) ||
			j > 0 && j < len(superheatTable[i])-1 &&
				bend(superheatTable[i][j-1], superheatTable[i][j+1]) {
			t.Errorf("%v °F wet bulb, %v °F outdoors: %v stands out", wb, db, v)
		}
	})
}

// Common practice, no source.
func TestTableSuperheatOfCommonPractice(t *testing.T) {
	for _, c := range []struct{ wb, db, want float64 }{{62, 77, 14}, {62, 75, 15}, {62, 76, 15}} {
		got, err := TableSuperheat(f(c.wb), f(c.db))
		if err != nil {
			t.Fatal(err)
		}
		practice := verify.Source{
			Cite: "target superheat of the trade",
			Kind: verify.CommonPractice,
		}
		verify.Value(
			t,
			practice,
			fmt.Sprintf(
				"target superheat at a return wet bulb of %v °F and %v °F outdoors", c.wb, c.db,
			),
			"°F",
			c.want,
			got.Fahrenheit(),
			0.5,
		)
		if line := FormulaSuperheat(f(c.wb), f(c.db)).Fahrenheit(); math.Abs(line-c.want) > 1 {
			t.Errorf("the line gives %v °F at %v °F outdoors", line, c.db)
		}
	}
}

func TestSmoothTargetMeetsTable(t *testing.T) {
	worst, sum, n := 0.0, 0.0, 0.0
	eachCell(func(wb, db, want float64) {
		if want == no {
			return
		}
		got, err := SmoothSuperheat(f(wb), f(db))
		if err != nil {
			t.Fatal(err)
		}
		d := got.Target.Fahrenheit() - want
		worst = max(worst, math.Abs(d))
		sum, n = sum+d*d, n+1
	})
	if rms := math.Sqrt(sum / n); rms > 0.1 || worst > 0.5 {
		t.Errorf(
			"the smooth target is up to %.2f °F off the table, %.2f root mean square", worst, rms,
		)
	}
}

func TestSmoothTargetSlopes(t *testing.T) {
	const h = 1e-4
	eachCell(func(wb, db, v float64) {
		if v == no {
			return
		}
		_, perWB, perDB := smoothSuperheat(wb, db)
		up, _, _ := smoothSuperheat(wb+h, db)
		down, _, _ := smoothSuperheat(wb-h, db)
		if d := (up - down) / (2 * h); math.Abs(d-perWB) > 1e-6 {
			t.Errorf("%v/%v: slope per wet bulb %v, by differences %v", wb, db, perWB, d)
		}
		up, _, _ = smoothSuperheat(wb, db+h)
		down, _, _ = smoothSuperheat(wb, db-h)
		if d := (up - down) / (2 * h); math.Abs(d-perDB) > 1e-6 {
			t.Errorf("%v/%v: slope per outdoor degree %v, by differences %v", wb, db, perDB, d)
		}
		if perWB <= 0 || perDB >= 0 {
			t.Errorf("%v/%v: slopes %v and %v point the wrong way", wb, db, perWB, perDB)
		}
		// Differences of the table over 2 °F are good to 0.05 °F per °F.
		i, j := int(db)-tableMinOutdoor, int(wb)-tableMinWetBulb
		if j > 0 && j < len(superheatTable[i])-1 && superheatTable[i][j-1] != no {
			if d := (superheatTable[i][j+1] - superheatTable[i][j-1]) / 2; math.Abs(
				d-perWB,
			) > 0.35 {
				t.Errorf("%v/%v: slope per wet bulb %.3f, table %.3f", wb, db, perWB, d)
			}
		}
		if i > 0 && i < len(superheatTable)-1 && superheatTable[i+1][j] != no {
			if d := (superheatTable[i+1][j] - superheatTable[i-1][j]) / 2; math.Abs(d-perDB) > 0.2 {
				t.Errorf("%v/%v: slope per outdoor degree %.3f, table %.3f", wb, db, perDB, d)
			}
		}
	})
}

func TestLineTargetStaysNear(t *testing.T) {
	worst := 0.0
	eachCell(func(wb, db, v float64) {
		if v != no && wb >= 58 && wb <= 72 && db >= 65 && db <= 105 {
			worst = max(worst, math.Abs(FormulaSuperheat(f(wb), f(db)).Fahrenheit()-v))
		}
	})
	t.Logf("worst %.2f °F", worst)
	if worst > 3.5 {
		t.Errorf("the line is %.1f °F off the table", worst)
	}
}

// A more humid return never lowers the target and a hotter outdoors never
// raises it; near cells the target does not jump.
func TestTableSuperheatIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wb := rapid.Float64Range(50, 76).Draw(t, "wet bulb")
		db := rapid.Float64Range(55, 115).Draw(t, "outdoor")
		step := rapid.Float64Range(0.001, 3).Draw(t, "step")
		here, err := TableSuperheat(f(wb), f(db))
		if err != nil {
			return
		}
		if here < df(5-1e-6) {
			t.Fatalf("a target of %v °F", here.Fahrenheit())
		}
		if wetter, err := TableSuperheat(f(wb+step), f(db)); err == nil &&
			(wetter < here || wetter > here+df(3*step)) {
			t.Fatalf(
				"%v °F at %v, %v °F at %v", here.Fahrenheit(), wb, wetter.Fahrenheit(), wb+step,
			)
		}
		if hotter, err := TableSuperheat(f(wb), f(db+step)); err == nil &&
			(hotter > here || hotter < here-df(1.2*step)) {
			t.Fatalf(
				"%v °F at %v, %v °F at %v outdoors", here.Fahrenheit(), db, hotter.Fahrenheit(),
				db+step,
			)
		}
	})
}

func TestTableSuperheatOutsideTable(t *testing.T) {
	for _, c := range []struct {
		wb, db float64
		code   string
	}{
		{62, 54.9, "outdoor-cold"}, {62, 116, "outdoor-above-table"},
		{49, 80, "wet-bulb-below-table"}, {77, 80, "wet-bulb-above-table"},
		{52, 95, "target-below-floor"}, {math.Inf(1), 80, "wet-bulb-above-table"},
	} {
		_, err := TableSuperheat(f(c.wb), f(c.db))
		var notNow *NotNowError
		if !errors.As(err, &notNow) || notNow.Code() != c.code {
			t.Errorf("%v/%v: %v, want %s", c.wb, c.db, err, c.code)
		}
	}
	var r *RangeError
	if _, err := TableSuperheat(f(math.NaN()), f(80)); !errors.As(err, &r) {
		t.Errorf("not a number: %v", err)
	}
}

// GUM 5.1.2 against the slopes of the table itself, by differences.
func TestSuperheatTargetUncertainty(t *testing.T) {
	target, err := SuperheatTarget(nil, f(66).PlusMinus(df(1)), f(85).PlusMinus(df(1)))
	if err != nil {
		t.Fatal(err)
	}
	perWB := (superheatTable[30][17] - superheatTable[30][15]) / 2
	perDB := (superheatTable[32][16] - superheatTable[28][16]) / 4
	want := math.Hypot(perWB, perDB)
	if got := quantity.TemperatureDelta(target.Value.Std).Fahrenheit(); math.Abs(got-want) > 0.1 {
		t.Errorf("standard uncertainty %v °F, want %v", got, want)
	}
	if largest, _ := target.Budget.Largest(); largest.Reading != fromReturnWetBulb {
		t.Errorf("the wet bulb counts most, not %s", largest.Reading)
	}
	if !target.General() || target.Tolerance != df(5) {
		t.Errorf("%+v", target)
	}
}

// The manufacturer's figure outranks the general one, and the result says so.
func TestLabelOutranksTable(t *testing.T) {
	label := df(11).PlusMinus(df(0.5))
	target, err := SuperheatTarget(&label, f(40).PlusMinus(0), f(30).PlusMinus(0))
	if err != nil || target.Value != label || target.General() ||
		target.Source.Standing != fact.Label {
		t.Errorf("%+v, %v", target, err)
	}
	sub, err := SubcoolingTarget(&label)
	if err != nil || sub.Value != label || sub.General() || sub.Tolerance != df(3) {
		t.Errorf("%+v, %v", sub, err)
	}
	general, err := SubcoolingTarget(nil)
	if err != nil || !general.General() || general.Value.Std == 0 {
		t.Errorf("%+v, %v", general, err)
	}
	if _, err := ApproachTarget(nil); !errors.Is(err, ErrNotNow) {
		t.Errorf("approach without a label: %v", err)
	}
	wild := df(400).PlusMinus(0)
	var r *RangeError
	if _, err := SubcoolingTarget(&wild); !errors.As(err, &r) {
		t.Errorf("a subcooling of 400 °F: %v", err)
	}
}

func BenchmarkTableSuperheat(b *testing.B) {
	b.ReportAllocs()
	wb, db := f(62.3), f(77.4)
	for b.Loop() {
		if _, err := TableSuperheat(wb, db); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSmoothSuperheat(b *testing.B) {
	b.ReportAllocs()
	wb, db := f(62.3), f(77.4)
	for b.Loop() {
		if _, err := SmoothSuperheat(wb, db); err != nil {
			b.Fatal(err)
		}
	}
}
