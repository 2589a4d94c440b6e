// Package enum gives constants that count from 1 their names, as text and back.
package enum

import (
	"fmt"
	"strings"
)

// Name returns the name of v, and names[0] for what is no constant.
func Name[T ~int](names []string, v T) string {
	if v < 1 || int(v) >= len(names) {
		return names[0]
	}
	return names[v]
}

// Parse finds the constant that a name stands for, the zero one among them, in
// letters of either case. The error says what was wanted, and lists the names.
func Parse[T ~int](what string, names []string, text []byte, v *T) error {
	given := strings.TrimSpace(string(text))
	for i, name := range names {
		if strings.EqualFold(name, given) {
			*v = T(i)
			return nil
		}
	}
	return fmt.Errorf("%s %.40q is not known; write one of \"%s\"", what, text, strings.Join(names[1:], `", "`))
}
