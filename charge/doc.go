// Package charge judges and corrects the refrigerant charge of an air
// conditioner: what the target is and where it comes from, whether the readings
// can tell, how much to move next, and when to stop.
//
// The method follows the expansion device. A fixed restrictor (piston, short
// tube, capillary) lets the charge show at the suction line, so it is charged by
// superheat, against a target that moves with the return wet bulb and the
// outdoor dry bulb. A valve (TXV, EXV) holds the superheat itself, and the
// charge shows at the liquid line instead, as subcooling, against the figure on
// the unit's label. Where a label gives the approach, the liquid line above the
// outdoor air, that serves as well. Where none of these can be used, the charge
// is recovered and weighed in.
//
// The manufacturer's figure always outranks a general one, and every result
// says which it rests on. All figures and thresholds of the package stand in
// one place with their sources; see [Rules].
//
// Every value carries its standard uncertainty (JCGM 100:2008, "the GUM") from
// the instrument to the [Verdict], which is a set of probabilities, and
// "these instruments cannot tell" is one of the answers.
//
// Everything exported is safe for concurrent use.
//
// Refrigerant work is licensed work. What this package computes does not
// replace the unit's label, the local code or the instrument in hand.
package charge
