// Package enum gives constants that count from 1 their names, as text and back.
package enum

import (
	"slices"
	"strconv"
	"strings"

	"github.com/satline/satline/quantity"
)

// Name returns the name of v, and names[0] for what is no constant.
func Name[T ~int](names []string, v T) string {
	if v < 1 || int(v) >= len(names) {
		return names[0]
	}
	return names[v]
}

// Text is what Parse reads back as v. The error is a *quantity.NameError: v is no
// constant, or the zero one of names that have no word for it.
func Text[T ~int](what string, names []string, v T) ([]byte, error) {
	if v < 0 || int(v) >= len(names) || names[v] == "" {
		return nil, &quantity.NameError{
			Of:    what,
			Given: strconv.Itoa(int(v)),
			Known: slices.Clone(names[1:]),
		}
	}
	return []byte(names[v]), nil
}

// Parse finds the constant that a name stands for, the zero one among them, in
// letters of either case. The error is a *quantity.NameError.
func Parse[T ~int](what string, names []string, text []byte, v *T) error {
	given := strings.TrimSpace(string(text))
	for i, name := range names {
		if strings.EqualFold(name, given) {
			*v = T(i)
			return nil
		}
	}
	return &quantity.NameError{Of: what, Given: string(text), Known: slices.Clone(names[1:])}
}

// TextFromZero is Text for constants that count from 0: the names begin at names[1].
func TextFromZero[T ~int](what string, names []string, v T) ([]byte, error) {
	text, err := Text(what, names, v+1)
	if wrong, ok := err.(*quantity.NameError); ok {
		wrong.Given = strconv.Itoa(int(v))
	}
	return text, err
}

// ParseFromZero is Parse for constants that count from 0; no text is the first of them.
func ParseFromZero[T ~int](what string, names []string, text []byte, v *T) error {
	i := T(1)
	err := Parse(what, names, text, &i)
	if err == nil {
		*v = max(i-1, 0)
	}
	return err
}
