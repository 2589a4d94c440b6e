package satline

import (
	"encoding/json"
	"time"

	"github.com/satline/satline/internal/span"
)

type logEntryJSON struct {
	At span.Span `json:"at"`
	Readings
}

// MarshalJSON writes the entry as DecodeVisit reads it, with the time as "15m0s".
func (e LogEntry) MarshalJSON() ([]byte, error) {
	return json.Marshal(logEntryJSON{span.Span(e.At), e.Readings})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (e *LogEntry) UnmarshalJSON(text []byte) error {
	var j logEntryJSON
	err := json.Unmarshal(text, &j)
	*e = LogEntry{time.Duration(j.At), j.Readings}
	return err
}

type moveFields Move

type moveJSON struct {
	At span.Span `json:"at"`
	moveFields
}

// MarshalJSON writes the move as DecodeVisit reads it, with the time as "15m0s".
func (m Move) MarshalJSON() ([]byte, error) {
	return json.Marshal(moveJSON{span.Span(m.At), moveFields(m)})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (m *Move) UnmarshalJSON(text []byte) error {
	var j moveJSON
	err := json.Unmarshal(text, &j)
	*m = Move(j.moveFields)
	m.At = time.Duration(j.At)
	return err
}

type conditionsFields Conditions

type conditionsJSON struct {
	Running span.Span `json:"running,omitzero"`
	ReadAt  span.Span `json:"readAt,omitzero"`
	conditionsFields
}

// MarshalJSON writes the conditions as DecodeVisit reads them, with the time as
// "15m0s".
func (c Conditions) MarshalJSON() ([]byte, error) {
	return json.Marshal(conditionsJSON{span.Span(c.Running), span.Span(c.ReadAt), conditionsFields(c)})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (c *Conditions) UnmarshalJSON(text []byte) error {
	var j conditionsJSON
	err := json.Unmarshal(text, &j)
	*c = Conditions(j.conditionsFields)
	c.Running, c.ReadAt = time.Duration(j.Running), time.Duration(j.ReadAt)
	return err
}
