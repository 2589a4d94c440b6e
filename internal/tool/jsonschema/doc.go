// Package jsonschema writes JSON Schemas (draft 2020-12) of Go types, and holds
// JSON against them.
//
// A Builder turns types into schemas by reflection: names and presence from the
// json tags, descriptions and the values of enumerations from the source of the
// package, the units of a quantity from the type itself. Source is read only
// when schemas are generated; the schemas are checked in.
//
// Validate knows the keywords that Builder writes and refuses any other, so that
// nothing is passed over in silence.
package jsonschema
