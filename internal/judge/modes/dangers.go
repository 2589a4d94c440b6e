package modes

import (
	"slices"

	"github.com/satline/satline/quantity/fact"
)

// A Danger is what can harm the machine or a person. Without a Why of its own it has
// "danger.CODE.why".
type Danger struct {
	Code         string
	Grave, Stops bool
	Says, Why    fact.Fact
	Source       fact.Source
	// Meter says that the meter showed it: it holds in every mode.
	Meter bool
}

// Dangers are in the order in which they are told.
type Dangers []Danger

// Stop is the first for which the machine is stopped; nil for none.
func (d Dangers) Stop() *Danger { return d.first(func(x *Danger) bool { return x.Stops }) }

// Flood is that of liquid which comes back to the compressor, whatever makes it; nil for none.
func (d Dangers) Flood() *Danger {
	return d.first(func(x *Danger) bool { return x.Code == "floodback" || x.Code == "slugging" })
}

// Tell reports whether one of some codes is among them.
func (d Dangers) Tell(codes ...string) bool {
	return d.first(func(x *Danger) bool { return slices.Contains(codes, x.Code) }) != nil
}

func (d Dangers) first(is func(*Danger) bool) *Danger {
	for i := range d {
		if is(&d[i]) {
			return &d[i]
		}
	}
	return nil
}

// Distinct leaves out the dangers that are only apparent, and those that say what another
// does.
func Distinct(all Dangers, apparent func(code string) bool) Dangers {
	var out Dangers
	flooded := false
	for _, x := range all {
		seems := apparent != nil && apparent(x.Code)
		flooded = flooded || x.Code == "floodback" && !seems
		if !seems && !(x.Code == "discharge-cool" && flooded) {
			out = append(out, x)
		}
	}
	return out
}
