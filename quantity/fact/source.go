package fact

import "github.com/satline/satline/internal/base/enum"

// Standing says how far a figure can be relied on.
type Standing int

// The standings.
const (
	// Published figures are in the cited print.
	Published Standing = iota + 1
	// FromMemory marks a published figure written down from memory and not
	// compared with the print.
	FromMemory
	// CommonPractice is what the trade does, with no source.
	CommonPractice
	// Label figures are the manufacturer's for the machine itself.
	Label
	// House figures are those of the firm that the technician works for.
	House
)

var standingNames = []string{
	"not-stated", "published", "from-memory", "common-practice", "label", "house",
}

// String returns the standing in a word.
func (s Standing) String() string { return enum.Name(standingNames, s) }

// MarshalText writes the name of the standing.
func (s Standing) MarshalText() ([]byte, error) {
	return enum.Text("standing", standingNames, s)
}

// UnmarshalText reads what MarshalText writes.
func (s *Standing) UnmarshalText(text []byte) error {
	return enum.Parse("standing", standingNames, text, s)
}

// A Source says where a figure comes from.
type Source struct {
	Title    string   `json:"title"`
	Standing Standing `json:"standing"`
}

// String returns the title with the mark of its standing.
func (s Source) String() string {
	mark := ""
	switch s.Standing {
	case FromMemory:
		mark = "from memory"
	case CommonPractice:
		mark = "common practice, no source"
	}
	switch {
	case s.Title == "":
		return mark
	case mark == "":
		return s.Title
	}
	return s.Title + " (" + mark + ")"
}
