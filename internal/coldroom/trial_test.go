package coldroom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"sort"
	"strings"
	"testing"

	"github.com/satline/satline/internal/coldroom/bench"
	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/modes"
	"github.com/satline/satline/internal/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// caseOf is a visit of the bench as the facade would hand it over.
func caseOf(t testing.TB, v *bench.Visit) *modes.Case {
	t.Helper()
	saturation := func(
		g *quantity.Uncertain[quantity.GaugePressure],
		at func(quantity.Pressure) (quantity.Temperature, error),
	) *quantity.Uncertain[quantity.Temperature] {
		if g == nil {
			return nil
		}
		p := g.Value.Absolute(quantity.StandardAtmosphere)
		x, err := at(p)
		if err != nil {
			t.Fatal(err)
		}
		y, _ := at(p + quantity.Pressure(g.Std))
		return &quantity.Uncertain[quantity.Temperature]{Value: x, Std: math.Abs(float64(y - x))}
	}
	r := v.Readings
	c := &modes.Case{Fluid: v.Fluid, Room: v.Room, BulbLine: r["bulbLine"], WholeCharge: v.Charge}
	c.Evidence = diagnose.Evidence{
		Input: readcheck.Input{
			SuctionPressure: v.Suction, LiquidPressure: v.Liquid,
			EvaporatingDew:   saturation(v.Suction, v.Fluid.DewTemperature),
			CondensingBubble: saturation(v.Liquid, v.Fluid.BubbleTemperature),
			CondensingDew:    saturation(v.Liquid, v.Fluid.DewTemperature),
			SuctionLine:      r["suctionLine"], LiquidLine: r["liquidLine"],
			DischargeLine: r["dischargeLine"], OutdoorDryBulb: r["outdoorDryBulb"],
			CondenserLeaving: r["condenserLeaving"], ReturnDryBulb: r["returnDryBulb"],
			SupplyDryBulb: r["supplyDryBulb"],
		},
		Fluid: v.Fluid, Atmosphere: quantity.StandardAtmosphere, Charge: v.Charge,
		Metering: refrigerant.TXV,
	}
	if !v.Valve {
		c.Metering = refrigerant.Capillary
	}
	if v.Current > 0 {
		c.Current = &quantity.Uncertain[quantity.Current]{
			Value: quantity.Amperes(10 * v.Current), Std: 0.3,
		}
		c.RatedLoadCurrent = quantity.Amperes(10)
	}
	for code, yes := range v.Answers {
		c.Answers = append(c.Answers, diagnose.Answer{Code: code, Yes: yes})
	}
	return c
}

// A score counts what came of visits of one kind.
type score struct{ visits, first, three, asked, called int }

func share(n, of int) string { return fmt.Sprintf("%.1f %%", 100*float64(n)/float64(max(of, 1))) }

// TestTrial holds the belief against machines of the bench, which share nothing with the
// model that it compares with. With SATLINE_TRIAL=full it takes ten times as many.
func TestTrial(t *testing.T) {
	n, seed := 200, uint64(41)
	if s := os.Getenv("SATLINE_SEED"); s != "" {
		fmt.Sscan(s, &seed)
		n = 600
	}
	switch {
	case os.Getenv("SATLINE_TRIAL") == "full":
		n = 2000
	case testing.Short():
		n = 30
	}
	var strong, weak, healthy, unread score
	by := map[string]*score{}
	taken := map[string]map[string]int{}
	var said [10]struct {
		visits, right int
		sum           float64
	}
	for i := range n {
		v := bench.Draw(rand.New(rand.NewPCG(seed, uint64(i))), 0.35)
		c := caseOf(t, v)
		k, err := evidenceOf(c)
		if err != nil {
			t.Fatal(err)
		}
		b := believe(k)
		list := b.ranking()
		s := &weak
		switch {
		case v.Truth == sound:
			s = &healthy
		case v.Truth == shortCycle || v.Truth == clamp:
			s = &unread
		case v.Strong:
			s = &strong
		}
		if by[v.Truth] == nil {
			by[v.Truth], taken[v.Truth] = &score{}, map[string]int{}
		}
		all := []*score{s}
		if s != &weak {
			all = append(all, by[v.Truth])
		}
		first, three := list[0].code == v.Truth, false
		for _, r := range list[:3] {
			three = three || r.code == v.Truth
		}
		called := b.cause(sound) < 0.08
		after := first
		for range 3 {
			a := b.next(k)
			if a == nil {
				break
			}
			k.answers[a.look.code] = v.Look(a.look.code)
			b = weigh(k, b.clusters)
			after = b.ranking()[0].code == v.Truth
		}
		for _, s := range all {
			s.visits++
			s.first += one(first)
			s.three += one(three)
			s.asked += one(after)
			s.called += one(called)
		}
		if s != &weak {
			if !first {
				taken[v.Truth][list[0].code]++
			}
			bin := &said[min(9, int(list[0].chance*10))]
			bin.visits++
			bin.right += one(first)
			bin.sum += list[0].chance
		}
	}
	var out strings.Builder
	fmt.Fprintf(&out, "one fault, effect 10 %% or more: %d visits, first %s, three %s, after the looks asked for %s\n",
		strong.visits, share(strong.first, strong.visits), share(strong.three, strong.visits),
		share(strong.asked, strong.visits))
	fmt.Fprintf(&out, "one fault, less: %d visits, first %s, three %s, after %s\n", weak.visits,
		share(weak.first, weak.visits), share(weak.three, weak.visits), share(weak.asked, weak.visits))
	fmt.Fprintf(&out, "only a look shows it: %d visits, first %s, three %s, after %s\n", unread.visits,
		share(unread.first, unread.visits), share(unread.three, unread.visits),
		share(unread.asked, unread.visits))
	fmt.Fprintf(&out, "sound: %d visits, first %s, called wrong %s\n", healthy.visits,
		share(healthy.first, healthy.visits), share(healthy.called, healthy.visits))
	codes := []string{}
	for code := range by {
		codes = append(codes, code)
	}
	sort.Strings(codes)
	for _, code := range codes {
		s := by[code]
		fmt.Fprintf(&out, "%-18s %3d first %s three %s after %s; taken for %v\n", code, s.visits,
			share(s.first, s.visits), share(s.three, s.visits), share(s.asked, s.visits), taken[code])
	}
	for i, s := range said {
		if s.visits > 0 {
			fmt.Fprintf(&out, "said %d to %d %%: %d visits, mean %.0f %%, right %s\n", 10*i, 10*i+10,
				s.visits, 100*s.sum/float64(s.visits), share(s.right, s.visits))
		}
	}
	t.Log("\n" + out.String())
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
