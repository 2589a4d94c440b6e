// Package refrigerant knows every fluid a technician meets: what it is, how it
// burns, where it boils at a pressure, and what it holds at a state.
//
//	r, err := refrigerant.Lookup("R-454B")
//	atmosphere := quantity.AtmosphereAt(quantity.Feet(6000))
//	suction := quantity.PSIG(105).Absolute(atmosphere)
//	superheat, err := r.Superheat(suction, quantity.Fahrenheit(48))
//
// # Bubble and dew
//
// A pure fluid boils and condenses at one temperature for each pressure.
// A zeotropic blend does not: as liquid is warmed at constant pressure the first
// bubble appears at the bubble point, and as vapor is cooled the first drop
// appears at the dew point, some degrees above. Between the two lies the glide.
// Hence two columns in a pressure-temperature chart, and one rule:
//
//   - superheat is counted from the dew point, because what leaves the
//     evaporator must be past its last drop;
//   - subcooling is counted from the bubble point, because what leaves the
//     condenser must be short of its first bubble.
//
// Read the wrong column with R-407C and the superheat is off by the glide,
// 10 °F and more: enough to send liquid to a compressor that looks well fed.
// [Refrigerant.Superheat] and [Refrigerant.Subcooling] take the right column.
//
// # Pressures are absolute
//
// A gauge counts from the atmosphere around it. Turn its reading into
// a quantity.Pressure with the atmosphere of the site; see quantity.AtmosphereAt.
//
// # Where the figures come from
//
// Pure fluids are computed from their published Helmholtz equations of state,
// blends from the published mixture models; [Refrigerant.Sources] names the papers, and
// [Refrigerant.Estimated] says where a pair of components has no published fit. Saturation is
// served from tables made from those equations (go generate): a lookup takes some
// nanoseconds, allocates nothing and is within 1 mK and 2e-5 of the equation,
// which tests hold for every refrigerant; the worst of all is 0.07 mK and 1.1e-5
// off. So is what lies between bubble and dew at an enthalpy, an entropy or
// a quality. The last 0.3 % below the critical temperature (for most blends the
// last 1 % between bubble and dew), a [NewBlend], a [State] of one phase and any State
// at a temperature are solved from the equation itself.
//
// A program that asks for many states of one phase has them ten times as fast, within 1e-5
// of the equation, from a [StateTable], which is made on first use.
//
// A unit's own chart outranks these figures.
//
// # In the field
//
// [Refrigerant.Leak] tells what stays in a unit that has leaked a zeotropic blend, [Cylinder] how
// far a cylinder may be filled, [StandingPressure] which refrigerants fit the gauge
// of a unit that is off. SafetyGroup, Flammable, Hazards, GWP and Control are the
// facts to know before opening a valve, OpeningSteps what to do before a flame comes
// near one, and RoomCharge and RoomFloor what a room may have of what burns.
// ComfortCooling says whether the targets of comfort cooling hold at all.
//
// # Not here
//
// Viscosity, thermal conductivity and surface tension are outside the equations
// of state and are not given.
package refrigerant
