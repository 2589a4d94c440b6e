package psychro

import (
	"slices"
	"strconv"

	"github.com/satline/satline/quantity"
)

// nameOf is the name of v, or what to call it where it has none.
func nameOf[T ~uint8](names []string, v T, unknown string) string {
	if int(v) >= len(names) {
		return unknown
	}
	return names[v]
}

func writeName[T ~uint8](what string, names []string, v T) ([]byte, error) {
	if int(v) >= len(names) {
		return nil, &quantity.NameError{Of: what, Given: strconv.Itoa(int(v)), Known: slices.Clone(names)}
	}
	return []byte(names[v]), nil
}

func readName[T ~uint8](what string, names []string, text []byte, v *T) error {
	for i, name := range names {
		if name == string(text) {
			*v = T(i)
			return nil
		}
	}
	return &quantity.NameError{Of: what, Given: string(text), Known: slices.Clone(names)}
}
