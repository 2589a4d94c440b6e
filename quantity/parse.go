package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxText bounds what a parser looks at: no reading needs more.
const maxText = 64

// Parse reads a value with its unit: Parse[Temperature]("71 °F"). The comment of
// each type's own parser lists the units and spellings that it takes. The error is
// a *ParseError.
func Parse[T Quantity](text string) (T, error) { return ParseStyled[T](text, Style{}) }

// ParseStyled is Parse of a text that is written as s has it: with Comma, "1,5 kg"
// is one and a half, and so is "1.5 kg", since instruments print points. Thousands
// have no separator in either: a comma without Comma is refused, and with it a
// point that three digits follow, which would be a thousandfold error.
func ParseStyled[T Quantity](text string, s Style) (T, error) {
	var zero T
	v, err := zero.kind().parse(text, s)
	return T(v), err
}

func unmarshal[T Quantity](into *T, text []byte, s Style) error {
	v, err := ParseStyled[T](string(text), s)
	if err == nil {
		*into = v
	}
	return err
}

func (k *kind) parse(text string, s Style) (float64, error) {
	v, _, problem := k.parseIn(text, k.units, true, s)
	if problem == "" && k.floor != "" && v < 0 {
		problem = "it is " + k.floor
	}
	if problem != "" {
		return 0, refusal(k.name, text, problem, k.units)
	}
	return v, nil
}

// parseUncertainty reads the uncertainty of a value; that of a gauge pressure may
// also have the unit of the value, "± 0.5 psig".
func (k *kind) parseUncertainty(text string, s Style) (float64, error) {
	units := k.uncertaintyUnits()
	v, u, problem := k.parseIn(text, units, false, s)
	if problem != "" && k.difference != nil {
		if w, of, also := k.parseIn(text, k.units, false, s); also == "" {
			v, u, problem = w, of, ""
		}
	}
	if problem == "" {
		if v = math.Copysign(v, v*u.scale); math.Signbit(v) {
			problem = "it is negative, and an uncertainty never is"
		}
	}
	if problem != "" {
		return 0, refusal("uncertainty of the "+k.name, text, problem, units)
	}
	return v, nil
}

func refusal(what, text, problem string, units []unit) *ParseError {
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.symbol
	}
	return &ParseError{
		Quantity: what, Text: clip(strings.TrimSpace(text)), Problem: problem, Units: names,
	}
}

// parseIn reads a text in one of the units, and says which, or what is wrong with
// the text. What is not affine has no zero but that of SI.
func (k *kind) parseIn(
	text string, units []unit, affine bool, style Style,
) (value float64, in *unit, problem string) {
	if len(text) > maxText {
		return 0, nil, "it is too long for a reading"
	}
	if !utf8.ValidString(text) {
		return 0, nil, "it is not UTF-8 text"
	}
	s := strings.TrimSpace(text)
	if s == "" {
		return 0, nil, "it is empty"
	}
	v, u, rest, problem := k.step(s, units, style)
	if problem != "" {
		return 0, nil, problem
	}
	si := v * u.scale
	if affine {
		si = u.toSI(v)
	}
	if rest != "" {
		minor, mu, more, problem := k.step(rest, units, style)
		switch {
		case problem != "":
			return 0, nil, problem
		case more != "":
			return 0, nil, "there is more after the unit: " + strconv.Quote(clip(more))
		case mu.scale >= u.scale || minor < 0 || minor*mu.scale >= u.scale || v != math.Trunc(v):
			return 0, nil, "the second part must be less than one of the first unit, " +
				"and the first part whole, as in 6 lb 4 oz"
		case math.Signbit(v):
			si -= mu.toSI(minor)
		default:
			si += mu.toSI(minor)
		}
	}
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return 0, nil, "it is beyond what a number can hold"
	}
	return si, u, ""
}

// step reads one number and its unit from the front of s. There is a rest only of
// a compound kind.
func (k *kind) step(
	s string, units []unit, style Style,
) (v float64, in *unit, rest, problem string) {
	v, n, problem := number(s, k.compound, style.Comma)
	if problem != "" {
		return 0, nil, "", problem
	}
	s = strings.TrimLeft(s[n:], " \u00a0\u202f\t")
	if s == "" {
		return 0, nil, "", "the unit is missing"
	}
	symbol := s
	if k.compound {
		if i := strings.IndexAny(s, " \t"); i > 0 {
			if after := strings.TrimLeft(s[i:], " \t"); numberLen(after, style.Comma) > 0 {
				symbol, rest = s[:i], after
			}
		}
	}
	for i := range units {
		if units[i].symbol == symbol {
			return v, &units[i], rest, ""
		}
	}
	for i := range units {
		if units[i].matches(symbol) {
			return v, &units[i], rest, ""
		}
	}
	return 0, nil, "", "the unit " + strconv.Quote(clip(symbol)) + " is not one of its units"
}

// number reads the number at the front of s, and says how long it is.
func number(s string, fractions, comma bool) (v float64, length int, problem string) {
	n := numberLen(s, comma)
	if n == 0 {
		return 0, 0, "it does not start with a number"
	}
	if fractions {
		if v, m := fraction(s); m > 0 {
			return v, m, ""
		}
	}
	text := s[:n]
	if comma {
		if _, after, point := strings.Cut(text, "."); point && len(after) == 3 {
			return 0, 0, "a point before three digits may part thousands; " +
				"write the decimals behind a comma, and thousands without a separator"
		}
		text = strings.Replace(text, ",", ".", 1)
	}
	switch {
	case !strings.HasPrefix(s[n:], ",") && !strings.HasPrefix(s[n:], "."):
	case comma:
		return 0, 0, "write the decimals behind a comma, and thousands without a separator"
	default:
		return 0, 0, "write the decimal point as '.', and thousands without a separator"
	}
	v, err := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64)
	if err != nil {
		return 0, 0, "its number is beyond what a number can hold"
	}
	return v, n, ""
}

// matches compares without regard to case and spaces, so that "psig", "PSIG" and "kw" all
// read as meant. Only the M of mega has to be
// a capital: of a resistance in milliohms nothing else would tell. No kind has two
// units that differ only in case.
func (u *unit) matches(symbol string) bool {
	symbol = strings.ReplaceAll(symbol, " ", "")
	if sameUnit(symbol, u.symbol) {
		return true
	}
	for _, a := range u.also {
		if sameUnit(symbol, a) {
			return true
		}
	}
	return false
}

func sameUnit(symbol, want string) bool {
	if want[0] == 'M' && !strings.HasPrefix(symbol, "M") {
		return false
	}
	return strings.EqualFold(symbol, strings.ReplaceAll(want, " ", ""))
}

// numberLen is the length of the decimal number at the front of s, 0 if none:
// sign, digits, point or with comma also a comma, digits, exponent. A typeset minus
// sign counts as one.
func numberLen(s string, comma bool) int {
	i := 0
	if strings.HasPrefix(s, "−") {
		i = len("−")
	} else if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	whole := digits(s[i:])
	i += whole
	decimals := 0
	if i < len(s) && (s[i] == '.' || comma && s[i] == ',') {
		i++
		decimals = digits(s[i:])
		i += decimals
	}
	if whole+decimals == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		if n := digits(s[j:]); n > 0 {
			i = j + n
		}
	}
	return i
}

// digits is how many digits s begins with.
func digits(s string) int {
	n := 0
	for n < len(s) && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return n
}

// fraction reads a number as tubes and drills are named, "3/8", "1 1/8" or
// "1-1/8", at the front of s, and returns how long it is: 0 where there is none.
func fraction(s string) (v float64, length int) {
	at, rest := 0, s
	part := func() (float64, bool) {
		n := min(digits(rest), 4)
		d, err := strconv.ParseFloat(rest[:n], 64)
		at, rest = at+n, rest[n:]
		return d, err == nil
	}
	whole, ok := part()
	if !ok || rest == "" {
		return 0, 0
	}
	above := whole
	if rest[0] == ' ' || rest[0] == '-' {
		at, rest = at+1, rest[1:]
		if above, ok = part(); !ok {
			return 0, 0
		}
	} else {
		whole = 0
	}
	if rest == "" || rest[0] != '/' {
		return 0, 0
	}
	at, rest = at+1, rest[1:]
	below, ok := part()
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
