package refrigerant

import (
	"errors"
	"fmt"
	"strings"
)

// ErrUnknownRefrigerant is what Lookup's error is for errors.Is. The error
// itself is a *UnknownError with the nearest names.
var ErrUnknownRefrigerant = errors.New("unknown refrigerant")

// An UnknownError says which designation is not in the roster, and which ones
// are spelled like it.
type UnknownError struct {
	Designation string   // as given, cut to 40 bytes
	Suggestions []string // nearest first, at most three
	Warning     string   // what to beware of under that name, or ""
	// Assigned is the designation in its usual spelling where it is one of Standard 34 that
	// this package has no data for. Nothing is suggested then: the nearest spelling would be
	// another refrigerant.
	Assigned string
}

// Error implements error.
func (e *UnknownError) Error() string {
	if e.Assigned != "" {
		return fmt.Sprintf(
			"%s is a refrigerant that satline has no data for; do not take another in its place: "+
				"use the chart on the unit or of the refrigerant's maker",
			e.Assigned,
		)
	}
	if e.Warning != "" {
		return fmt.Sprintf("unknown refrigerant %q; %s", e.Designation, e.Warning)
	}
	if len(e.Suggestions) == 0 {
		return fmt.Sprintf(
			"unknown refrigerant %q; write the designation from the unit's label, such as R-410A",
			e.Designation,
		)
	}
	return fmt.Sprintf(
		"unknown refrigerant %q; did you mean %s?", e.Designation,
		strings.Join(e.Suggestions, " or "),
	)
}

// Unwrap makes errors.Is(err, ErrUnknownRefrigerant) true.
func (e *UnknownError) Unwrap() error { return ErrUnknownRefrigerant }

// Lookup finds a refrigerant by its designation. Case, the letter R and the
// hyphen may be left out: "R-454B", "r454b" and "454B" are one. Family prefixes
// ("HFC-134a"), the chemical name of a pure fluid ("propane"), and the usual
// short forms ("R-1234ze" for R-1234ze(E), "R-507" for R-507A) are understood.
// A name that fits several, such as "R-410", is not guessed at: the error names
// them, because A and B are different fluids. So it is with R-400, which Standard 34 gives
// two ratios. A designation that is assigned and not carried is said to be so.
//
// The error is a *UnknownError.
func Lookup(designation string) (*Refrigerant, error) {
	for i := range roster {
		if roster[i].designation == designation {
			return &roster[i], nil
		}
	}
	if len(designation) <= 64 {
		if r := find(lookupKey(designation)); r != nil {
			return r, nil
		}
		name := strings.ToLower(strings.TrimSpace(designation))
		for i := range pureFacts {
			if pureFacts[i].name == name {
				return find(lookupKey(pureFacts[i].designation)), nil
			}
		}
	}
	unknown := &UnknownError{Designation: cut(designation, 40)}
	switch key := lookupKey(designation); {
	case key == "22a":
		unknown.Warning = "it is no designation of Standard 34, " +
			"and hydrocarbons are sold under it: treat the contents as flammable (A3) and keep " +
			"them out of an R-22 system"
	case assigned(key) != "":
		unknown.Assigned = assigned(key)
	default:
		unknown.Suggestions = suggest(designation)
	}
	return nil, unknown
}

// find returns the entry of the roster whose key is key, or nil.
func find(key string) *Refrigerant {
	if key == "" {
		return nil
	}
	for i := range roster {
		if sameKey(roster[i].designation, key) {
			return &roster[i]
		}
	}
	return nil
}

// shortForms are spellings that the trade uses for one designation only.
var shortForms = [...][2]string{
	{"507", "507a"}, {"1234ze", "1234zee"}, {"1233zd", "1233zde"}, {"1224yd", "1224ydz"},
	{"co2", "744"}, {"nh3", "717"}, {"h2o", "718"}, {"dme", "e170"}, {"propylene", "1270"},
	{"nbutane", "600"}, {"npentane", "601"}, {"cf3i", "13i1"},
}

// dashes are what word processors make of a hyphen.
var dashes = strings.NewReplacer(
	"\u2010", "-", "\u2011", "-", "\u2012", "-", "\u2013", "-", "\u2014", "-", "\u2212", "-",
	"\u00a0", " ",
)

// lookupKey strips a designation to the letters and digits that tell it apart:
// "R-1234ze(E)" becomes "1234zee".
func lookupKey(designation string) string {
	var b strings.Builder
	designation = dashes.Replace(designation)
	for _, c := range []byte(designation) {
		switch {
		case 'A' <= c && c <= 'Z':
			b.WriteByte(c + 'a' - 'A')
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9':
			b.WriteByte(c)
		case c == ' ', c == '-', c == '_', c == '(', c == ')', c == '/', c == '\t':
		default:
			return ""
		}
	}
	key := b.String()
	for _, family := range [...]string{"hcfo", "hcfc", "cfc", "hfo", "hfc", "pfc", "hc", "r"} {
		if rest, ok := strings.CutPrefix(key, family); ok && rest != "" {
			key = rest
			break
		}
	}
	for _, s := range shortForms {
		if key == s[0] {
			return s[1]
		}
	}
	return key
}

// sameKey reports whether designation, as the roster writes it, has the key.
func sameKey(designation, key string) bool {
	j := 0
	for i := len("R-"); i < len(designation); i++ {
		c := designation[i]
		if c == '(' || c == ')' || c == '-' || c == '/' {
			continue
		}
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		if j == len(key) || key[j] != c {
			return false
		}
		j++
	}
	return j == len(key)
}

// suggest returns the designations nearest to text: those that go on from it,
// "R-410A" for "R-410", or else those the fewest edits away.
func suggest(text string) []string {
	key := lookupKey(cut(text, 64))
	if key == "" {
		return nil
	}
	const most = 3
	var names []string
	for i := range roster {
		k := lookupKey(roster[i].designation)
		goesOn := len(k) == len(key)+1 || strings.Contains(roster[i].designation, "/")
		if len(names) < most && goesOn && strings.HasPrefix(k, key) {
			names = append(names, roster[i].designation)
		}
	}
	for distance := 1; distance <= max(1, len(key)/3) && len(names) == 0; distance++ {
		for i := range roster {
			if len(names) < most && edits(lookupKey(roster[i].designation), key) == distance {
				names = append(names, roster[i].designation)
			}
		}
	}
	return names
}

// edits is the number of characters to insert, delete, replace, or swap with
// the next to make b of a (restricted Damerau-Levenshtein distance).
func edits(a, b string) int {
	before := make([]int, len(b)+1)
	above := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}

func cut(s string, n int) string {
	if len(s) <= n {
		return s
	}
	return s[:n] + "..."
}
