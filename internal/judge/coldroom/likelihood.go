package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom/signature"
)

// shut weighs valves that let nothing through, which no signature is of: suction in a vacuum under
// a head that liquid stands at reads as if the refrigerant were gone. That what starves an
// evaporator is as good as shut is half as likely as that a shortage goes so far (common practice,
// no source).
func (k *known) shut(byCause []float64) {
	const asGoodAsShut = 0.5
	if !k.vacuum || k.below(signature.OverOutdoor) {
		return
	}
	alike := asGoodAsShut * byCause[causeIndex(undercharge)]
	for _, cause := range []string{starving, restriction} {
		i := causeIndex(cause)
		byCause[i] = max(byCause[i], alike)
	}
}

// below reports whether a feature is below nought: a liquid line that is warmer than its
// refrigerant boils holds no liquid, and below the temperature of its air nothing condenses.
func (k *known) below(f int) bool {
	const beyond = 1.5 // K, more than what the table or the place of a gauge is off
	return k.read(f) && k.value[f]+2*k.std[f] < -beyond
}

// A circumstance is what is known beside readings and looks, and how likely it is with a fault
// that does not account for it: one of none of some causes or faults, or, where they speak against
// it, of one of them. Common practice, no source.
type circumstance struct {
	holds   func(*known) bool
	causes  []string
	against bool
	chance  float64
}

var circumstances = []circumstance{
	// No sound machine runs with such a head.
	{holds: func(k *known) bool { return k.hottest }, chance: 0.03,
		causes: []string{condenser, overcharge, gas, headHigh}},
	// Vapor is in the liquid line.
	{holds: func(k *known) bool { return k.below(signature.Subcooling) }, chance: 0.05,
		causes: []string{undercharge, restriction, headLow}},
	// Nothing condenses.
	{holds: func(k *known) bool { return k.below(signature.OverOutdoor) }, chance: 0.05,
		causes: []string{undercharge, compressor}},
	{holds: func(k *known) bool { return k.tooCold }, chance: 0.05, against: true,
		causes: []string{load}},
	// A box so far over what it is kept at began warm, and one whose circuit was filled stood.
	{holds: (*known).far, chance: 0.2, against: true, causes: []string{"cold-door", defrostHeats}},
	{holds: func(k *known) bool { return k.far() && k.weighed }, chance: 0.2,
		causes: []string{pullsDown}},
	{holds: func(k *known) bool { return k.complaint }, chance: 0.5, against: true,
		causes: []string{sound, clamp}},
	{holds: func(k *known) bool { return k.weighed }, chance: 0.05, against: true,
		causes: []string{undercharge, reserve, overcharge, gas}},
	{holds: func(k *known) bool { return k.added }, chance: 0.2,
		causes: []string{undercharge, reserve}},
	{holds: func(k *known) bool { return k.stains }, chance: 0.25,
		causes: []string{undercharge, reserve}},
}

func (c *circumstance) of(f *fault) bool {
	return slices.Contains(c.causes, f.cause) || slices.Contains(c.causes, f.code)
}

// answered is the likelihood of what was looked at and seen, by a fault, and by another beside
// it where there is one.
func (k *known) answered(f, beside *fault) float64 {
	p := k.course.likelihood(f, beside)
	for i := range looks {
		l := &looks[i]
		chance := l.chance(f)
		if beside != nil {
			chance = l.chanceOfBoth(f, beside)
		}
		if yes, ok := k.answers[l.code]; ok {
			p *= chanceOf(chance, yes)
		} else if slices.Contains(k.hints, l.code) {
			p *= chance
		}
	}
	for i := range circumstances {
		c := &circumstances[i]
		of := c.of(f) || beside != nil && c.of(beside)
		if of == c.against && c.holds(k) {
			p *= c.chance
		}
	}
	return p
}

func chanceOf(p float64, yes bool) float64 {
	if yes {
		return p
	}
	return 1 - p
}
