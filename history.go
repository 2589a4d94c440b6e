package satline

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// answered pairs the net mass moved with where the reading had settled before the next move;
// intervals that the log does not show are left out.
func answered(p *prepared, t *modes.Aim) []charge.Moved {
	var out []charge.Moved
	net, from := quantity.Mass(0), 0
	for _, m := range p.visit.Moves {
		to := from
		for to < len(p.log) && p.log[to].At <= m.At {
			to++
		}
		if to > from {
			if course, err := p.followed(from, to, t.Method); err == nil &&
				course.State != 0 {
				v := course.Value
				if course.State == charge.Settling { // it went on there, as far as can be told
					v = course.Estimate
				}
				v.Std = max(v.Std, t.Reading.Measured.Std)
				out = append(out, charge.Moved{Net: net, Value: v})
			}
		}
		net += m.Added - m.Recovered
		from = to
	}
	return append(out, charge.Moved{Net: net, Value: t.Reading.Measured})
}

// movedBefore is the net mass added before the first readings that the diagnosis goes by.
func movedBefore(moves []Move, earlier *diagnose.Earlier) quantity.Mass {
	if earlier != nil {
		moves = moves[:len(moves)-1]
	}
	sum := quantity.Mass(0)
	for _, m := range moves {
		sum += m.Added - m.Recovered
	}
	return sum
}

// earlierOf are the settled readings before the last move, and the move; nil where there
// are none.
func earlierOf(p *prepared, t *modes.Aim, mode Mode) (*diagnose.Earlier, error) {
	before := p.log[:len(p.log)-len(sinceLastMove(p))]
	if len(before) == 0 {
		return nil, nil
	}
	last := p.visit.Moves[len(p.visit.Moves)-1]
	whole := len(before) < len(p.log)
	if k := p.before; k != nil && k.earlier != nil && k.mode == mode && whole {
		return k.earlier, nil
	}
	course, err := p.followed(0, len(before), charge.MethodFor(p.visit.Equipment.Metering))
	if err != nil {
		return nil, err
	}
	var r Readings
	p.takeStretch(&r, thinned(before), course, deltaCourse{})
	d, err := derive(p, &r)
	if err != nil {
		return nil, nil // what was read then cannot be, and the log says so elsewhere
	}
	action := diagnose.Action{Kind: diagnose.ChargeAdded, Mass: last.Added}
	if last.Recovered > 0 {
		action = diagnose.Action{Kind: diagnose.ChargeRecovered, Mass: last.Recovered}
	}
	earlier := &diagnose.Earlier{
		Input:   inputOf(p, &r, &d, mode),
		Airflow: r.Airflow.read(), Power: r.Power.read(), ExternalStatic: r.ExternalStatic.read(),
		Current: r.CompressorCurrent.read(), Done: []diagnose.Action{action},
	}
	if t.Method == charge.Superheat && r.ReturnWetBulb.taken && r.OutdoorDryBulb.taken {
		then := modes.Aim{Method: t.Method}
		if target, err := targetOf(&p.visit, &r, t.Method); err == nil {
			then.Target = &target
		}
		earlier.Expected = expected(&p.visit, &then)
	}
	if k := p.before; k != nil && whole {
		earlier.Kept = new(diagnose.Kept)
		k.earlier, k.mode = earlier, mode
	}
	return earlier, nil
}

// followed is follow of a part of the log.
func (p *prepared) followed(from, to int, method charge.Method) (deltaCourse, error) {
	key, whole := stretch{from, to, method}, p.before != nil && to < len(p.log)
	if whole {
		if course, ok := p.before.courses[key]; ok {
			return course, nil
		}
	}
	course, err := follow(p, thinned(p.log[from:to]), method)
	if whole && err == nil {
		p.before.courses[key] = course
	}
	return course, err
}
