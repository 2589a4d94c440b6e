// Package diagram draws pressure-enthalpy diagrams: the dome of one refrigerant with
// its bubble and dew lines, isotherms, and the machine's states and cycle on it, as
// SVG or PNG.
//
// Read as a technician reads it: an evaporator or condenser runs level, an expansion
// device straight down, and a compressor up to the right. What the first picks up in
// a pound of refrigerant, and what the last puts into it, are lengths along the
// enthalpy scale.
//
// The pressure scale is logarithmic. It shows absolute pressure, or gauge pressure
// where Options.Atmosphere says what the gauge counts from; the axis says which.
// Enthalpy counts from the IIR datum, 200 kJ/kg for saturated liquid at 0 °C, as
// everywhere in package refrigerant: 85.98 Btu/lb at 32 °F. Tables from another datum
// differ from it by a constant, and only differences of enthalpy mean anything.
package diagram
