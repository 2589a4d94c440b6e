// Package coil is the heat and water that air exchanges with a coil at one
// refrigerant temperature, in plain SI floats and without allocation, for the
// solvers that ask thousands of times.
//
// # The equations
//
// The refrigerant evaporates or condenses at a constant temperature Tr, so its
// heat capacity rate is without bound and flow arrangement does not matter. Per
// share dx of the coil, with UAa between air and surface, UAr between surface
// and refrigerant, a surface temperature Ts and a flow m of dry air:
//
//	dry:  m·cp·dT = −UAa·(T − Ts)·dx,  UAa·(T − Ts) = UAr·(Ts − Tr)
//	wet:  m·dh = −(UAa/cp)·(h − hs(Ts))·dx,  (UAa/cp)·(h − hs(Ts)) = UAr·(Ts − Tr)
//
// The second line is the enthalpy potential with a Lewis number of 1: Threlkeld,
// "Thermal Environmental Engineering", 2nd ed. 1970, chapter 12; AHRI Standard
// 410; ASHRAE Handbook HVAC Systems and Equipment, air-cooling and dehumidifying
// coils. Braun, Klein and Mitchell, "Effectiveness models for cooling towers and
// cooling coils", ASHRAE Transactions 95(2), 1989, solve it with one mean slope
// of saturation enthalpy, by which their coil has an effectiveness in the number
// of transfer units. Here hs is a polynomial of degree 4 through five states of
// saturated air between Tr and the entering dew point, and the equations are
// integrated exactly; with a straight hs the two agree, and a test holds them
// together.
//
// # Dry, partly wet, wet
//
// Air enters over a dry surface where that is above its dew point, cools, and
// the rest of the coil is wet from where the surface meets the dew point. There
// the two fluxes are equal, so all results are continuous with their first
// derivatives as a coil goes from dry over partly wet to wet. They have a kink
// only where the leaving air reaches saturation and the excess falls out as
// fog onto the coil.
//
// # What is left out
//
// Superheated and liquid zones of the refrigerant, fin efficiency apart from
// what is in UAa, heat along the tubes, and the heat of freezing: below 0 °C
// water is counted as liquid, which leaves out 13 % of the latent part.
package coil
