package psychro

import (
	"fmt"
	"strings"
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
		return nil, fmt.Errorf("psychro: there is no %s %d", what, v)
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
	return fmt.Errorf("psychro: %s %.40q is not known; write one of %q", what, text, strings.Join(names, ", "))
}
