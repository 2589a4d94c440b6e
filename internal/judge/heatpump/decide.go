package heatpump

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/modes"
)

// A decision is the looks worth their minutes, then the cause to mend; empty to leave it.
type decision struct {
	mend  string
	looks []*look
}

const mostLooks = 2

// ofIce are the looks that say why a coil iced.
var ofIce = []string{"defrost-test", "outdoor-coil"}

// uneasy is how many minutes a look may cost beyond what it is worth where liquid comes back and
// nothing is found (common practice, no source).
const uneasy = 6.0

// worth is the chance of a cause from which it is worth a step, and likely that from which
// it is taken to be present.
const likely, worth = 0.5, 0.2

// decide chooses by expected loss in minutes (Raiffa and Schlaifer 1961, Applied Statistical
// Decision Theory, chapters 4 and 5: the value of sample information).
func (b *belief) decide(floods bool) decision {
	var d decision
	now := b.atoms
	d.mend, _ = best(now)
	// A charge is not recovered on a doubt that a look would settle, nor is what is surely wrong
	// left alone for it.
	least := worth
	if ofCharge(d.mend) || d.mend == "" && b.of(sound) < worth {
		least = 0.05
	}
	spare := 0.0
	if floods && b.of(sound) >= worth {
		spare, least = uneasy, 0.1
	}
	for len(d.looks) < mostLooks {
		chosen, then := b.bestLook(now, d.looks, least, -spare)
		if chosen == nil {
			break
		}
		d.looks, now, spare = append(d.looks, chosen), then, 0
	}
	return d
}

// bestLook is the look, of those not taken, that is worth most of all that are worth more than
// value minutes, with what is believed after its likelier answer; nil for none. It is after
// faults of a chance of at least least.
func (b *belief) bestLook(
	now []atom, taken []*look, least, value float64,
) (chosen *look, then []atom) {
	_, before := best(now)
	for i := range looks {
		l := &looks[i]
		if b.c.Seen.CoilIced && !slices.Contains(ofIce, l.code) {
			continue // what the gauges show is that of the ice
		}
		if answered(b.c, l.code) || l.fits != nil && !l.fits(b.c) || l.after(now) < least ||
			slices.Contains(taken, l) {
			continue
		}
		yes, no := l.split(now)
		_, ly := best(yes.atoms)
		_, ln := best(no.atoms)
		if v := before - yes.weight*ly - no.weight*ln - l.minutes; v > value {
			value, chosen, then = v, l, yes.atoms
			if no.weight > yes.weight {
				then = no.atoms
			}
		}
	}
	return chosen, then
}

// after is the chance of the faults that a look is after.
func (l *look) after(atoms []atom) float64 {
	sum := 0.0
	for i := range atoms {
		if l.chance(&atoms[i]) >= 0.5 {
			sum += atoms[i].chance
		}
	}
	return sum
}

type branch struct {
	weight float64
	atoms  []atom
}

// split is what is believed after a yes and after a no.
func (l *look) split(atoms []atom) (yes, no branch) {
	yes.atoms, no.atoms = make([]atom, len(atoms)), make([]atom, len(atoms))
	copy(yes.atoms, atoms)
	copy(no.atoms, atoms)
	for i := range atoms {
		p := l.chance(&atoms[i])
		yes.atoms[i].chance *= p
		no.atoms[i].chance *= 1 - p
		yes.weight += yes.atoms[i].chance
		no.weight += no.atoms[i].chance
	}
	for _, b := range []*branch{&yes, &no} {
		for i := range b.atoms {
			b.atoms[i].chance /= max(b.weight, 1e-12)
		}
	}
	return yes, no
}

// best is the act with the least expected loss, as the code of the cause it mends, empty to
// leave the machine.
func best(atoms []atom) (mend string, loss float64) {
	by := make([]float64, len(causes))
	for i := range atoms {
		for k := range causes {
			if atoms[i].is(&causes[k]) {
				by[k] += atoms[i].chance
			}
		}
	}
	for k := range causes {
		loss += by[k] * causes[k].neglect
	}
	for act := range causes {
		a := &causes[act]
		if a.code == sound {
			continue
		}
		sum := a.mend
		for k := range causes {
			x := &causes[k]
			switch {
			case k == act:
			case !ofCharge(a.code):
				sum += by[k] * x.neglect
			case ofCharge(x.code):
				sum += by[k] * math.Min(x.neglect, anotherRound)
			default: // what else is wrong shows in the next readings
				sum += by[k] * (math.Min(x.neglect, x.mend+anotherRound) + wrongCharge)
			}
		}
		if sum < loss {
			mend, loss = a.code, sum
		}
	}
	return mend, loss
}

func ofCharge(code string) bool {
	return code == undercharge || code == overcharge || code == nextToEmpty
}

// question is the first look as a question.
func (b *belief) question(l *look) *modes.Question {
	q := &modes.Question{Look: l.code, Take: lookFact(l.code, "")}
	yes, no := l.split(b.atoms)
	for i, end := range []branch{yes, no} {
		after := (&belief{atoms: end.atoms}).standings()[0]
		suffix := []string{".yes", ".no"}[i]
		q.Outcomes = append(q.Outcomes, modes.Outcome{
			Chance: end.weight, Then: after.code, ThenChance: after.chance,
			Says: outcomeFact(l.code, suffix, end.weight, after.code, after.chance),
		})
	}
	return q
}
