// Package schema writes the JSON Schemas of a Visit, an Assessment, an Order and a Record.
package schema

import (
	"reflect"
	"slices"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/airside"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/tool/jsonschema"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/work"
)

const module = "github.com/satline/satline"

// Builder returns a builder that knows the types of a visit and an assessment;
// dir is the root of the module's source.
func Builder(dir string) *jsonschema.Builder {
	b := jsonschema.NewBuilder(module, dir)
	for _, t := range []reflect.Type{
		reflect.TypeFor[satline.LogEntry](), reflect.TypeFor[satline.Move](),
		reflect.TypeFor[satline.Conditions](), reflect.TypeFor[work.Reading](),
		reflect.TypeFor[work.Order](), reflect.TypeFor[airside.GasInput](),
	} {
		b.Override(
			t, func(b *jsonschema.Builder) (*jsonschema.Schema, error) { return b.Object(t) },
		)
	}
	for _, f := range reflect.VisibleFields(reflect.TypeFor[satline.Readings]()) {
		if get, ok := f.Type.MethodByName("Get"); ok {
			b.WrittenAs(f.Type, get.Type.Out(0))
		}
	}
	b.Override(reflect.TypeFor[satline.Visit](), visit)
	b.Override(reflect.TypeFor[time.Time](), moment)
	b.Override(reflect.TypeFor[charge.Dose](), dose)
	b.Override(reflect.TypeFor[charge.Steadiness[quantity.TemperatureDelta]](), steadiness)
	b.Override(reflect.TypeFor[fact.Value](), value)
	b.Override(
		reflect.TypeFor[quantity.Budget[quantity.TemperatureDelta]](),
		func(b *jsonschema.Builder) (*jsonschema.Schema, error) {
			items, err := b.Type(reflect.TypeFor[quantity.Term[quantity.TemperatureDelta]]())
			return &jsonschema.Schema{Type: "array", Items: items}, err
		},
	)
	return b
}

// Visit returns the schema of the JSON form of a visit.
func Visit(dir string) (*jsonschema.Schema, error) {
	b := Builder(dir)
	b.Closed = true
	return root(b, reflect.TypeFor[satline.Visit](), "visit", "A visit to an air conditioner")
}

// Assessment returns the schema of the JSON form of an assessment.
func Assessment(dir string) (*jsonschema.Schema, error) {
	return root(
		Builder(dir), reflect.TypeFor[satline.Assessment](), "assessment",
		"An assessment of a visit",
	)
}

// Order returns the schema of the JSON form of a work order.
func Order(dir string) (*jsonschema.Schema, error) {
	b := Builder(dir)
	b.Closed = true
	b.Override(reflect.TypeFor[satline.Visit](), partVisit)
	return root(b, reflect.TypeFor[work.Order](), "order", "A work order at one machine")
}

// Record returns the schema of the JSON form of what an order comes to.
func Record(dir string) (*jsonschema.Schema, error) {
	b := Builder(dir)
	b.Override(reflect.TypeFor[satline.Visit](), partVisit)
	return root(b, reflect.TypeFor[work.Record](), "record", "The record of a work order")
}

// visit has to say at what machine it is.
func visit(b *jsonschema.Builder) (*jsonschema.Schema, error) {
	s, err := partVisit(b)
	if err == nil {
		s.Required = append(s.Required, "equipment")
	}
	return s, err
}

// partVisit is a visit in an order, which says that itself.
func partVisit(b *jsonschema.Builder) (*jsonschema.Schema, error) {
	return b.Object(reflect.TypeFor[satline.Visit]())
}

// moment is a date, with or without the time of day and its offset.
func moment(*jsonschema.Builder) (*jsonschema.Schema, error) {
	return &jsonschema.Schema{
		Type:        "string",
		Description: "a date, with or without a time",
		Pattern: `^[0-9]{4}-[0-9]{2}(-[0-9]{2}` +
			`([T ][0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]+)?)?(Z|[+-][0-9]{2}:[0-9]{2})?)?)?$`,
		Examples: []any{"2026-07-14"},
	}, nil
}

// root names a schema by a URI that is absolute and reaches no server: the top-level
// domain is one that RFC 2606 keeps empty. The files are under testdata/schema.
func root(b *jsonschema.Builder, t reflect.Type, name, title string) (*jsonschema.Schema, error) {
	ref, err := b.Type(t)
	if err != nil {
		return nil, err
	}
	return &jsonschema.Schema{
		Dialect: jsonschema.Dialect, ID: "https://satline.invalid/schema/" + name + "/1",
		Title: title, Ref: ref.Ref, Defs: b.Defs(),
	}, nil
}

// dose adds to the fields of a dose what it writes beside them.
func dose(b *jsonschema.Builder) (*jsonschema.Schema, error) {
	s, err := b.Object(reflect.TypeFor[charge.Dose]())
	if err != nil {
		return nil, err
	}
	wait := jsonschema.Duration()
	wait.Description = "how long to wait before the next reading counts"
	s.Properties = append(s.Properties, jsonschema.Property{Name: "wait", Schema: wait})
	s.Required = append(s.Required, "wait")
	return s, nil
}

func steadiness(b *jsonschema.Builder) (*jsonschema.Schema, error) {
	delta := reflect.TypeFor[quantity.TemperatureDelta]()
	s, err := object(
		b,
		field[charge.Course]("state", "what the value does"),
		field[quantity.Uncertain[quantity.TemperatureDelta]](
			"value", "what was read: the mean over the stretch",
		),
		span("from", "where the stretch begins"),
		span("to", "where the stretch ends"),
		of("low", delta, "the low end of its band"),
		of("high", delta, "the high end of its band"),
		field[quantity.Uncertain[quantity.TemperatureDelta]](
			"estimate", "where it seems to go, while settling; nothing to judge by",
		),
		span("timeConstant", "the time in which all but 37 % of a change is over"),
		span("wait", "how long it may still take to stand still"),
		span("period", "of the hunting"),
		of("swing", delta, "of the hunting, from lowest to highest"),
		of("noise", delta, "the standard deviation about a line through the stretch"),
		field[int]("spikes", "readings left out as freaks"),
		field[int]("gaps", "holes in the log much longer than its usual step"),
		of("within", delta, "how far it may move in five minutes to count as settled"),
	)
	if err == nil {
		s.Optional(
			"from", "to", "estimate", "timeConstant", "wait", "period", "swing", "noise", "spikes",
			"gaps",
		)
	}
	return s, err
}

// A property is a field of an object that writes its own JSON.
type property struct {
	name, description string
	of                reflect.Type // nil for a time span
}

func field[T any](name, description string) property {
	return of(name, reflect.TypeFor[T](), description)
}

func of(name string, t reflect.Type, description string) property {
	return property{name, description, t}
}

func span(name, description string) property {
	return property{name: name, description: description}
}

// object requires all its properties.
func object(b *jsonschema.Builder, properties ...property) (*jsonschema.Schema, error) {
	s := &jsonschema.Schema{Type: "object"}
	for _, p := range properties {
		value := jsonschema.Duration()
		if p.of != nil {
			var err error
			if value, err = b.Type(p.of); err != nil {
				return nil, err
			}
		}
		value.Description = p.description
		s.Properties = append(s.Properties, jsonschema.Property{Name: p.name, Schema: value})
		s.Required = append(s.Required, p.name)
	}
	return s, nil
}

// value is a named quantity of a fact: its kind says what its value is.
func value(*jsonschema.Builder) (*jsonschema.Schema, error) {
	one := func(v *jsonschema.Schema, kinds ...string) *jsonschema.Schema {
		return &jsonschema.Schema{
			Type:     "object",
			Required: []string{"name", "kind", "value"},
			Properties: jsonschema.Properties{
				{Name: "name", Schema: &jsonschema.Schema{Type: "string"}},
				{Name: "kind", Schema: &jsonschema.Schema{Type: "string", Enum: kinds}},
				{Name: "value", Schema: v},
			},
		}
	}
	var texts []string
	for _, k := range fact.Kinds() {
		if !slices.Contains([]string{"share", "times", "number", "count", "terms"}, k) {
			texts = append(texts, k)
		}
	}
	example := map[string]any{"name": "superheat", "kind": "temperature difference", "value": "5 K"}
	return &jsonschema.Schema{Examples: []any{example}, OneOf: []*jsonschema.Schema{
		one(&jsonschema.Schema{Type: "number"}, "share", "times", "number", "count"),
		one(&jsonschema.Schema{Type: "array", Items: &jsonschema.Schema{Type: "string"}}, "terms"),
		one(
			&jsonschema.Schema{
				Type:        "string",
				Description: "a quantity with its unit, a time, a term or a text",
			},
			texts...),
	}}, nil
}
