// Package cyclefluid is a refrigerant as a system solver needs it: a few
// thousand lookups per solution, in plain SI floats, without allocation.
//
// An equation of state takes about a microsecond for one vapor state, and more
// for a blend. A solution of a whole machine asks for hundreds. So a Fluid is
// sampled once from package refrigerant, on a grid in the logarithm of pressure:
// both edges of the two-phase region, and along each isobar the superheated vapor
// as polynomials in the enthalpy above the dew point. Between isobars every
// coefficient is a cubic with continuous slope, so that all results are
// continuous with their first derivatives, which Newton's method wants.
//
// The error against the equation of state is measured by a test: at most 0.016 K
// in temperature and 0.01 % in volume up to 0.9 of the critical pressure.
//
// The enthalpy of liquid is that of the bubble point at its temperature and a rise
// with pressure, sampled too: within 0.15 % of the latent heat up to 0.7 of the
// critical pressure and 20 K of subcooling. Its volume is that of the bubble point.
package cyclefluid
