package main

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Options choose a problem set. The same options give the same set, always.
type Options struct {
	Seed         uint64
	Topics       []string
	PerTopic     int
	Refrigerants []string
	Units        quantity.System
	Difficulty   int  // 1 reads a table row, 2 interpolates among readings that are not needed, 3 adds thin air, tables of absolute pressures and traps
	Choices      bool // four answers to tick
}

// A Set is a numbered list of problems.
type Set struct {
	Options  Options
	Problems []Problem
	// Flammable and Toxic are the designations among the refrigerants that burn,
	// and those of the higher toxicity, class B of ASHRAE 34.
	Flammable, Toxic []string
}

// topics in the order a course takes them.
var topics = []struct {
	name, about string
	make        func(*generator) (Problem, error)
}{
	{
		"saturation",
		"the temperature at which a refrigerant boils, from a gauge and a table",
		saturationProblem,
	},
	{"glide", "dew less bubble temperature of a blend at one pressure", glideProblem},
	{"superheat", "the suction line over the dew point", superheatProblem},
	{"subcooling", "the liquid line under the bubble point", subcoolingProblem},
	{"altitude", "a sea-level table used where the air is thin", altitudeProblem},
	{
		"cycle",
		"the flow of refrigerant, and the power of the compressor, from enthalpies",
		cycleProblem,
	},
	{
		"target",
		"target superheat of a fixed restrictor, and what follows for the charge",
		targetProblem,
	},
	{"air", "humidity ratio from dry and wet bulb", airProblem},
	{"capacity", "cooling capacity from airflow and enthalpies", capacityProblem},
	{"airflow", "airflow from electric heat and a temperature rise", airflowProblem},
	{"dosing", "the next dose of refrigerant, from what the last one did", dosingProblem},
	{
		"diagnosis",
		"the fault behind five values, with a fixed restrictor and with a TXV, and the instrument that misleads",
		diagnosisProblem,
	},
}

func topicNames() []string {
	var out []string
	for _, t := range topics {
		out = append(out, t.name)
	}
	return out
}

// leastWrong is how many wrong answers every problem has, enough for a question
// with four choices.
const leastWrong = 3

// Generate makes the problem set of the options.
func Generate(o Options) (Set, error) {
	if o.PerTopic < 1 || o.PerTopic > 50 {
		return Set{}, fmt.Errorf("%d problems a topic; choose from 1 to 50", o.PerTopic)
	}
	if o.Difficulty < 1 || o.Difficulty > 3 {
		return Set{}, fmt.Errorf("difficulty %d; choose 1, 2 or 3", o.Difficulty)
	}
	fluids, err := fluidsOf(o.Refrigerants)
	if err != nil {
		return Set{}, err
	}
	for _, name := range o.Topics {
		if !slices.Contains(topicNames(), name) {
			return Set{}, fmt.Errorf(
				"no topic %q; there are %s",
				name,
				strings.Join(topicNames(), ", "),
			)
		}
	}
	set := Set{Options: o}
	for _, f := range fluids {
		if f.Flammable() {
			set.Flammable = append(set.Flammable, f.Designation())
		}
		if strings.HasPrefix(fmt.Sprint(f.SafetyGroup()), "B") {
			set.Toxic = append(set.Toxic, f.Designation())
		}
	}
	for _, t := range topics {
		if len(o.Topics) > 0 && !slices.Contains(o.Topics, t.name) {
			continue
		}
		if t.name == "glide" && !slices.ContainsFunc(fluids, glides) {
			if len(o.Topics) > 0 {
				return Set{}, fmt.Errorf(
					"none of the refrigerants has a glide to speak of; name a zeotropic blend such as R-407C",
				)
			}
			continue
		}
		g := newGenerator(t.name, o, fluids)
		shuffle := rand.New(rand.NewPCG(o.Seed, hash("choices of "+t.name)))
		asked := map[string]bool{}
		for g.index = range o.PerTopic {
			p, err := g.draw(t.make, asked)
			if err != nil {
				return Set{}, fmt.Errorf("%s: %w", t.name, err)
			}
			p.Topic, p.Number = t.name, len(set.Problems)+1
			if o.Choices {
				p.choose(shuffle)
			}
			set.Problems = append(set.Problems, p)
		}
	}
	return set, nil
}

// draw makes problems until one has enough wrong answers that cannot be taken
// for the right one, and was not asked before as far as there are others.
func (g *generator) draw(
	topic func(*generator) (Problem, error),
	asked map[string]bool,
) (Problem, error) {
	for try := range 1000 {
		p, err := topic(g)
		if err != nil {
			return Problem{}, err
		}
		p.distinct()
		same := fmt.Sprint(p.Statement, p.Given, p.Answer.Text)
		if p.Answer.Unit == "" { // the same fault with other figures is the same problem
			same = fmt.Sprint(p.Ask, p.Among, p.Answer.Text)
		}
		if len(p.Wrong) >= leastWrong && (!asked[same] || try >= 100) {
			asked[same] = true
			return p, nil
		}
	}
	return Problem{}, fmt.Errorf(
		"no problem with %d telling wrong answers comes of these options; choose other refrigerants",
		leastWrong,
	)
}

// choose puts the right answer among three wrong ones.
func (p *Problem) choose(rng *rand.Rand) {
	const right = -1
	p.Among = nil
	order := append([]int{right}, rng.Perm(len(p.Wrong))[:leastWrong]...)
	rng.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
	for i, n := range order {
		letter := string(rune('A' + i))
		if n == right {
			p.Choices = append(p.Choices, Choice{Letter: letter, Text: p.Answer.Text, Right: true})
			continue
		}
		p.Wrong[n].Letter = letter
		p.Choices = append(p.Choices, Choice{Letter: letter, Text: p.Wrong[n].Text})
	}
}

func fluidsOf(names []string) ([]*refrigerant.Refrigerant, error) {
	if len(names) == 0 {
		return nil, fmt.Errorf("name at least one refrigerant")
	}
	var out []*refrigerant.Refrigerant
	for _, n := range names {
		f, err := refrigerant.Lookup(n)
		if err != nil {
			return nil, err
		}
		// Problems are set around comfort cooling, and a fluid has to be
		// saturated there.
		if p, err := f.DewPressure(quantity.Fahrenheit(20)); err != nil ||
			p < quantity.Kilopascals(110) {
			return nil, fmt.Errorf(
				"%s does not boil above atmospheric pressure at 20 °F, where these problems begin; choose another",
				f.Designation(),
			)
		}
		if _, err := f.DewPressure(quantity.Fahrenheit(140)); err != nil {
			return nil, fmt.Errorf(
				"%s does not condense at 140 °F, where these problems end; choose another",
				f.Designation(),
			)
		}
		out = append(out, f)
	}
	return out, nil
}

// glides reports whether a fluid glides by 2 °F or more at 40 °F and at 100 °F.
func glides(f *refrigerant.Refrigerant) bool {
	for _, at := range []float64{40, 100} {
		p, err := f.BubblePressure(quantity.Fahrenheit(at))
		if err != nil {
			return false
		}
		if glide, err := f.Glide(p); err != nil || glide < quantity.FahrenheitDelta(2) {
			return false
		}
	}
	return true
}

func hash(s string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(s))
	return h.Sum64()
}

// A generator draws the numbers of one topic.
type generator struct {
	rng        *rand.Rand
	fluids     []*refrigerant.Refrigerant
	sys        quantity.System
	difficulty int
	seed       uint64
	index      int // of the problem within its topic
}

// newGenerator seeds the numbers of a topic by its name, so that they do not
// depend on which other topics are in the set.
func newGenerator(topic string, o Options, fluids []*refrigerant.Refrigerant) *generator {
	return &generator{
		rng:        rand.New(rand.NewPCG(o.Seed, hash(topic))),
		fluids:     fluids,
		sys:        o.Units,
		difficulty: o.Difficulty,
		seed:       o.Seed,
	}
}

func (g *generator) fluid() *refrigerant.Refrigerant { return g.fluids[g.rng.IntN(len(g.fluids))] }

// turn takes the forms of a question, 0 to n−1, one after the other.
func (g *generator) turn(n int) int { return int((g.seed + uint64(g.index)) % uint64(n)) }

// pick draws low, low+step, … up to high.
func (g *generator) pick(low, high, step float64) float64 {
	n := int(math.Round((high-low)/step)) + 1
	return low + step*float64(g.rng.IntN(n))
}

func (g *generator) ip() bool { return g.sys == quantity.IP }
