// Package picture holds what the charts of the library share: the page, the
// palette, heading, legend and table of states, words that keep out of each other's
// way, and SVG and PNG. It knows no fluid.
package picture
