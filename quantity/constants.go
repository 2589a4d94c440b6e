package quantity

// Conversion factors, exact by definition (NIST SP 811, appendix B).
const (
	Foot  = 0.3048             // meters
	Pound = 0.45359237         // kilograms
	PSI   = 6894.7572931683613 // pascals, from 0.45359237 kg · 9.80665 m/s² / in²
	BTU   = 1055.05585262      // joules, International Table
)

// Columns of liquid by convention, whatever its temperature (NIST SP 811,
// appendix B.8).
const (
	inchMercury   = 3386.389       // pascals
	micronMercury = 0.133322387415 // pascals
	inchWater     = 249.08891      // pascals
)
