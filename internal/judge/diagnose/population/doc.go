// Package population describes sound machines as they are built: which kinds there are,
// how common each is on a service call, where they evaporate and condense at the rating
// conditions, and how much air, what coils and what compressors they have. Signatures
// are learnt from machines drawn here, and trials are drawn here too.
//
// The levels of pressure are those of makers' tables of normal operating pressures,
// transcribed in testdata/machines.csv with their sources; a test holds the population
// to them by refrigerant and kind. Where no table was found, the comment of the figure
// says so. POPULATION.md is the page about it.
package population
