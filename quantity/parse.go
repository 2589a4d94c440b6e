package quantity

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxText bounds what a parser looks at: no reading needs more.
const maxText = 64

func (k *kind) parse(text string) (float64, error) {
	v, problem := k.parseWith(text, k.units, true)
	if problem != "" {
		return 0, refusal(k.name, text, problem, k.units)
	}
	return v, nil
}

// parseDifference reads the uncertainty of a value; that of a gauge pressure may
// also have the unit of the value, "± 0.5 psig".
func (k *kind) parseDifference(text string) (float64, error) {
	units, either := k.units, k.units
	if k.difference != nil {
		units = k.difference
		either = append(append([]unit(nil), k.difference...), k.units...)
	}
	v, problem := k.parseWith(text, either, false)
	if problem == "" && math.Signbit(v) {
		problem = "it is negative, and an uncertainty never is"
	}
	if problem != "" {
		return 0, refusal("uncertainty of the "+k.name, text, problem, units)
	}
	return v, nil
}

func refusal(what, text, problem string, units []unit) *ParseError {
	names := make([]string, 0, len(units))
	for _, u := range units {
		if !slices.Contains(names, u.symbol) {
			names = append(names, u.symbol)
		}
	}
	return &ParseError{Quantity: what, Text: clip(strings.TrimSpace(text)), Problem: problem, Units: names}
}

// parseWith reads a text in one of the units, and says what is wrong with it.
func (k *kind) parseWith(text string, units []unit, affine bool) (value float64, problem string) {
	if len(text) > maxText {
		return 0, "it is too long for a reading"
	}
	if !utf8.ValidString(text) {
		return 0, "it is not UTF-8 text"
	}
	s := strings.TrimSpace(text)
	if s == "" {
		return 0, "it is empty"
	}
	v, u, rest, problem := k.step(s, units)
	if problem != "" {
		return 0, problem
	}
	si := v * u.scale
	if affine {
		si = u.toSI(v)
	}
	if rest != "" {
		if !k.compound {
			return 0, "there is more after the unit: " + strconv.Quote(clip(rest))
		}
		minor, mu, more, problem := k.step(rest, units)
		switch {
		case problem != "":
			return 0, problem
		case more != "":
			return 0, "there is more after the unit: " + strconv.Quote(clip(more))
		case mu.scale >= u.scale || minor < 0 || minor*mu.scale >= u.scale || v != math.Trunc(v):
			return 0, "the second part must be less than one of the first unit, and the first part whole, as in 6 lb 4 oz"
		case math.Signbit(v):
			si -= mu.toSI(minor)
		default:
			si += mu.toSI(minor)
		}
	}
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return 0, "it is beyond what a number can hold"
	}
	return si, ""
}

// step reads one number and its unit from the front of s.
func (k *kind) step(s string, units []unit) (v float64, u unit, rest, problem string) {
	n := numberLen(s)
	if n == 0 {
		return 0, unit{}, "", "it does not start with a number"
	}
	v, m := fraction(s)
	if m > 0 && k.compound {
		n = m
	} else {
		var err error
		if v, err = strconv.ParseFloat(strings.Replace(s[:n], "−", "-", 1), 64); err != nil {
			return 0, unit{}, "", "its number is beyond what a number can hold"
		}
	}
	s = strings.TrimLeft(s[n:], " \u00a0\u202f\t")
	if s == "" {
		return 0, unit{}, "", "the unit is missing"
	}
	if s[0] == ',' {
		return 0, unit{}, "", "write the decimal point as '.', and thousands without a separator"
	}
	symbol := s
	if k.compound {
		if i := strings.IndexAny(s, " \t"); i > 0 && numberLen(strings.TrimLeft(s[i:], " \t")) > 0 {
			symbol, rest = s[:i], strings.TrimLeft(s[i:], " \t")
		}
	}
	for _, u := range units {
		if u.matches(symbol) {
			return v, u, rest, ""
		}
	}
	return 0, unit{}, "", "the unit " + strconv.Quote(clip(symbol)) + " is not one of its units"
}

// matches compares exactly first and then without regard to case and spaces,
// so that "psig", "PSIG" and "kw" all read as meant. No kind has two units
// that differ only in case.
func (u unit) matches(symbol string) bool {
	if symbol == u.symbol {
		return true
	}
	symbol = strings.ReplaceAll(symbol, " ", "")
	if strings.EqualFold(symbol, strings.ReplaceAll(u.symbol, " ", "")) {
		return true
	}
	for _, a := range u.also {
		if strings.EqualFold(symbol, strings.ReplaceAll(a, " ", "")) {
			return true
		}
	}
	return false
}

// numberLen is the length of the decimal number at the front of s, 0 if none:
// sign, digits, point, digits, exponent. A typeset minus sign counts as one.
func numberLen(s string) int {
	i := 0
	if strings.HasPrefix(s, "−") {
		i = len("−")
	} else if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := 0
	for ; i < len(s) && '0' <= s[i] && s[i] <= '9'; i++ {
		digits++
	}
	if i < len(s) && s[i] == '.' {
		i++
		for ; i < len(s) && '0' <= s[i] && s[i] <= '9'; i++ {
			digits++
		}
	}
	if digits == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		start := j
		for ; j < len(s) && '0' <= s[j] && s[j] <= '9'; j++ {
		}
		if j > start {
			i = j
		}
	}
	return i
}

// fraction reads a number as tubes and drills are named, "3/8", "1 1/8" or
// "1-1/8", at the front of s, and returns how long it is: 0 where there is none.
func fraction(s string) (v float64, length int) {
	at, rest := 0, s
	digits := func() (float64, bool) {
		n := 0
		for n < len(rest) && n < 4 && '0' <= rest[n] && rest[n] <= '9' {
			n++
		}
		d, err := strconv.ParseFloat(rest[:n], 64)
		at, rest = at+n, rest[n:]
		return d, err == nil
	}
	whole, ok := digits()
	if !ok || rest == "" {
		return 0, 0
	}
	above := whole
	if rest[0] == ' ' || rest[0] == '-' {
		at, rest = at+1, rest[1:]
		if above, ok = digits(); !ok {
			return 0, 0
		}
	} else {
		whole = 0
	}
	if rest == "" || rest[0] != '/' {
		return 0, 0
	}
	at, rest = at+1, rest[1:]
	below, ok := digits()
	if !ok || below == 0 {
		return 0, 0
	}
	return whole + above/below, at
}

func clip(s string) string {
	const most = 40
	if len(s) <= most {
		return strings.ToValidUTF8(s, "?")
	}
	return strings.ToValidUTF8(s[:most], "?") + "…"
}
