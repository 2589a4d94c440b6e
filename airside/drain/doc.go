// Package drain judges why water is where it does not belong: the looks of a technician at
// pan, drain, trap, float switch and insulation, in the order that finds it soonest.
//
// A clogged drain is the usual cause, so it is asked for first; where ice was seen, the water
// is that of the thaw, and why the coil froze comes before the drain.
//
// Local codes say what a drain must have; what is judged here are the common figures.
//
// Everything exported is safe for concurrent use.
package drain
