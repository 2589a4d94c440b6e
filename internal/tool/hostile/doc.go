// Package hostile calls everything that the module exports with values that nobody should
// give to it. It has tests alone: nothing panics, and no answer is NaN or infinite.
package hostile
