package satline

import (
	"encoding/json"

	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/quantity"
)

// MarshalJSON writes the entry as DecodeVisit reads it, with the time as "15m0s".
func (e LogEntry) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		At span.Span `json:"at"`
		Readings
	}{span.Span(e.At), e.Readings})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as DecodeVisit.
func (e *LogEntry) UnmarshalJSON(text []byte) error {
	type fields LogEntry
	return afresh(text, (*fields)(e))
}

type moveFields Move

// MarshalJSON writes the move as DecodeVisit reads it, with the time as "15m0s".
func (m Move) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		At span.Span `json:"at"`
		moveFields
	}{span.Span(m.At), moveFields(m)})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as DecodeVisit.
func (m *Move) UnmarshalJSON(text []byte) error { return afresh(text, (*moveFields)(m)) }

type conditionsFields Conditions

// MarshalJSON writes the conditions as DecodeVisit reads them, with the time as
// "15m0s".
func (c Conditions) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Running span.Span `json:"running,omitzero"`
		ReadAt  span.Span `json:"readAt,omitzero"`
		conditionsFields
	}{span.Span(c.Running), span.Span(c.ReadAt), conditionsFields(c)})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as DecodeVisit.
func (c *Conditions) UnmarshalJSON(text []byte) error {
	return afresh(text, (*conditionsFields)(c))
}

// afresh fills into with nothing but what the text says.
func afresh[T any](text []byte, into *T) error {
	var t T
	err := strictly(text, &t, quantity.Style{})
	*into = t
	return err
}
