package quantity

import "slices"

// systems is a set of Systems.
type systems uint8

const (
	inIP systems = 1 << iota
	inSI
)

func (s System) in(set systems) bool {
	if s == SI {
		return set&inSI != 0
	}
	return set&inIP != 0
}

// A Unit is one that values of T are written in. The zero Unit is the one of SI.
type Unit[T Quantity] struct{ of *unit }

func (u Unit[T]) unit() *unit {
	if u.of != nil {
		return u.of
	}
	var zero T
	k := zero.kind()
	return &k.units[k.base]
}

// Symbol returns the unit as it stands behind a number: "psig".
func (u Unit[T]) Symbol() string { return u.unit().symbol }

// Number returns v in the unit, not rounded.
func (u Unit[T]) Number(v T) float64 { return u.unit().fromSI(float64(v)) }

// Value returns the quantity of n of the unit.
func (u Unit[T]) Value(n float64) T { return T(u.unit().toSI(n)) }

// UnitOf returns the unit in which Format shows values of T in a system, those
// apart that are so small that it has a finer one for them.
func UnitOf[T Quantity](sys System) Unit[T] {
	var zero T
	k := zero.kind()
	return Unit[T]{&k.units[k.shown(0, Style{System: sys}).unit]}
}

// Units returns the units to offer where a user who works in a system enters a
// value of T: that of Format, the finer one, the others of the system, and those of
// the other system. Parsers take a few more that nobody would pick.
func Units[T Quantity](sys System) []Unit[T] {
	var zero T
	k := zero.kind()
	other := IP
	if sys != SI {
		other = SI
	}
	var out []Unit[T]
	add := func(i int, sys System) {
		if u := (Unit[T]{&k.units[i]}); sys.in(u.of.in) && !slices.Contains(out, u) {
			out = append(out, u)
		}
	}
	for _, sys := range []System{sys, other} {
		add(k.shown(0, Style{System: sys}).unit, sys)
		if k.fineBelow > 0 {
			add(k.shown(k.fineBelow/2, Style{System: sys}).unit, sys)
		}
		for i := range k.units {
			add(i, sys)
		}
	}
	return out
}

// Symbols returns the symbol of every unit of every type, and of every unit of an
// uncertainty, sorted: what may stand behind a number in a sentence.
func Symbols() []string {
	var out []string
	for _, k := range kinds {
		for _, units := range [][]unit{k.units, k.difference} {
			for i := range units {
				out = append(out, units[i].symbol)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
