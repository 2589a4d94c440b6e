package main

import (
	"math"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// evacuationTopic is about vacuum and its decay.
var evacuationTopic = topic{name: "evacuation", forms: []form{
	{"rate", evacuationRate}, {"judge", evacuationJudge}, {"until", evacuationUntil},
	{"boils", evacuationBoils},
}}

func (g *generator) microns(v float64) quantity.Pressure {
	if g.ip() {
		return quantity.Microns(v)
	}
	return quantity.Pascals(v)
}

func (g *generator) micronNumber(p quantity.Pressure) float64 {
	return float64(p) / float64(g.microns(1))
}

// decay prints a decay test and has it judged.
func (d *draft) decay(at []float64, readings []float64) (charge.Decay, error) {
	g := d.g
	t := grid{d: d, units: []unit{g.u.minute, g.u.vacuum}}
	t.units[1].free = false
	var log []charge.Sample[quantity.Pressure]
	for i, v := range readings {
		v = rounded(v, g.u.vacuum.places)
		t.rows = append(t.rows, []float64{at[i], v})
		log = append(log, charge.Sample[quantity.Pressure]{
			At: time.Duration(at[i] * float64(time.Minute)), Value: g.microns(v)})
	}
	minutes, _ := d.word("head-minutes")
	vacuum, _ := d.word("head-vacuum")
	caption, _ := d.word("caption")
	t.print(caption, []string{minutes, vacuum + " (" + g.u.vacuum.symbol + ")"})
	return charge.JudgeDecay(log, charge.DecayLimits{})
}

func evacuationRate(g *generator, d *draft) error {
	apart := g.pick(2, 4, 1)
	start := g.among(260, 460, 5, 35, 60, 0.5)
	rate := g.among(14, 60, 1, 2, 8, 0.1)
	var at, readings []float64
	for i := range 6 {
		at = append(at, apart*float64(i))
		readings = append(readings, start+rate*apart*float64(i))
	}
	judged, err := d.decay(at, readings)
	if err != nil {
		return err
	}
	d.giveText("pump", d.must("pump-off"))
	d.noise("outdoor-air", "label-charge")
	end := readings[5]
	d.set("start", start, g.u.vacuum)
	d.set("end", end, g.u.vacuum)
	d.set("minutes", 5*apart, g.u.minute)
	u := unit{g.u.vacuum.symbol + "/min", 1, false}
	d.answer(rate, 0.01*rate, u)
	d.wrong("start-forgotten", end/(5*apart))
	d.wrong("by-readings", (end-start)/6)
	d.wrong("by-intervals", (end-start)/5)
	d.wrong("one-interval-more", (end-start)/(6*apart))
	d.wrong("one-interval-less", (end-start)/(4*apart))
	d.wrong("start-alone", start/(5*apart))
	d.wrong("half-time", 2*(end-start)/(5*apart))
	d.wrong("mean-level", (end+start)/2/(5*apart))
	d.again = g.micronNumber(judged.PerMinute)
	return nil
}

// evacuationJudge draws what a circuit is and reads its vacuum gauge.
func evacuationJudge(g *generator, d *draft) error {
	truth := g.one("sound", "water", "leak", "shallow")
	outcome := map[string]charge.DecayOutcome{"sound": charge.Sound, "water": charge.Moisture,
		"leak": charge.Leak, "shallow": charge.NotDeepEnough}[truth]
	scale := g.either(1, 0.1333)
	start := g.pick(250, 420, 5)
	rise := func(minutes float64) float64 { return 0 }
	switch truth {
	case "sound":
		level := g.pick(20, 60, 5)
		rise = func(m float64) float64 { return level * (1 - math.Exp(-m/3)) }
	case "water":
		level := g.pick(900, 2200, 50)
		rise = func(m float64) float64 { return level * (1 - math.Exp(-m/4)) }
	case "leak":
		rate := g.pick(40, 180, 5)
		rise = func(m float64) float64 { return rate * m }
	case "shallow":
		start = g.pick(700, 1400, 20)
		rise = func(m float64) float64 { return 30 * (1 - math.Exp(-m/3)) }
	}
	var at, readings []float64
	for i := range 9 {
		m := 3 * float64(i)
		at = append(at, m)
		readings = append(readings, rounded(scale*(start+rise(m)), int(g.either(0, 1))))
	}
	judged, err := d.decay(at, readings)
	if err != nil {
		return err
	}
	if judged.Outcome != outcome {
		return errAgain
	}
	d.giveText("pump", d.must("pump-off"))
	d.give("vacuum-limit", rounded(500*scale, 1), g.u.vacuum)
	d.noise("outdoor-air", "label-charge")
	d.phrase("because", "because-"+truth)
	d.choice(truth, "sound", "water", "leak", "shallow")
	return nil
}

func evacuationUntil(g *generator, d *draft) error {
	start := g.among(260, 420, 5, 35, 56, 0.5)
	rate := g.among(4, 24, 0.5, 0.5, 3.2, 0.1)
	minutes := g.pick(4, 10, 1)
	end := rounded(start+rate*minutes, int(g.either(0, 1)))
	limit := rounded(end+rate*g.pick(6, 30, 1)+g.among(1, 3, 1, 0.1, 0.4, 0.1), int(g.either(0, 1)))
	d.give("vacuum-start", start, g.u.vacuum)
	d.give("minutes", minutes, g.u.minute)
	d.give("vacuum-end", end, g.u.vacuum)
	d.give("vacuum-limit", limit, g.u.vacuum)
	d.noise("outdoor-air", "label-charge")
	d.set("rise", end-start, g.u.vacuum)
	d.set("to-go", limit-end, g.u.vacuum)
	per := (end - start) / minutes
	if per < 0.3 {
		return errAgain
	}
	if g.atLeast(3) { // asked from the start of the test
		d.phrase("from", "from-start")
		d.set("to-go", limit-start, g.u.vacuum)
		d.answer((limit-start)/per, 0.02*(limit-start)/per, unit{g.u.minute.symbol, 1, false})
		d.wrong("from-now-on", (limit-end)/per)
	} else {
		d.phrase("from", "from-now")
		d.answer((limit-end)/per, 0.02*(limit-end)/per, unit{g.u.minute.symbol, 1, false})
		d.wrong("from-the-start", (limit-start)/per)
	}
	right := d.Answer.Value
	d.wrong("rate-turned", right*per/minutes)
	d.wrong("limit-itself", limit/per)
	d.wrong("end-rate", right*per/(end/minutes))
	d.wrong("half", right/2)
	d.wrong("minutes-added", right+minutes)
	d.wrong("minutes-taken", right-minutes)
	d.wrong("twice", 2*right)
	var log []charge.Sample[quantity.Pressure]
	for i := range 7 {
		m := 2 * float64(i)
		log = append(log, charge.Sample[quantity.Pressure]{
			At: time.Duration(m * float64(time.Minute)), Value: g.microns(start + per*m)})
	}
	judged, err := charge.JudgeDecay(log, charge.DecayLimits{})
	from := limit - end
	if g.atLeast(3) {
		from = limit - start
	}
	d.again = from / g.micronNumber(judged.PerMinute)
	return err
}

// evacuationBoils asks at which temperature water boils in a vacuum.
func evacuationBoils(g *generator, d *draft) error {
	at := g.among(36, 80, 1, 3, 27, 1)
	if g.atLeast(2) {
		at = g.fine(at)
	}
	pressure := func(t float64) (float64, error) {
		air, err := psychro.Saturated(g.temperature(t), quantity.StandardAtmosphere)
		return rounded(g.micronNumber(air.VaporPressure()), 0), err
	}
	t := grid{d: d, units: []unit{g.u.temp, g.u.vacuum}}
	step := g.either(2, 1)
	from := step * (math.Floor(at/step) - g.pick(2, 4, 1))
	for v := from; v < at+step*g.pick(3, 5, 1); v += step {
		p, err := pressure(v)
		if err != nil {
			return err
		}
		t.rows = append(t.rows, []float64{v, p})
	}
	if !g.atLeast(2) {
		at = t.rows[3][0]
	}
	exact, err := pressure(at)
	if err != nil {
		return err
	}
	shown := d.give("vacuum-now", exact, g.u.vacuum)
	d.noise("outdoor-air", "label-charge")
	t.print(say(d.language, "caption-steam"), []string{g.u.temp.symbol, g.u.vacuum.symbol})
	read := t.between(1, 0, shown, 0)
	if math.IsNaN(read) {
		return errAgain
	}
	t.how("sat", 1, 0, shown)
	d.answer(read, g.either(0.4, 0.2), g.temperatureUnit())
	for key, slip := range map[string]int{"row-below": 1, "row-above": -1, "two-rows-below": 2,
		"two-rows-above": -2} {
		d.wrongLater(key, t.between(1, 0, shown, slip))
	}
	mark := g.either(1000, 100)
	d.wrongLater("mark-above", t.between(1, 0, mark*math.Ceil(shown/mark+1e-9), 0))
	d.wrongLater("mark-below", t.between(1, 0, mark*math.Floor(shown/mark-1e-9), 0))
	d.later()
	exactly, err := psychro.HylandWexler.Temperature(g.microns(shown))
	d.again = g.degrees(exactly)
	return err
}
