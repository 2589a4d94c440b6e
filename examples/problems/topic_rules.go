package main

import (
	"slices"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// rulesTopic is about when not to charge, and by what.
var rulesTopic = topic{name: "rules", forms: []form{
	{"obstacle", rulesObstacle}, {"method", rulesMethod}, {"wait", rulesWait},
	{"first", rulesFirst},
}}

// An obstacle is a condition of a machine, with its code in the library; those
// without a code stand in nobody's way.
type obstacle struct {
	name, code string
	set        func(*charge.Situation)
}

var obstacles = []obstacle{
	{"iced", "coil-iced", func(s *charge.Situation) { s.CoilIced = true }},
	{"washed", "coil-wet", func(s *charge.Situation) { s.CoilWet = true }},
	{"panels", "panels-off", func(s *charge.Situation) { s.PanelsOff = true }},
	{"heats", "heating", func(s *charge.Situation) { s.Heating = true }},
	{"cycling", "condenser-fan-cycling",
		func(s *charge.Situation) { s.CondenserFanCycling = true }},
	{"opened", "circuit-opened", func(s *charge.Situation) { s.SealedSystemOpened = true }},
	{"economizer", "economizer-open", func(s *charge.Situation) { s.EconomizerOpen = true }},
	{"doors", "doors-open", func(s *charge.Situation) { s.DoorsOpen = true }},
}

var harmless = []string{"sun", "new-filter", "night", "gauges", "old"}

// situation is a machine with a fixed restrictor that nothing stands in the way of.
func (d *draft) situation() charge.Situation {
	g := d.g
	wet := d.give("return-wet-bulb", g.among(63, 68, 1, 17, 20, 1), g.u.temp)
	dry := d.give("return-air", wet+g.among(10, 13, 1, 6, 7, 1), g.u.temp)
	outdoor := d.give("outdoor-air", g.among(78, 88, 1, 26, 31, 1), g.u.temp)
	certain := func(v float64) *quantity.Uncertain[quantity.Temperature] {
		return new(g.temperature(v).PlusMinus(quantity.FahrenheitDelta(0.5)))
	}
	return charge.Situation{Metering: refrigerant.FixedRestrictor, ReturnWetBulb: certain(wet),
		ReturnDryBulb: certain(dry), OutdoorDryBulb: certain(outdoor), Running: time.Hour,
		SinceMove: time.Hour}
}

func forbids(s charge.Situation, code string) bool {
	return slices.ContainsFunc(charge.Obstacles(s, charge.Superheat),
		func(o charge.Obstacle) bool { return o.Code == code && o.Forbids })
}

// rulesObstacle asks which of four conditions forbids judging the charge.
func rulesObstacle(g *generator, d *draft) error {
	s := d.situation()
	truth := obstacles[g.rng.IntN(len(obstacles))]
	if charge.Forbidden(charge.Obstacles(s, charge.Superheat)) {
		return errAgain
	}
	truth.set(&s)
	if !forbids(s, truth.code) {
		return errAgain
	}
	d.noise("current", "label-charge")
	d.phrase("because", "because-"+truth.name)
	d.choice(truth.name, append([]string{truth.name}, harmless...)...)
	return nil
}

// rulesFirst turns it about: of four conditions the one that does not matter.
func rulesFirst(g *generator, d *draft) error {
	d.situation()
	truth := g.one(harmless...)
	names := []string{truth}
	for _, o := range obstacles {
		names = append(names, o.name)
	}
	d.noise("current", "label-charge")
	d.phrase("because", "why-"+truth)
	d.reasoned = true
	d.choice(truth, names...)
	for i, w := range d.Wrong {
		d.Wrong[i].Mistake = d.must("because-" + w.Code)
	}
	return nil
}

func rulesMethod(g *generator, d *draft) error {
	s := d.situation()
	cases := map[string]func(){
		"superheat": func() {}, "subcooling": func() {
			s.Metering, s.LabelSubcooling = refrigerant.TXV, true
		},
		"approach": func() { s.Metering, s.LabelApproach = refrigerant.TXV, true },
		"weigh-in": func() {
			o := obstacles[g.rng.IntN(6)]
			if o.name == "iced" || o.name == "washed" || o.name == "panels" {
				o = obstacles[3]
			}
			o.set(&s)
			d.giveText("notice", d.must(o.name))
		},
	}
	right := g.one("superheat", "subcooling", "approach", "weigh-in")
	device, label := "device-restrictor", "label-none"
	cases[right]()
	if s.Metering == refrigerant.TXV {
		device = "device-valve"
	}
	if s.LabelSubcooling {
		label = "label-subcooling"
	}
	if s.LabelApproach {
		label = "label-approach"
	}
	d.giveText("expansion", d.must(device))
	d.giveText("label", d.must(label))
	d.noise("current", "label-charge")
	method, _ := charge.ChooseMethod(s)
	if want := map[string]charge.Method{"superheat": charge.Superheat, "weigh-in": charge.WeighIn,
		"subcooling": charge.Subcooling, "approach": charge.Approach}[right]; method != want {
		return errAgain
	}
	d.phrase("because", "because-"+right)
	d.choice(right, "superheat", "subcooling", "approach", "weigh-in")
	return nil
}

// rulesWait asks how long to wait before reading, after a start and after a move.
func rulesWait(g *generator, d *draft) error {
	run, move := charge.ShortestRun().Minutes(), charge.WaitAfterMove().Minutes()
	d.give("least-run", run, g.u.minute)
	d.give("least-move", move, g.u.minute)
	ran := d.give("ran", g.pick(1, run+12, 1), g.u.minute)
	moved := d.give("since-move", g.pick(1, min(move-1, ran), 1), g.u.minute)
	d.noise("outdoor-air", "return-air")
	left := max(run-ran, move-moved)
	d.set("left-run", max(run-ran, 0), g.u.minute)
	d.set("left-move", max(move-moved, 0), g.u.minute)
	if left < 3 || run-ran == move-moved {
		return errAgain
	}
	d.answer(left, 0.5, g.u.minute)
	d.wrong("other-wait", min(run-ran, move-moved))
	d.wrong("both-waits", max(run-ran, 0)+max(move-moved, 0))
	d.wrong("run-itself", run)
	d.wrong("move-itself", move)
	d.wrong("ran-itself", ran)
	d.wrong("moved-itself", moved)
	d.wrong("half", left/2)
	d.wrong("apart", run-moved)
	d.wrong("crossed", move-ran)
	s := charge.Situation{Metering: refrigerant.FixedRestrictor}
	for m := 0.0; m < 60; m++ {
		s.Running = time.Duration((ran + m) * float64(time.Minute))
		s.SinceMove = time.Duration((moved + m) * float64(time.Minute))
		if !forbids(s, "run-short") && !forbids(s, "just-moved") {
			d.again = m
			break
		}
	}
	return nil
}
