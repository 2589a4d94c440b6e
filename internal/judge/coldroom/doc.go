// Package coldroom judges machines that keep a box cold: walk-in coolers and freezers,
// reach-ins, display cases. Nothing of comfort cooling holds there: the box is cold, the
// evaporator colder, a receiver hides a shortage, a control holds the head, and what is in
// the box comes before the machine.
//
// Its Judge is the one of package modes. The belief compares the readings with those of machines
// that are sound or have one fault, which package machine models and package signature has
// learnt by kind, box and weather.
package coldroom
