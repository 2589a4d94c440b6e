// Package satline turns the readings of a service visit to an air conditioner, a heat pump or a
// cold room into an assessment a technician can act on: which readings can be believed,
// what follows from them and how surely, whether the charge is right and by
// which rule, what endangers the compressor, what to do next and what to be
// careful of.
//
// A [Visit] is what the technician knows; [Assess] makes an [Assessment] of it:
//
//	visit, err := satline.ReadVisit(file)
//	...
//	assessment, err := satline.Assess(visit)
//	...
//	fmt.Print(assessment)
//
// Both have a JSON form with stable field names. A [Session] is a visit while gauges send. Package
// report writes an Assessment as text, Markdown or HTML for the technician, for the file and for
// the owner; package work keeps the record of a whole job.
//
// # What it rests on
//
// The package holds no physics of its own. It asks the packages that do, each
// of which can be used by itself:
//
//   - quantity: a type for every physical value, with its units
//   - refrigerant: saturation and states of refrigerants and blends, from
//     equations of state
//   - psychro: moist air at any pressure
//   - charge: charging methods, their targets and conditions, steadiness, dosing
//   - charge/coldroom: what holds in coolers and freezers
//   - airside: airflow, temperature split, capacity, freezing
//   - electrical: what a meter shows of supply, control circuit and motors
//   - refrigerant/cycle: the machine as a whole, fitted to the one at hand
//   - refrigerant/diagram and psychro/chart: the pictures of both
//
// # What outranks it
//
// The label of the machine and its maker's charging chart outrank every general
// rule here; give them in [Equipment].Label and they are used. Local codes and
// licensed practice apply to all work on a machine.
//
// # Errors
//
// Every error about a visit is a *[VisitError] and wraps [ErrVisit]. It names the
// field and says in one line what is wrong, the valid range and what to do. A
// machine in a bad way is not an error.
//
// Everything exported but a Session is safe for concurrent use.
package satline
