package work

import (
	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// RecordSchema names the version of the JSON form of a Record. A field is never removed or
// given another meaning under the same name of schema.
const RecordSchema = "satline.record/1"

// Progress is how far a part of the work has come.
type Progress string

// How far it can have come.
const (
	// Good: done, and as it should be.
	Good Progress = "good"
	// Found: as it was before the work; no fault of it.
	Found Progress = "found"
	// Watch: within its limit, and worth a second look.
	Watch Progress = "watch"
	// Open: not enough was read to say.
	Open Progress = "open"
	// Bad: done, and not as it should be.
	Bad Progress = "bad"
	// Dangerous: it can hurt somebody; it comes before everything else.
	Dangerous Progress = "dangerous"
)

// A Result is one part of the work held against its rule.
type Result struct {
	// Part is its JSON path in the order: "evacuations[0]".
	Part     string      `json:"part"`
	Standing Progress    `json:"standing"`
	Says     fact.Fact   `json:"says"`
	Source   fact.Source `json:"source,omitzero"`
}

// A ValueChange is what a derived value went by between the readings before and after the work.
type ValueChange struct {
	// Name of the value, as in Derived: "superheat".
	Name   string     `json:"name"`
	Before fact.Value `json:"before,omitzero"`
	After  fact.Value `json:"after,omitzero"`
}

// A Record is what an order comes to: what was found, done and left, and what its tasks
// still miss.
type Record struct {
	Schema string `json:"schema"`
	Order  Order  `json:"order"`
	// Headline is the whole of it in one sentence.
	Headline fact.Fact `json:"headline"`
	// Complete says that no task misses anything and nothing is bad or dangerous.
	Complete bool `json:"complete"`
	// Results in the order of the work, what is dangerous first.
	Results []Result `json:"results,omitempty"`
	// Next is what the tasks still ask for, in the order in which it is done; the first is
	// the one to do now.
	Next []fact.Fact `json:"next,omitempty"`
	// Before and After assess the readings before and after the work.
	Before *satline.Assessment `json:"before,omitempty"`
	After  *satline.Assessment `json:"after,omitempty"`
	// Moved holds what follows from both, side by side.
	Moved []ValueChange `json:"moved,omitempty"`
	// Weigh is the charge by label, line and parts, as one figure.
	Weigh *charge.Weighing `json:"weigh,omitempty"`
	// Added went from the cylinders into the machine, Recovered out of it.
	Added     quantity.Mass `json:"added,omitzero"`
	Recovered quantity.Mass `json:"recovered,omitzero"`
	// Cautions, most general first.
	Cautions []fact.Fact `json:"cautions"`
}
