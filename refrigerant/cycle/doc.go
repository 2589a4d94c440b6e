// Package cycle is the vapor-compression machine: the cycle through measured
// points, the components with their published models, the whole system closed
// over its charge, and a fit of that system to the machine in front of you, by
// which it answers what will happen at other weather, airflow or charge.
//
// # Three questions
//
// What is it doing? [Points.Analyze] takes what gauges and clamps show and gives
// the state at every port, the work and losses of the compressor, flow, capacity
// and efficiency, each with its uncertainty.
//
// What should a machine like this do? [DesignResidential] and [Design] make a [System];
// [System.Solve] gives its steady state at any [Conditions], sound or with
// [Faults].
//
// What will this one do tonight? [Fit] moves the few unknowns of a System until it
// reads as the visit did, and [Fitted.Predict] gives the answer with a band.
//
// # The model
//
// Compressor: AHRI 540 map, or volumetric and isentropic efficiencies over the
// pressure ratio. Restrictors: Payne and O'Neal (2004) for short tubes. Condenser:
// three zones, evaporator: two, side by side in the air. The wet coil is that of
// package airside's kernel. Charge is counted zone by zone with Zivi's void
// fraction (1964). Each type names its source.
//
// What is left out: oil, heat along the liquid line, uneven circuits and uneven
// air, transients. A machine off its steady state reads otherwise.
//
// # How good it is
//
// Tests hold the model to what is published, and testdata/faults.csv sets 96 measured
// effects of faults beside its own: 94 have their direction. It is off where a compressor
// leaks on a fixed restrictor, of which the discharge gets cooler here and got hotter in
// the laboratory, because the model sends liquid back; and where a capillary is overcharged
// in mild weather. Seven more are off in size, by more than half: a lack of indoor or
// outdoor air and a restricted line cost it a third of the capacity that they cost the
// rooftop unit tested, a leaking compressor nearly twice as much. A fixed restrictor reads
// the superheat of the usual charging chart within 5 °F from 75 to 105 °F outdoors, and
// floods sooner than the chart below that.
//
// In 10,000 random cases over weather, airflow, charge and faults every one has a state,
// and its balances of mass and energy close to 1e-6 as a test holds, and to 2e-10 as measured.
package cycle
