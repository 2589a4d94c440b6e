package quantity

import (
	"fmt"
	"math"
	"strconv"
)

// A unit turns a number written with its symbol into SI: (v + shift) * scale.
// The shift is the zero of an affine scale, in the unit itself; differences
// use the scale alone.
type unit struct {
	symbol string
	scale  float64
	shift  float64
	also   []string
}

func (u unit) toSI(v float64) float64   { return (v + u.shift) * u.scale }
func (u unit) fromSI(v float64) float64 { return v/u.scale - u.shift }

// A kind is what is common to all values of one type: its name in sentences,
// the units its text may have, and how it is shown in each system.
type kind struct {
	name  string
	units []unit // the first is the unit of MarshalText, the last is SI

	si, ip       int // index in units of what Format shows
	siDec, ipDec int // decimals of what Format shows

	// Below fineBelow, in SI, Format shows the fine units instead.
	fineBelow            float64
	fineSI, fineIP       int
	fineSIDec, fineIPDec int

	// compound marks kinds that people write in two steps, "6 lb 4 oz".
	compound bool
	// difference holds the units of an uncertainty where they are not the
	// units of the value itself, "68.5 psig ± 0.5 psi".
	difference []unit
}

func (k *kind) base() unit { return k.units[len(k.units)-1] }

// appendExact writes v so that parsing the text gives v again, bit for bit.
func (k *kind) appendExact(b []byte, v float64) ([]byte, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return b, fmt.Errorf("quantity: %s is not a finite number", k.name)
	}
	u := k.units[0]
	for digits := 12; digits <= 17; digits++ {
		s := strconv.FormatFloat(u.fromSI(v), 'g', digits, 64)
		back, err := strconv.ParseFloat(s, 64)
		if err == nil && u.toSI(back) == v {
			b = append(b, shorten(s)...)
			b = append(b, ' ')
			return append(b, u.symbol...), nil
		}
	}
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	b = append(b, ' ')
	return append(b, k.base().symbol...), nil
}

// shorten rewrites a decimal with the fewest digits that mean the same value.
func shorten(s string) string {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return s
	}
	if short := strconv.FormatFloat(v, 'g', -1, 64); len(short) < len(s) {
		return short
	}
	return s
}

func (k *kind) format(v float64, sys System) string {
	i, dec := k.shown(v, sys)
	u := &k.units[i]
	return string(append(append(appendFixed(make([]byte, 0, 32), u.fromSI(v), dec), ' '), u.symbol...))
}

// shown is the index of the unit that Format shows v in, and its decimals.
func (k *kind) shown(v float64, sys System) (index, decimals int) {
	switch fine := math.Abs(v) < k.fineBelow && v != 0; {
	case fine && sys == IP:
		return k.fineIP, k.fineIPDec
	case fine:
		return k.fineSI, k.fineSIDec
	case sys == IP:
		return k.ip, k.ipDec
	}
	return k.si, k.siDec
}

// formatDifference shows the uncertainty v of value in the unit that value is
// shown in.
func (k *kind) formatDifference(v, value float64, sys System) string {
	i, dec := k.shown(value, sys)
	u := k.units[i]
	symbol := u.symbol
	if k.difference != nil {
		symbol = k.difference[i].symbol
	}
	return string(append(append(appendFixed(make([]byte, 0, 32), v/u.scale, dec), ' '), symbol...))
}

// appendFixed is 'f' formatting without a negative zero, and 'g' for a number so
// large that it is none of the trade.
func appendFixed(b []byte, v float64, dec int) []byte {
	if math.Abs(v) >= 1e15 {
		return strconv.AppendFloat(b, v, 'g', 6, 64)
	}
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', dec, 64)
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
