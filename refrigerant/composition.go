package refrigerant

import (
	"strconv"
	"strings"
)

// formulation writes parts as Standard 34 does: "R-32/R-125 (50/50)".
func formulation(parts []Component) string {
	if len(parts) == 0 {
		return ""
	}
	var names, shares strings.Builder
	for i, c := range parts {
		if i > 0 {
			names.WriteByte('/')
			shares.WriteByte('/')
		}
		names.WriteString(c.Designation)
		shares.WriteString(strconv.FormatFloat(100*c.MassFraction, 'g', 4, 64))
	}
	return names.String() + " (" + shares.String() + ")"
}
