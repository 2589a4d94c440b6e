package jsonschema

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// Dialect is the draft that the schemas are written in.
const Dialect = "https://json-schema.org/draft/2020-12/schema"

// A Schema is what the package knows of JSON Schema.
type Schema struct {
	Dialect     string `json:"$schema,omitempty"`
	ID          string `json:"$id,omitempty"`
	Ref         string `json:"$ref,omitempty"`
	Title       string `json:"title,omitempty"`
	Description string `json:"description,omitempty"`

	Type  string    `json:"type,omitempty"`
	OneOf []*Schema `json:"oneOf,omitempty"`
	Enum  []string  `json:"enum,omitempty"`
	Const *string   `json:"const,omitempty"`

	Pattern   string   `json:"pattern,omitempty"`
	MaxLength int      `json:"maxLength,omitempty"`
	Minimum   *float64 `json:"minimum,omitempty"`
	Maximum   *float64 `json:"maximum,omitempty"`

	Items    *Schema `json:"items,omitempty"`
	MinItems int     `json:"minItems,omitempty"`
	MaxItems int     `json:"maxItems,omitempty"`

	Properties Properties `json:"properties,omitempty"`
	Required   []string   `json:"required,omitempty"`
	// Additional, where it is set, says whether fields that Properties does not
	// name are allowed.
	Additional *bool `json:"additionalProperties,omitempty"`

	// Units and Doubts are the units of a quantity and of its uncertainty.
	Units  []string `json:"x-units,omitempty"`
	Doubts []string `json:"x-uncertainty-units,omitempty"`

	Examples []any      `json:"examples,omitempty"`
	Defs     Properties `json:"$defs,omitempty"`
}

// A Property is a named schema.
type Property struct {
	Name   string
	Schema *Schema
}

// Properties keep their order in JSON.
type Properties []Property

// Get returns the schema of that name, nil where there is none.
func (p Properties) Get(name string) *Schema {
	for i := range p {
		if p[i].Name == name {
			return p[i].Schema
		}
	}
	return nil
}

// MarshalJSON writes an object with the properties in order.
func (p Properties) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, prop := range p {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := json.Marshal(prop.Name)
		if err != nil {
			return nil, err
		}
		b.Write(name)
		b.WriteByte(':')
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		if err := enc.Encode(prop.Schema); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// UnmarshalJSON reads an object and keeps its order.
func (p *Properties) UnmarshalJSON(data []byte) error {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	if t, err := dec.Token(); err != nil || t != json.Delim('{') {
		return fmt.Errorf("jsonschema: named schemas are an object: %v", err)
	}
	*p = nil
	for dec.More() {
		t, err := dec.Token()
		if err != nil {
			return err
		}
		s := new(Schema)
		if err := dec.Decode(s); err != nil {
			return fmt.Errorf("%v: %w", t, err)
		}
		*p = append(*p, Property{t.(string), s})
	}
	return nil
}

// Parse reads a schema; a keyword that the package does not know is an error.
func Parse(data []byte) (*Schema, error) {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	s := new(Schema)
	if err := dec.Decode(s); err != nil {
		return nil, fmt.Errorf("jsonschema: %w", err)
	}
	return s, nil
}

// Write returns v, a schema or what holds schemas, as it is checked in:
// indented by two, in order, with a newline at the end.
func Write(v any) ([]byte, error) {
	var compact, out bytes.Buffer
	enc := json.NewEncoder(&compact)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return nil, err
	}
	if err := json.Indent(&out, compact.Bytes(), "", "  "); err != nil {
		return nil, err
	}
	return append(bytes.TrimRight(out.Bytes(), "\n"), '\n'), nil
}
