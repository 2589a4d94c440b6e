// Package readcheck asks whether a set of readings can be true together,
// before anything is concluded from them. Each check is a row of one table: what
// must hold of any working air conditioner, how far the readings are from it
// in standard uncertainties, and what usually makes them so.
package readcheck
