package strictjson

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
)

// structFields are the fields of a struct.
type structFields struct {
	byName   map[string]field // those of embedded structs as its own
	required []string         // those with the tag strict:"required"
}

var known sync.Map // structFields by reflect.Type

type field struct {
	name   string
	index  []int
	spread bool // with the tag strict:"uncertainty"
}

// fieldsOf are the fields of a struct by their JSON names.
func fieldsOf(t reflect.Type) *structFields {
	if f, ok := known.Load(t); ok {
		return f.(*structFields)
	}
	out := &structFields{byName: map[string]field{}}
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" || name == "-" || !f.IsExported() {
			continue
		}
		out.byName[name] = field{name, f.Index, f.Tag.Get("strict") == "uncertainty"}
		if f.Tag.Get("strict") == "required" {
			out.required = append(out.required, name)
		}
	}
	known.Store(t, out)
	return out
}

func unknownField(key string, fields map[string]field) string {
	names := make([]string, 0, len(fields))
	for n := range fields {
		names = append(names, n)
	}
	slices.Sort(names)
	best, distance := "", 1+len(key)/3
	for _, n := range names {
		dist := editDistance(strings.ToLower(key), strings.ToLower(n), distance)
		if dist <= distance {
			if best == "" || dist < distance {
				best, distance = n, dist
			}
		}
	}
	if best != "" {
		return fmt.Sprintf("unknown field; did you mean %q?", best)
	}
	return "unknown field; known here: " + strings.Join(names, ", ")
}

// editDistance counts the inserted, deleted and changed bytes between a and
// b (Levenshtein), or any larger number than most where it exceeds most.
func editDistance(a, b string, most int) int {
	if len(a) > len(b)+most || len(b) > len(a)+most {
		return most + 1
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := diagonal
			if a[i-1] != b[j-1] {
				cost++
			}
			diagonal = row[j]
			row[j] = min(cost, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
