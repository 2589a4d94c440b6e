// Package table interpolates curves that are expensive to compute: the cell of
// an argument is found by arithmetic, not by search, and one cubic is evaluated
// in it. A lookup takes a few nanoseconds and no memory.
package table
