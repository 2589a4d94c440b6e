package main

// dosingTopic learns the rate from one move of refrigerant and sizes the next.
var dosingTopic = topic{name: "dosing", forms: []form{
	{"superheat-add", func(g *generator, d *draft) error { return dosingForm(d, -1, false) }},
	{"subcooling-add", func(g *generator, d *draft) error { return dosingForm(d, 1, false) }},
	{"superheat-recover", func(g *generator, d *draft) error { return dosingForm(d, 1, true) }},
	{"subcooling-recover", func(g *generator, d *draft) error { return dosingForm(d, -1, true) }},
}}

// dosingForm draws a first dose that moved the reading, up where way is 1, and
// asks for the rest of the way at the same rate.
func dosingForm(d *draft, way float64, recover bool) error {
	g := d.g
	superheat := way < 0 != recover
	unit := g.u.small
	first := g.among(3, 9, 0.5, 80, 260, 10)
	rate := g.among(0.4, 1.4, 0.05, 0.008, 0.028, 0.001) // degrees a unit
	moved := rounded(first*rate, 1)
	target := g.among(8, 12, 0.5, 5, 7, 0.5)
	if superheat {
		target = g.among(10, 20, 0.5, 6, 11, 0.5)
	}
	left := g.among(4, 9, 0.1, 2, 5, 0.1)
	after := rounded(target-way*left, 1)
	before := rounded(after-way*moved, 1)
	if after < 1.5 || before < 1 || moved < g.either(1.5, 0.8) {
		return errAgain
	}
	d.give("before", before, g.u.delta)
	d.give("moved", first, unit)
	d.give("after", after, g.u.delta)
	d.give("target", target, g.u.delta)
	d.noise("outdoor-air", "current")
	rest := first * left / moved
	if g.atLeast(3) { // half of the rest was moved meanwhile, and the scale shows the sum
		second := d.give("moved-since", rounded(rest*g.pick(0.3, 0.6, 0.05), int(g.either(1, 0))),
			unit)
		rest -= second
		if rest < first*0.2 {
			return errAgain
		}
	}
	u := unit.with(int(g.either(1, 0)))
	u.free = false
	d.set("to-go", left, g.u.delta)
	d.set("did", moved, g.u.delta)
	all := first * left / moved
	d.set("all", all, u)
	d.answer(rest, 0.02*all, u)
	since := all - rest
	d.wrong("from-the-start", all+first-since)
	d.wrong("less-the-first", all-first-since)
	d.wrong("first-again", first)
	d.wrong("reading-itself", first*after/moved-since)
	d.wrong("target-itself", first*target/moved-since)
	d.wrong("half", rest/2)
	d.wrong("turned", first*moved/left-since)
	d.wrong("twice", 2*rest)
	if since > 0 {
		d.wrong("since-forgotten", all)
		d.wrong("since-added", all+since)
	}
	// Both readings on one line over the refrigerant moved, solved for the target
	// by similar triangles, less what has been moved.
	d.again = first*(before-target)/(before-after) - first - since
	return nil
}
