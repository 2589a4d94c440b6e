package api

import "github.com/satline/satline"

// A BatchResult is what became of one line of a batch.
type BatchResult struct {
	// Line of the batch that it is about, counted from 1.
	Line int `json:"line"`
	// Assessment of the visit, where one was made.
	Assessment *satline.Assessment `json:"assessment,omitempty"`
	// Problem with the visit, where none was.
	Problem *Problem `json:"problem,omitempty"`
}
