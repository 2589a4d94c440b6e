// Package simulate makes visits to machines whose faults are known, to try the
// diagnosis on. It draws machines, weather, faults, instruments and their errors,
// solves the system model of package cycle, and hands over what a technician
// would have written down. It shares with the inference neither code nor table,
// only the language of Evidence; it is used by tests alone.
package simulate
