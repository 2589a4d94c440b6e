package main

import (
	"cmp"
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Version of the program. Within its first number a seed with its options stays
// the same set of problems.
const Version = "2.0.0"

// Options choose a problem set. The same options give the same set.
type Options struct {
	Seed         uint64
	Topics       []string // of topics, or of forms as target/judge; all where empty
	PerTopic     int
	Refrigerants []string
	Units        quantity.System
	Bar          bool // pressures in bar instead of kPa, in SI
	Language     Language
	// Difficulty 1 reads a row or fills in a formula; 2 reads between rows, among
	// readings that are not needed; 3 adds thin air and a step of its own.
	Difficulty int
	Choices    bool // four answers to tick
}

// A Set is a numbered list of problems.
type Set struct {
	Options  Options
	Problems []Problem
	// Flammable and Toxic are the designations among the refrigerants that burn,
	// and those of the higher toxicity, class B of ASHRAE 34.
	Flammable, Toxic []string
}

// mostEach is the most problems of a topic.
const mostEach = 50

// leastWrong is how many wrong answers every problem has, enough for a question
// with four choices.
const leastWrong = 3

var errNoGlide = errors.New(
	"none of the refrigerants has a glide to speak of; name a zeotropic blend such as R-407C",
)

// Generate makes the problem set of the options.
func Generate(o Options) (Set, error) {
	o.Language = cmp.Or(o.Language, English)
	if err := o.check(); err != nil {
		return Set{}, err
	}
	fluids, err := fluidsOf(o.Refrigerants)
	if err != nil {
		return Set{}, err
	}
	chosen, err := chosenForms(o.Topics)
	if err != nil {
		return Set{}, err
	}
	set := Set{Options: o}
	for _, f := range fluids {
		if f.Flammable() {
			set.Flammable = append(set.Flammable, f.Designation())
		}
		if f.SafetyGroup().HigherToxicity() {
			set.Toxic = append(set.Toxic, f.Designation())
		}
	}
	for _, t := range topics {
		if t.forms = chosen[t.name]; len(t.forms) == 0 {
			continue
		}
		g := newGenerator(t.name, o, fluids)
		if t.glides && !slices.ContainsFunc(fluids, glides) {
			if len(o.Topics) > 0 {
				return Set{}, errNoGlide
			}
			continue
		}
		asked := map[string]bool{}
		for g.index = range o.PerTopic {
			p, err := g.problem(t, asked)
			if err != nil {
				return Set{}, fmt.Errorf("%s: %w", t.name, err)
			}
			p.Number = len(set.Problems) + 1
			set.Problems = append(set.Problems, p)
		}
	}
	return set, nil
}

// check is nil where the options can be kept.
func (o Options) check() error {
	switch {
	case o.PerTopic < 1 || o.PerTopic > mostEach:
		return fmt.Errorf("%d problems a topic; choose from 1 to %d", o.PerTopic, mostEach)
	case o.Difficulty < 1 || o.Difficulty > 3:
		return fmt.Errorf("difficulty %d; choose 1, 2 or 3", o.Difficulty)
	case o.Bar && o.Units == quantity.IP:
		return errors.New("pressures in bar go with SI units; choose -units SI")
	case o.Language != English && o.Language != Spanish:
		return fmt.Errorf("no language %q; choose en or es", o.Language)
	}
	return nil
}

// problem draws until a problem has wrong answers on the sides of the right one
// that chance has chosen, and was not asked before. Where chance cannot have its
// way with the form, any problem with enough wrong answers does.
func (g *generator) problem(t topic, asked map[string]bool) (Problem, error) {
	f := t.forms[g.turn(len(t.forms))]
	below, central := g.choosing.IntN(leastWrong+1), g.choosing.IntN(2) == 0
	for try := range 600 {
		p, err := g.draw(t.name, f)
		if errors.Is(err, errAgain) {
			continue
		}
		if err != nil {
			return Problem{}, fmt.Errorf("%s: %w", f.name, err)
		}
		if asked[p.same()] && try < 200 || !p.choose(g.choosing, below, central, try >= 100) {
			continue
		}
		asked[p.same()] = true
		if !g.options.Choices {
			p.unlettered()
		}
		return p, nil
	}
	return Problem{}, fmt.Errorf(
		"%s: no problem with %d telling wrong answers comes of these options; "+
			"choose other refrigerants",
		f.name, leastWrong)
}

// errAgain is that of a draw that makes no sense, as a fan that would have to
// turn backwards; another is drawn.
var errAgain = errors.New("draw again")

func fluidsOf(names []string) ([]*refrigerant.Refrigerant, error) {
	if len(names) == 0 {
		return nil, errors.New("name at least one refrigerant")
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
				"%s does not boil above atmospheric pressure at 20 °F (−7 °C), "+
					"where these problems begin; choose another",
				f.Designation())
		}
		if _, err := f.DewPressure(quantity.Fahrenheit(140)); err != nil {
			return nil, fmt.Errorf(
				"%s does not condense at 140 °F (60 °C), where these problems end; choose another",
				f.Designation())
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
	rng      *rand.Rand
	choosing *rand.Rand // the choices
	fluids   []*refrigerant.Refrigerant
	options  Options
	u        units
	index    int // of the problem within its topic

	leaks map[*refrigerant.Refrigerant][]refrigerant.LeakStep // those worked out, which takes time
}

// newGenerator seeds the numbers of a topic by its name, so that they do not
// depend on which other topics are in the set.
func newGenerator(topic string, o Options, fluids []*refrigerant.Refrigerant) *generator {
	return &generator{
		rng:      rand.New(rand.NewPCG(o.Seed, hash(topic))),
		choosing: rand.New(rand.NewPCG(o.Seed, hash("choices of "+topic))),
		fluids:   fluids,
		options:  o,
		u:        unitsOf(o),
		leaks:    map[*refrigerant.Refrigerant][]refrigerant.LeakStep{},
	}
}

func (g *generator) fluid() *refrigerant.Refrigerant { return g.fluids[g.rng.IntN(len(g.fluids))] }

// glider is a refrigerant of the set that glides.
func (g *generator) glider() *refrigerant.Refrigerant {
	gliding := slices.DeleteFunc(slices.Clone(g.fluids),
		func(f *refrigerant.Refrigerant) bool { return !glides(f) })
	return gliding[g.rng.IntN(len(gliding))]
}

// turn takes the forms of a question, 0 to n−1, one after the other.
func (g *generator) turn(n int) int {
	return int((g.options.Seed + uint64(g.index)) % uint64(n))
}

// pick draws low, low+step, … up to high.
func (g *generator) pick(low, high, step float64) float64 {
	n := int(math.Round((high-low)/step)) + 1
	return rounded(low+step*float64(g.rng.IntN(n)), 6)
}

// among draws low to high by step, in the first three of inch-pound units and in
// the last three of SI.
func (g *generator) among(low, high, step, lowSI, highSI, stepSI float64) float64 {
	if g.ip() {
		return g.pick(low, high, step)
	}
	return g.pick(lowSI, highSI, stepSI)
}

// pressureAmong draws a pressure, in psi and in kPa, in the student's unit.
func (g *generator) pressureAmong(low, high, step, lowSI, highSI, stepSI float64) float64 {
	v := g.among(low, high, step, lowSI, highSI, stepSI)
	if g.options.Bar {
		return rounded(v/100, 2)
	}
	return v
}

// one draws one of some names.
func (g *generator) one(names ...string) string { return names[g.rng.IntN(len(names))] }

func (g *generator) ip() bool               { return g.options.Units == quantity.IP }
func (g *generator) atLeast(level int) bool { return g.options.Difficulty >= level }
