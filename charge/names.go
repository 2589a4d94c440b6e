package charge

import (
	"fmt"
	"strings"
)

// nameOf returns the name of a constant that counts from 1, and names[0] for
// what is none.
func nameOf[T ~int](names []string, v T) string {
	if v < 1 || int(v) >= len(names) {
		return names[0]
	}
	return names[v]
}

// parseName finds the constant that a name stands for, the zero one among them.
func parseName[T ~int](what string, names []string, text []byte, v *T) error {
	for i, name := range names {
		if name == string(text) {
			*v = T(i)
			return nil
		}
	}
	return fmt.Errorf("charge: %s %.40q is not known; write one of \"%s\"", what, text, strings.Join(names[1:], `", "`))
}
