// Package fluiddata holds the published coefficients of the equations of state:
// one file for each fluid and one for each paper on mixtures, with the paper
// named beside its numbers.
//
// The tables are static data. A program pays nothing for them at start, and
// nothing is computed until a model is made.
package fluiddata
