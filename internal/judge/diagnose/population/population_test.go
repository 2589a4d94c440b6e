package population

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A level is where machines evaporate, and by how much over outdoors they condense, in °F.
type level struct{ evaporating, condensing float64 }

// moments of levels.
type moments struct {
	n           int
	sum, square level
}

func (m *moments) add(x level) {
	m.n++
	m.sum.evaporating += x.evaporating
	m.sum.condensing += x.condensing
	m.square.evaporating += x.evaporating * x.evaporating
	m.square.condensing += x.condensing * x.condensing
}

func (m *moments) mean() level {
	n := float64(m.n)
	return level{m.sum.evaporating / n, m.sum.condensing / n}
}

func (m *moments) std() level {
	n, mean := float64(m.n), m.mean()
	of := func(square, mean float64) float64 {
		return math.Sqrt(max(0, square/n-mean*mean) * n / max(1, n-1))
	}
	return level{
		of(m.square.evaporating, mean.evaporating), of(m.square.condensing, mean.condensing),
	}
}

func levelOf(
	t *testing.T, r *refrigerant.Refrigerant, low, high quantity.Pressure, outdoor float64,
) level {
	t.Helper()
	dew, err := r.DewTemperature(low)
	if err != nil {
		t.Fatal(err)
	}
	bubble, err := r.BubbleTemperature(high)
	if err != nil {
		t.Fatal(err)
	}
	return level{dew.Fahrenheit(), bubble.Fahrenheit() - outdoor}
}

// group of rows of the transcribed tables, by source and stage, or by refrigerant.
type group struct{ name, refrigerant, stage string }

// published reads the levels of the tables at a wet bulb of 67 °F.
func published(t *testing.T, outdoor float64) map[group]*moments {
	t.Helper()
	f, err := os.Open("testdata/machines.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[group]*moments{}
	for _, row := range rows[1:] {
		var v [4]float64 // wet bulb, outdoor, suction, liquid
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[7+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		if v[0] != 67 || v[1] != outdoor {
			continue
		}
		r, err := refrigerant.Lookup(row[1])
		if err != nil {
			t.Fatal(err)
		}
		gauge := func(psig float64) quantity.Pressure {
			return quantity.PSIG(psig).Absolute(quantity.StandardAtmosphere)
		}
		x := levelOf(t, r, gauge(v[2]), gauge(v[3]), outdoor)
		for _, g := range []group{{row[0], row[1], row[4]}, {"all", row[1], ""}} {
			if out[g] == nil {
				out[g] = &moments{}
			}
			out[g].add(x)
		}
	}
	return out
}

// drawn are the levels of machines of the population, by kind and by refrigerant.
func drawn(
	t *testing.T, n int, outdoor float64, o Options,
) (kinds, refrigerants map[string]*moments) {
	t.Helper()
	kinds, refrigerants = map[string]*moments{}, map[string]*moments{}
	for i := range n {
		m, err := Draw(rand.New(rand.NewPCG(14, uint64(i))), o)
		if err != nil {
			t.Fatal(err)
		}
		c := cycle.RatingConditions()
		c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
		s, err := m.System.Solve(c, m.Own)
		if err != nil {
			t.Fatal(err)
		}
		if s.Limit != cycle.NoLimit {
			continue
		}
		x := levelOf(t, m.Refrigerant, s.Suction.Pressure, s.Liquid.Pressure, outdoor)
		for _, to := range []struct {
			of  map[string]*moments
			key string
		}{{kinds, m.Kind.Code}, {refrigerants, m.Refrigerant.Designation()}} {
			if to.of[to.key] == nil {
				to.of[to.key] = &moments{}
			}
			to.of[to.key].add(x)
		}
	}
	return kinds, refrigerants
}

// tables are the groups of machines.csv with the kind that stands for each.
var tables = []struct {
	group
	kind string
}{
	{
		group{
			"installation instructions of 10 SEER split air conditioners, normal operating " +
				"pressures",
			"R-22", "single",
		},
		"r22-to-11",
	},
	{
		group{
			"installation instructions of 13 SEER split air conditioners of 2008, normal " +
				"operating pressures",
			"R-410A", "single",
		},
		"r410a-13",
	},
	{
		group{
			"unit information of 14 SEER package air conditioners of 2008 to 2012, cooling " +
				"performance",
			"R-410A", "single",
		},
		"r410a-14",
	},
	{
		group{
			"unit information of 14 SEER package heat pumps of 2008 to 2012, cooling performance",
			"R-410A", "single",
		},
		"r410a-14",
	},
	{
		group{
			"installation instructions of 16 SEER two-stage split heat pumps, normal operating " +
				"pressures in cooling",
			"R-410A", "high",
		},
		"two-stage-full",
	},
	{
		group{
			"installation instructions of 16 SEER two-stage split heat pumps, normal operating " +
				"pressures in cooling",
			"R-410A", "low",
		},
		"two-stage-low",
	},
	{
		group{
			"installation instructions of wall-mounted package air conditioners, cooling " +
				"pressure table",
			"R-410A", "single",
		},
		"wall-mounted",
	},
}

const draws = 1000

// The population evaporates and condenses where makers say their machines do, and
// spreads at least as far.
func TestPopulationAgainstMakersTables(t *testing.T) {
	byTable := published(t, 95)
	kinds, _ := drawn(t, draws, 95, Options{})
	for _, x := range tables {
		p, k := byTable[x.group], kinds[x.kind]
		source := verify.Source{Cite: x.name, Kind: verify.Published}
		what := fmt.Sprintf("%s, %s stage, 95 °F outdoors and 80/67 °F: ", x.refrigerant, x.stage)
		verify.Value(
			t, source, what+"evaporating", "°F", p.mean().evaporating, k.mean().evaporating, 1.5,
		)
		verify.Value(
			t, source, what+"condensing over outdoors", "°F", p.mean().condensing,
			k.mean().condensing, 2,
		)
		if s, m := p.std(), k.std(); m.evaporating < s.evaporating || m.condensing < s.condensing {
			t.Errorf(
				"%s: the population spreads by %.1f and %.1f °F, the table by %.1f and %.1f",
				x.kind, m.evaporating, m.condensing, s.evaporating, s.condensing,
			)
		}
	}
}

// So they do in other weather.
func TestWeatherAgainstMakersTables(t *testing.T) {
	for _, c := range []struct {
		of       int // of tables
		metering refrigerant.Metering
	}{{0, 0}, {1, refrigerant.TXV}, {4, refrigerant.TXV}} {
		x := tables[c.of]
		rated, _ := drawn(t, draws/2, 95, Options{Metering: c.metering})
		for _, outdoor := range []float64{65, 75, 105} {
			p, k := published(t, outdoor)[x.group].mean(), published(t, 95)[x.group].mean()
			kinds, _ := drawn(t, draws/2, outdoor, Options{Metering: c.metering})
			m, at := kinds[x.kind].mean(), rated[x.kind].mean()
			source := verify.Source{Cite: x.name, Kind: verify.Published}
			what := fmt.Sprintf(
				"%s, %s stage, at %g instead of 95 °F outdoors: change of ", x.refrigerant, x.stage,
				outdoor,
			)
			verify.Value(
				t, source, what+"evaporating", "°F", p.evaporating-k.evaporating,
				m.evaporating-at.evaporating, 1.5,
			)
			verify.Value(
				t, source, what+"condensing over outdoors", "°F", p.condensing-k.condensing,
				m.condensing-at.condensing, 2,
			)
		}
	}
}

// Over the return wet bulb they follow a maker's table too.
func TestWetBulbAgainstAMakersTable(t *testing.T) {
	source := verify.Source{
		Cite: "a maker's table of an R-410A machine at 90 °F outdoors and 80 °F return air",
		Kind: verify.Published,
	}
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	s, err := cycle.Design(
		cycle.Spec{
			Refrigerant: r,
			Capacity:    quantity.Tons(3),
			Metering:    refrigerant.TXV,
			Suction:     quantity.Fahrenheit(51),
			Condensing:  quantity.FahrenheitDelta(17),
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct{ wet, evaporating float64 }{{59, 45.0}, {63, 47.9}, {67, 50.4},
		{71, 53.0}} {
		o, err := s.Solve(
			cycle.Conditions{
				OutdoorDryBulb: quantity.Fahrenheit(90),
				ReturnDryBulb:  quantity.Fahrenheit(80),
				ReturnWetBulb:  quantity.Fahrenheit(x.wet),
			},
			cycle.Faults{},
		)
		if err != nil {
			t.Fatal(err)
		}
		got := levelOf(t, r, o.Suction.Pressure, o.Liquid.Pressure, 90).evaporating
		verify.Value(
			t, source, fmt.Sprintf("evaporating at a return wet bulb of %g °F", x.wet), "°F",
			x.evaporating, got, 2,
		)
	}
}

// What is known makes the kinds it speaks of likelier, and never leaves nothing.
func TestKnownNarrows(t *testing.T) {
	weight := func(k Known, code string) float64 {
		w, sum, of := k.Weights(), 0.0, 0.0
		for i := range w {
			sum += w[i]
			if Kinds[i].Code == code {
				of = w[i]
			}
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%+v: weights add to %v", k, sum)
		}
		return of
	}
	for _, x := range []struct {
		less, more Known
		kind       string
	}{
		{Known{}, Known{Refrigerant: "R-22"}, "r22-to-11"},
		{Known{Refrigerant: "R-22"}, Known{Refrigerant: "R-22", Year: 1985}, "r22-to-11"},
		{Known{Refrigerant: "R-410A", Valve: true}, Known{Refrigerant: "R-410A", Valve: true,
			SEER: 15}, "r410a-14"},
		{Known{Valve: true}, Known{Valve: true, Stages: TwoStage, Share: 0.7}, "two-stage-low"},
		{Known{Valve: true}, Known{Valve: true, Electronic: true}, "variable-low"},
		{Known{Valve: true, Electronic: true}, Known{Valve: true, Stages: VariableSpeed},
			"variable-low"},
		{Known{Refrigerant: "R-410A"}, Known{Refrigerant: "R-410A", Arrangement: WallMounted},
			"wall-mounted"},
		{Known{Refrigerant: "R-600a"}, Known{Refrigerant: "R-600a", Year: 2024}, "a2l-14"},
	} {
		if a, b := weight(x.less, x.kind), weight(x.more, x.kind); !(b > a) {
			t.Errorf("%s: %.3f by %+v, %.3f by %+v", x.kind, a, x.less, b, x.more)
		}
	}
}

const page = "../../../../POPULATION.md"

// The tables of the page are those of the machines: SATLINE_UPDATE=1 go test -run Page
// ./internal/judge/diagnose/population writes them anew.
func TestPage(t *testing.T) {
	kinds, refrigerants := drawn(t, draws, 95, Options{})
	byTable := published(t, 95)
	var b strings.Builder
	row := func(name string, p, m *moments) {
		table := "no table found | "
		if p != nil {
			table = fmt.Sprintf(
				"%.1f (%.1f), %.1f (%.1f) of %d | ", p.mean().evaporating, p.std().evaporating,
				p.mean().condensing, p.std().condensing, p.n,
			)
		}
		fmt.Fprintf(
			&b, "| %s | %s%.1f (%.1f) | %.1f (%.1f) |\n", name, table, m.mean().evaporating,
			m.std().evaporating, m.mean().condensing, m.std().condensing,
		)
	}
	b.WriteString(
		"| | makers' tables: evaporating, condensing over outdoors, sizes | population: " +
			"evaporating | condensing over outdoors |\n|---|---|---|---|\n",
	)
	for _, name := range []string{"R-22", "R-410A", "R-454B", "R-32", "R-407C", "R-134a"} {
		row(name, byTable[group{"all", name, ""}], refrigerants[name])
	}
	for i := range Kinds {
		var p *moments
		for _, x := range tables {
			if x.kind == Kinds[i].Code {
				if p == nil {
					p = &moments{}
				}
				of := byTable[x.group]
				p.n += of.n
				p.sum.evaporating += of.sum.evaporating
				p.sum.condensing += of.sum.condensing
				p.square.evaporating += of.square.evaporating
				p.square.condensing += of.square.condensing
			}
		}
		row("`"+Kinds[i].Code+"`", p, kinds[Kinds[i].Code])
	}
	text, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	const begin, end = "<!-- levels -->\n", "<!-- end -->"
	before, rest, ok1 := strings.Cut(string(text), begin)
	was, after, ok2 := strings.Cut(rest, end)
	if !ok1 || !ok2 {
		t.Fatal("the page has no place for the table")
	}
	if os.Getenv("SATLINE_UPDATE") != "" {
		if err := os.WriteFile(page, []byte(before+begin+b.String()+end+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if was != b.String() {
		t.Errorf("the table of the page is not that of the population:\n%s", b.String())
	}
}
