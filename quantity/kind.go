package quantity

import (
	"fmt"
	"math"
	"strconv"
)

// A unit turns a number written with its symbol into SI: (v + zero) * scale.
// The zero is that of an affine scale, in the unit itself; differences use the
// scale alone.
type unit struct {
	symbol string
	scale  float64
	zero   float64
	also   []string
	in     systems // where a user is offered it
}

func (u *unit) toSI(v float64) float64   { return (v + u.zero) * u.scale }
func (u *unit) fromSI(v float64) float64 { return v/u.scale - u.zero }

// A shown says which unit of a kind is shown, and with how many decimals.
type shown struct{ unit, decimals int }

// A kind is what is common to all values of one type: its name in sentences,
// the units its text may have, and how it is shown in each system.
type kind struct {
	name  string
	units []unit // the first is the unit of MarshalText
	base  int    // which of them is SI

	si, ip shown
	// Below fineBelow, in SI, the fine units are shown instead.
	fineBelow      float64
	fineSI, fineIP shown
	// Below closeBelow, in SI, closer decimals than the usual are.
	closeBelow float64

	// compound marks kinds that people write in two steps, "6 lb 4 oz".
	compound bool
	// floor says what a value below zero would be, where there is none.
	floor string
	// difference holds the units of an uncertainty where they are not the
	// units of the value itself, "68.5 psig ± 0.5 psi".
	difference []unit
}

// unwritable says why a value has no text, or nothing.
func (k *kind) unwritable(v float64) string {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "not a finite number"
	case k.floor != "" && v < 0:
		return k.floor
	}
	return ""
}

// appendExact writes v so that parsing the text gives v again, bit for bit.
func (k *kind) appendExact(b []byte, v float64) ([]byte, error) {
	if problem := k.unwritable(v); problem != "" {
		return b, fmt.Errorf("quantity: %s is %s", k.name, problem)
	}
	return appendExactly(b, v, &k.units[0], &k.units[k.base]), nil
}

// appendExactly writes v in u with the fewest digits, or in SI where no number of u is exactly v.
func appendExactly(b []byte, v float64, u, si *unit) []byte {
	from := len(b)
	for digits := 12; digits <= 17; digits++ {
		b = strconv.AppendFloat(b[:from], u.fromSI(v), 'g', digits, 64)
		back, err := strconv.ParseFloat(string(b[from:]), 64)
		if err != nil || u.toSI(back) != v {
			continue
		}
		// Up to 15 digits are the fewest already, but for an exponent that may be shorter.
		if size := math.Abs(back); digits > 15 || size < 1e-4 || size >= 1e6 {
			if s := strconv.FormatFloat(back, 'g', -1, 64); len(s) < len(b)-from {
				b = append(b[:from], s...)
			}
		}
		b = append(b, ' ')
		return append(b, u.symbol...)
	}
	b = strconv.AppendFloat(b[:from], v, 'g', -1, 64)
	b = append(b, ' ')
	return append(b, si.symbol...)
}

// shown is the unit that v is shown in, and its decimals.
func (k *kind) shown(v float64, s Style) shown {
	if s.unit != "" {
		for i := range k.units {
			if k.units[i].symbol == s.unit {
				return shown{i, s.decimals}
			}
		}
	}
	usual, fine := k.ip, k.fineIP
	if s.System == SI {
		usual, fine = k.si, k.fineSI
	}
	if math.Abs(v) < k.fineBelow && v != 0 {
		return fine
	}
	if math.Abs(v) < k.closeBelow && v != 0 {
		usual.decimals += 2
	}
	return usual
}

// uncertaintyUnits are the units of an uncertainty, one for each of the value.
func (k *kind) uncertaintyUnits() []unit {
	if k.difference != nil {
		return k.difference
	}
	return k.units
}
