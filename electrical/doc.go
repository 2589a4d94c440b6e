// Package electrical judges what a technician's meter shows of an air conditioner that does
// not run, or does not run well: supply, control circuit, contactor, capacitors, currents,
// windings.
//
// [Judge] takes the readings that there are and returns what each shows against its limit, the
// dangers, and what to do next in an order that is safe: the first broken link of the chain
// from the supply to the motor comes first, and no motor is condemned on readings that a weak
// capacitor, a burnt contact or a low supply explains.
//
// A limit on the label outranks a general one. Each check says where its limit comes from.
//
// Work on live parts is for qualified people with the meter and the clothing for it, and local
// law says who may do it. Most of what is asked here is read with the machine locked out. What
// this package says replaces neither the label nor the licensed electrician.
//
// Everything exported is safe for concurrent use.
package electrical
