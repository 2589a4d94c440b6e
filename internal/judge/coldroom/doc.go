// Package coldroom judges machines that keep a box cold: walk-in coolers and freezers,
// reach-ins, display cases. Nothing of comfort cooling holds there: the box is cold, the
// evaporator colder, a receiver hides a shortage, a control holds the head, and what is in
// the box comes before the machine.
//
// Assess is one flow: Evidence, which is what was read and seen, to a Verdict, which is what
// is believed of the machine and of its charge, its dangers, and what to do in which order.
// The belief compares the readings with those of machines that are sound or have one fault,
// which package machine models and package signature has learnt by kind, box and weather. All
// words are facts; see package words.
package coldroom
