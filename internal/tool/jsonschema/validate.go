package jsonschema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"
)

// A Validator holds JSON against schemas that refer to each other.
type Validator struct {
	// Resolve finds what a $ref points to.
	Resolve func(ref string) *Schema
	// Complete also refuses fields that a schema does not name, whether or not
	// it allows them: for tests that every field written is documented.
	Complete bool
}

// Validate holds a JSON text against a schema. The error names the place.
func (v Validator) Validate(s *Schema, text []byte) error {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber()
	var value any
	if err := dec.Decode(&value); err != nil {
		return fmt.Errorf("not JSON: %w", err)
	}
	if _, err := dec.Token(); err != io.EOF {
		return fmt.Errorf("more than one JSON value")
	}
	return v.value(s, value, "$", 0)
}

// maxDepth bounds references to references.
const maxDepth = 64

func (v Validator) value(s *Schema, value any, path string, depth int) error {
	if depth > maxDepth {
		return fmt.Errorf("%s: nested more than %d deep", path, maxDepth)
	}
	if s.Ref != "" {
		target := v.Resolve(s.Ref)
		if target == nil {
			return fmt.Errorf("%s: the schema refers to %s, which is not there", path, s.Ref)
		}
		if err := v.value(target, value, path, depth+1); err != nil {
			return err
		}
	}
	if len(s.OneOf) > 0 {
		if err := v.oneOf(s, value, path, depth); err != nil {
			return err
		}
	}
	if s.Type != "" && !isType(s.Type, value) {
		return fmt.Errorf("%s: want %s, got %s", path, s.Type, shown(value))
	}
	switch value := value.(type) {
	case string:
		return s.checkString(value, path)
	case json.Number:
		return s.checkNumber(value, path)
	case []any:
		return v.list(s, value, path, depth)
	case map[string]any:
		return v.object(s, value, path, depth)
	}
	return nil
}

func (v Validator) oneOf(s *Schema, value any, path string, depth int) error {
	matched := 0
	var last error
	for _, option := range s.OneOf {
		if err := v.value(option, value, path, depth+1); err == nil {
			matched++
		} else {
			last = err
		}
	}
	if matched != 1 {
		return fmt.Errorf("%s: %d of %d alternatives fit, want 1 (%v)", path, matched,
			len(s.OneOf), last)
	}
	return nil
}

func isType(want string, value any) bool {
	switch want {
	case "null":
		return value == nil
	case "string":
		_, ok := value.(string)
		return ok
	case "boolean":
		_, ok := value.(bool)
		return ok
	case "number":
		_, ok := value.(json.Number)
		return ok
	case "integer":
		n, ok := value.(json.Number)
		if !ok {
			return false
		}
		r, ok := new(big.Rat).SetString(n.String())
		return ok && r.IsInt()
	case "array":
		_, ok := value.([]any)
		return ok
	case "object":
		_, ok := value.(map[string]any)
		return ok
	}
	return false
}

var compiled sync.Map // pattern: *regexp.Regexp

func (s *Schema) checkString(text, path string) error {
	if s.Const != nil && text != *s.Const {
		return fmt.Errorf("%s: want %q, got %q", path, *s.Const, text)
	}
	if len(s.Enum) > 0 && !slices.Contains(s.Enum, text) {
		return fmt.Errorf("%s: %q is not one of %q", path, text, s.Enum)
	}
	if s.MaxLength > 0 && utf8.RuneCountInString(text) > s.MaxLength {
		return fmt.Errorf("%s: longer than %d characters", path, s.MaxLength)
	}
	if s.Pattern == "" {
		return nil
	}
	known, ok := compiled.Load(s.Pattern)
	if !ok {
		re, err := regexp.Compile(s.Pattern)
		if err != nil {
			return fmt.Errorf("%s: the schema's pattern: %w", path, err)
		}
		known, _ = compiled.LoadOrStore(s.Pattern, re)
	}
	if !known.(*regexp.Regexp).MatchString(text) {
		return fmt.Errorf("%s: %q does not match %s", path, text, s.Pattern)
	}
	return nil
}

func (s *Schema) checkNumber(n json.Number, path string) error {
	v, err := n.Float64()
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	if s.Minimum != nil && v < *s.Minimum || s.Maximum != nil && v > *s.Maximum {
		return fmt.Errorf("%s: %v is out of bounds", path, v)
	}
	return nil
}

func (v Validator) list(s *Schema, list []any, path string, depth int) error {
	if s.MaxItems > 0 && len(list) > s.MaxItems || len(list) < s.MinItems {
		return fmt.Errorf("%s: %d items, want %d to %d", path, len(list), s.MinItems, s.MaxItems)
	}
	if s.Items == nil {
		return nil
	}
	for i, item := range list {
		if err := v.value(s.Items, item, path+"["+strconv.Itoa(i)+"]", depth+1); err != nil {
			return err
		}
	}
	return nil
}

func (v Validator) object(s *Schema, object map[string]any, path string, depth int) error {
	for _, name := range s.Required {
		if _, ok := object[name]; !ok {
			return fmt.Errorf("%s: field %q is missing", path, name)
		}
	}
	closed := s.Additional != nil && !*s.Additional || v.Complete && len(s.Properties) > 0
	names := make([]string, 0, len(object))
	for name := range object {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		p := s.Properties.Get(name)
		if p == nil {
			if closed {
				return fmt.Errorf("%s: field %q is not in the schema", path, name)
			}
			continue
		}
		if err := v.value(p, object[name], path+"."+name, depth+1); err != nil {
			return err
		}
	}
	return nil
}

func shown(value any) string {
	text, err := json.Marshal(value)
	if err != nil {
		return "a value"
	}
	s := string(text)
	if len(s) > 60 {
		s = strings.ToValidUTF8(s[:60], "") + "…"
	}
	return s
}

// Describes holds a document against a schema whose references stand in its $defs, and refuses
// fields that it does not name.
func (s *Schema) Describes(doc []byte) error {
	return Validator{Resolve: InDefs(s), Complete: true}.Validate(s, doc)
}

// InDefs resolves references into the $defs of a schema.
func InDefs(root *Schema) func(ref string) *Schema {
	return func(ref string) *Schema {
		name, ok := strings.CutPrefix(ref, "#/$defs/")
		if !ok {
			return nil
		}
		return root.Defs.Get(name)
	}
}
