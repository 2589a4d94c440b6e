package api

import (
	"errors"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// At is the atmosphere of a question: the barometer, or the standard atmosphere
// at an elevation, or that at sea level.
type At struct {
	// Elevation above sea level; the atmosphere follows from it.
	Elevation *quantity.Length `json:"elevation,omitempty"`
	// Barometer is the pressure of the air as read at the site itself.
	Barometer *quantity.Pressure `json:"barometer,omitempty"`
}

func (a At) atmosphere() (quantity.Pressure, error) {
	if a.Barometer != nil && a.Elevation != nil {
		return 0, &QuestionError{"barometer", "give elevation or barometer, not both"}
	}
	used, err := satline.Site{Elevation: a.Elevation, Barometer: a.Barometer}.Atmosphere()
	if wrong, ok := errors.AsType[*satline.VisitError](err); ok {
		return 0, &QuestionError{strings.TrimPrefix(wrong.Field, "site."), wrong.Problem}
	}
	return used.Pressure.Value, err
}
