package strictjson

import (
	"bytes"
	"fmt"
)

// An Error says where a document is wrong, and why.
type Error struct {
	Path    string // "readings.suctionPressure", "log[3].time"; empty at the top
	Line    int    // counted from 1
	Problem string // what is wrong and what to write instead
	Err     error  // the cause, where there is one
	// Also are the others behind it: texts and numbers that are wrong by themselves, 50 at most,
	// up to what keeps the rest from being read.
	Also []*Error
}

// Error implements error.
func (e *Error) Error() string {
	where := fmt.Sprintf("line %d", e.Line)
	if e.Path != "" {
		where = e.Path + " (" + where + ")"
	}
	return where + ": " + e.Problem
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

func lineAt(data []byte, offset int64) int {
	offset = max(0, min(offset, int64(len(data))))
	return 1 + bytes.Count(data[:offset], []byte{'\n'})
}
