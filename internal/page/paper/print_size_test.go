package paper

import (
	"strings"
	"testing"
)

func TestPrintSize(t *testing.T) {
	short, long := Document{Title: "short"}, Document{Title: "long",
		Lines: []string{strings.Repeat("much to say ", 4000)}}
	if short.PrintSize() != largestPrint || long.PrintSize() != smallestPrint {
		t.Errorf("sizes %v and %v", short.PrintSize(), long.PrintSize())
	}
}
