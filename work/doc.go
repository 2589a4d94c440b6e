// Package work holds what a technician does in a day: one machine, one job, from the first
// reading to the signature.
//
// An [Order] is a job at a machine: who, where, when, what is to be done, the readings before
// and after, and the parts of the work with what was read in them: recovery, pressure test,
// evacuation, weighing in, cylinders, air, water. [Judge] holds each part against the rule for
// it, says what each task still misses, and makes the [Record], which is printed for the
// technician, for the file or for the owner. [Compare] holds the orders of one machine against
// each other over the years.
//
// The judgements are those of packages satline, charge and airside; this one joins them.
package work
