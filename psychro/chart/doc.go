// Package chart draws psychrometric charts: the properties of moist air at one
// pressure as families of lines over dry bulb and humidity ratio, with states and
// processes marked on them, as SVG or PNG.
//
// The lines are computed for the pressure asked for, so a chart for a town at 6,000
// feet is not the one for sea level with a correction.
package chart
