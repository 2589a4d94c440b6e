// Package testbench is a bench of invented air conditioners, to try the diagnosis on
// machines that whoever wrote it did not have in mind. It draws machines as they are built,
// breaks them, and reads them with instruments that err.
//
// Its physics is its own. Both coils are marched along in segments that end where the
// refrigerant starts or ends to boil or condense; a segment of the indoor coil is dry or wet
// by itself; the charge is counted part by part with a void fraction; a compressor has an
// efficiency map. Correlations are published ones, each named where it stands. From the rest
// of the module it takes saturation and vapor properties, moist air, and the language of
// evidence that it hands over: neither the cycle model nor what is learnt from it, which a
// test of the layers holds. It is used by tests alone.
package testbench
