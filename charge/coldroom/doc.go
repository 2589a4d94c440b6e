// Package coldroom holds the rules of cold rooms: walk-in coolers and freezers, reach-ins,
// display cases. It says what is usual for a [Room]: the temperature it is kept at, how far
// below that it evaporates, the superheats, where food is at risk, and how a low-pressure
// control is set.
//
// None of them is a rule for comfort cooling, and no rule of comfort cooling holds here. The
// maker's chart comes before all of them; each names its source.
package coldroom
