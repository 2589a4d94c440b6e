package jsonschema

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/satline/satline/quantity"
)

// A Builder collects the schemas of types and of all that they hold.
type Builder struct {
	// Bare are the packages whose types go by their bare names; those of others
	// carry their package's.
	Bare []string
	// RefPrefix stands before a name in a $ref: "#/$defs/".
	RefPrefix string
	// Closed says that objects have no fields but those of their type.
	Closed bool
	// Units says that a quantity has one of the units by which they are listed, and no
	// other spelling: what programs write, not people.
	Units bool

	source    *source
	overrides map[reflect.Type]func(*Builder) (*Schema, error)
	written   map[reflect.Type]reflect.Type
	defs      map[string]*Schema
	types     map[string]reflect.Type
}

// NewBuilder returns a builder for types of the module with that path, whose
// source is in dir.
func NewBuilder(module, dir string) *Builder {
	return &Builder{
		Bare:      []string{module},
		RefPrefix: "#/$defs/",
		source:    newSource(module, dir),
		overrides: make(map[reflect.Type]func(*Builder) (*Schema, error)),
		written:   make(map[reflect.Type]reflect.Type),
		defs:      make(map[string]*Schema),
		types:     make(map[string]reflect.Type),
	}
}

// Override gives the schema of a type that writes its own JSON.
func (b *Builder) Override(t reflect.Type, schema func(*Builder) (*Schema, error)) {
	b.overrides[t] = schema
}

// WrittenAs says that a type writes itself as another does, under whose name it goes.
func (b *Builder) WrittenAs(t, other reflect.Type) { b.written[t] = other }

// Defs returns every schema collected so far, by name.
func (b *Builder) Defs() Properties {
	var out Properties
	for name, s := range b.defs {
		out = append(out, Property{name, s})
	}
	slices.SortFunc(out, func(x, y Property) int { return strings.Compare(x.Name, y.Name) })
	return out
}

// Type returns the schema to write where a value of type t stands; named types
// are collected and referred to.
func (b *Builder) Type(t reflect.Type) (*Schema, error) {
	other, written := b.written[t]
	switch {
	case written:
		return b.Type(other)
	case t.Kind() == reflect.Pointer:
		return b.Type(t.Elem())
	case t == reflect.TypeFor[time.Duration]():
		return Duration(), nil
	case t.Name() != "" && t.PkgPath() != "":
		return b.named(t)
	}
	return b.shape(t)
}

func (b *Builder) named(t reflect.Type) (*Schema, error) {
	name := b.name(t)
	if known, ok := b.types[name]; ok {
		if known != t {
			return nil, fmt.Errorf("jsonschema: %v and %v have one name, %s", known, t, name)
		}
		return &Schema{Ref: b.RefPrefix + name}, nil
	}
	b.types[name] = t
	var s *Schema
	var err error
	if override := b.overrides[t]; override != nil {
		s, err = override(b)
	} else {
		s, err = b.shape(t)
	}
	if err != nil {
		return nil, fmt.Errorf("%v: %w", t, err)
	}
	if s.Description == "" {
		if s.Description, err = b.source.typeComment(t); err != nil {
			return nil, err
		}
	}
	b.defs[name] = s
	return &Schema{Ref: b.RefPrefix + name}, nil
}

// name is "Visit" for a type of a bare package, "charge.Dose" for one of
// another, and "quantity.UncertainTemperature" for an instance of a generic one.
func (b *Builder) name(t reflect.Type) string {
	base, args, generic := strings.Cut(t.Name(), "[")
	if generic {
		for _, a := range strings.Split(strings.TrimSuffix(args, "]"), ",") {
			base += a[strings.LastIndexByte(a, '.')+1:]
		}
	}
	if slices.Contains(b.Bare, t.PkgPath()) {
		return base
	}
	return t.PkgPath()[strings.LastIndexByte(t.PkgPath(), '/')+1:] + "." + base
}

var (
	marshaler     = reflect.TypeFor[interface{ MarshalJSON() ([]byte, error) }]()
	textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()
)

func (b *Builder) shape(t reflect.Type) (*Schema, error) {
	switch {
	case t.Implements(textMarshaler):
		return b.text(t)
	case t.Implements(marshaler):
		return nil, errors.New("jsonschema: it writes its own JSON; give the builder an Override")
	}
	switch t.Kind() {
	case reflect.Struct:
		return b.Object(t)
	case reflect.Slice:
		items, err := b.Type(t.Elem())
		return &Schema{Type: "array", Items: items}, err
	case reflect.String:
		values, err := b.source.strings(t)
		return &Schema{Type: "string", Enum: values}, err
	case reflect.Bool:
		return &Schema{Type: "boolean"}, nil
	case reflect.Float64, reflect.Float32:
		return &Schema{Type: "number"}, nil
	case reflect.Int, reflect.Int64, reflect.Int32:
		return &Schema{Type: "integer"}, nil
	}
	return nil, fmt.Errorf("jsonschema: no schema for a %v", t.Kind())
}

// Object returns the schema of a struct by its fields and json tags, whatever
// JSON the type writes itself.
func (b *Builder) Object(t reflect.Type) (*Schema, error) {
	s := &Schema{Type: "object"}
	if b.Closed {
		s.Additional = new(false)
	}
	comments, err := b.source.fieldComments(t)
	if err != nil {
		return nil, err
	}
	for _, f := range reflect.VisibleFields(t) {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || f.Anonymous || name == "-" {
			continue
		}
		if name == "" {
			return nil, fmt.Errorf("jsonschema: field %s has no json tag", f.Name)
		}
		p, err := b.Type(f.Type)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		if c := comments[f.Name]; c != "" {
			p.Description = c
		}
		s.Properties = append(s.Properties, Property{name, p})
		if !strings.Contains(options, "omit") {
			s.Required = append(s.Required, name)
		}
	}
	return s, nil
}

// Optional takes names out of what is required.
func (s *Schema) Optional(names ...string) {
	s.Required = slices.DeleteFunc(s.Required,
		func(n string) bool { return slices.Contains(names, n) })
}

// Duration is the schema of a time span in text.
func Duration() *Schema {
	return &Schema{
		Type:        "string",
		Description: "a time span: \"15m\", \"90s\", \"1h30m\"",
		Pattern:     `^\s*[+-]?(0|(([0-9]+(\.[0-9]*)?|\.[0-9]+)\s*(ns|us|µs|ms|s|min|m|h)\s*)+)$`,
		Examples:    []any{"15m"},
	}
}

// oneOf is a pattern of units.
func oneOf(units []string) string {
	quoted := make([]string, len(units))
	for i, u := range units {
		quoted[i] = regexp.QuoteMeta(u)
	}
	return `\s*(` + strings.Join(quoted, "|") + ")"
}

// text is the schema of a type that writes itself as text: a quantity with its
// units, or an enumeration.
func (b *Builder) text(t reflect.Type) (*Schema, error) {
	if t.PkgPath() == reflect.TypeFor[quantity.Temperature]().PkgPath() && t.Kind() != reflect.Int {
		return b.quantityText(t)
	}
	names, err := b.source.integers(t)
	if err != nil {
		return nil, err
	}
	s := &Schema{Type: "string"}
	for _, v := range names {
		value := reflect.New(t).Elem()
		if value.CanUint() {
			value.SetUint(uint64(v))
		} else {
			value.SetInt(int64(v))
		}
		text, err := value.Interface().(encoding.TextMarshaler).MarshalText()
		if err != nil {
			return nil, err
		}
		s.Enum = append(s.Enum, string(text))
	}
	return s, nil
}

// A quantity is a decimal number, and something that is no part of it: the unit. A
// fraction may stand between where the type reads one, as in "1 1/8 in", and a second
// unit behind it, as in "6 lb 4 oz".
const (
	decimal  = `\s*[+\-−]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+\-]?[0-9]+)?`
	fraction = `( [0-9]+/[0-9]+)?`
	unit     = `\s*[^\s0-9.,±+][^±]*`
	second   = `(\s*[0-9.]+\s*(oz|in))?`
	sign     = `\s*(±|\+/?-)`
)

func (b *Builder) quantityText(t reflect.Type) (*Schema, error) {
	v := reflect.New(t).Interface().(interface {
		encoding.TextUnmarshaler
		encoding.TextMarshaler
	})
	var refusal *quantity.ParseError
	err := v.UnmarshalText([]byte("1 ?"))
	if !errors.As(err, &refusal) {
		return nil, fmt.Errorf("jsonschema: %v does not name its units: %v", t, err)
	}
	name, first := refusal.Quantity, refusal.Units[0]
	uncertain := strings.HasPrefix(t.Name(), "Uncertain[")
	value, doubt := unit, unit
	listed := refusal.Units
	var units, doubts []string
	if b.Units {
		units = refusal.Units
		value = oneOf(units)
		if v.UnmarshalText([]byte("1 lb 2 oz")) == nil ||
			v.UnmarshalText([]byte("1 ft 2 in")) == nil {
			value += second
		}
		if uncertain && errors.As(v.UnmarshalText([]byte("1 "+first+" ± 1 ?")), &refusal) {
			doubts = refusal.Units
			doubt = oneOf(doubts)
		}
	}
	if v.UnmarshalText([]byte("1 1/8 "+first)) == nil {
		value = fraction + value
	}
	s := &Schema{
		Type: "string",
		Description: name + " with its unit, one of " +
			strings.Join(listed, ", "),
		Pattern:   "^" + decimal + value + "$",
		MaxLength: 64,
		Units:     units,
		Doubts:    doubts,
	}
	example := "20 " + first
	if uncertain {
		s.Description += "; its standard uncertainty may follow after ±, " +
			"and then one unit does for both"
		s.Pattern = "^" + decimal + "(" + value + "(\\s*±" + decimal + doubt + ")?|" +
			sign + decimal + value + ")$"
		s.MaxLength = 130
		example = "20 ± 0.5 " + first
	}
	// The example is what a program writes of it.
	if err := v.UnmarshalText([]byte(example)); err != nil {
		return nil, fmt.Errorf("jsonschema: an example of %v: %w", t, err)
	}
	text, err := v.MarshalText()
	s.Examples = []any{string(text)}
	return s, err
}
