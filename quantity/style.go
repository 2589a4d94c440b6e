package quantity

import (
	"math"
	"strconv"
)

// A Style says how values are written for people. The zero Style is inch-pound
// units and a decimal point.
type Style struct {
	// System chooses the units.
	System System
	// Comma writes the decimals behind a comma, "1,5 kg", and reads them so too.
	Comma bool
	// OneUnit writes the unit of an uncertain value once, "62.0 ± 0.6 °F", wherever
	// the value and its uncertainty have the same one or only the value's is in
	// doubt: a gauge pressure is "68.5 ± 0.5 psig".
	OneUnit bool

	unit     string
	decimals int
}

// In returns s with a unit and a number of decimals, from 0 to 12, for the values
// that have that unit; others are shown as s shows them. The unit is given by its
// symbol, as the comment of each parser lists it first in its line.
func (s Style) In(unit string, decimals int) Style {
	s.unit, s.decimals = unit, min(max(decimals, 0), 12)
	return s
}

// textBuffer holds the text of any value that is one of the trade.
const textBuffer = 48

func (k *kind) appendStyled(b []byte, v float64, s Style) []byte {
	in := k.shown(v, s)
	u := &k.units[in.unit]
	return append(append(s.appendNumber(b, u.fromSI(v), in.decimals), ' '), u.symbol...)
}

// appendNumber is 'f' formatting without a negative zero, and 'g' for a number so
// large that it is none of the trade.
func (s Style) appendNumber(b []byte, v float64, decimals int) []byte {
	start := len(b)
	if math.Abs(v) >= 1e15 {
		b = strconv.AppendFloat(b, v, 'g', 6, 64)
	} else {
		b = dropMinusOfZero(strconv.AppendFloat(b, v, 'f', decimals, 64), start)
	}
	if s.Comma {
		for i := start; i < len(b); i++ {
			if b[i] == '.' {
				b[i] = ','
			}
		}
	}
	return b
}

func dropMinusOfZero(b []byte, start int) []byte {
	if b[start] != '-' {
		return b
	}
	for _, c := range b[start+1:] {
		if c != '0' && c != '.' {
			return b
		}
	}
	return append(b[:start], b[start+1:]...)
}
