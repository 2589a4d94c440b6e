package testbench

import "math"

// A slip says how much of a tube's section is vapor at a quality x: how much refrigerant
// a coil holds hangs on it more than on anything else. Models disagree by a third; so do
// machines here.
type slip int

const (
	zivi slip = iota
	premoli
	hughmark
	slips
)

// void is the vapor's share of the section.
func (s slip) void(x, g, d float64, t *transport) float64 {
	if x <= 0 {
		return 0
	}
	if x >= 1 {
		return 1
	}
	switch s {
	case premoli:
		return premoliVoid(x, g, d, t)
	case hughmark:
		return hughmarkVoid(x, g, d, t)
	}
	// Zivi 1964, Journal of Heat Transfer 86:247-252: least production of entropy.
	return 1 / (1 + (1-x)/x*math.Pow(t.rhoV/t.rhoL, 2.0/3))
}

// premoliVoid is the CISE correlation: Premoli, Di Francesco and Prina 1971, La Termotecnica
// 25:17-26 (as Rice reviewed it in ASHRAE Transactions 93(1), 1987; from memory).
func premoliVoid(x, g, d float64, t *transport) float64 {
	y := x / (1 - x) * t.rhoL / t.rhoV
	re := g * d / t.muL
	we := g * g * d / (t.sigma * t.rhoL)
	e1 := 1.578 * math.Pow(re, -0.19) * math.Pow(t.rhoL/t.rhoV, 0.22)
	e2 := 0.0273 * we * math.Pow(re, -0.51) * math.Pow(t.rhoL/t.rhoV, -0.08)
	s := 1 + e1*math.Sqrt(max(0, y/(1+y*e2)-y*e2))
	return y / (y + s)
}

// hughmark's flow parameter against his correlating parameter Z: Hughmark 1962, Chemical
// Engineering Progress 58(4):62-65 (the table as in Rice 1987, from memory).
var hughmarkTable = [...][2]float64{
	{
		1.3, 0.185,
	}, {1.5, 0.225}, {2, 0.325}, {3, 0.49}, {4, 0.605}, {5, 0.675}, {6, 0.72}, {8, 0.767},
	{10, 0.78}, {15, 0.808}, {20, 0.83}, {40, 0.88}, {70, 0.93}, {130, 0.98},
}

func hughmarkVoid(x, g, d float64, t *transport) float64 {
	beta := 1 / (1 + (1-x)/x*t.rhoV/t.rhoL)
	froude := math.Pow(g*x/(t.rhoV*beta*(1-beta)), 2) / (9.81 * d)
	alpha := 0.8 * beta
	for range 8 {
		re := g * d / (t.muL + alpha*(t.muV-t.muL))
		z := math.Pow(re, 1.0/6) * math.Pow(froude, 1.0/8)
		alpha = beta * hughmarkFactor(z)
	}
	return alpha
}

func hughmarkFactor(z float64) float64 {
	if z <= hughmarkTable[0][0] {
		return hughmarkTable[0][1] * z / hughmarkTable[0][0]
	}
	for i := 1; i < len(hughmarkTable); i++ {
		a, b := hughmarkTable[i-1], hughmarkTable[i]
		if z <= b[0] {
			return a[1] + (b[1]-a[1])*math.Log(z/a[0])/math.Log(b[0]/a[0])
		}
	}
	return 0.98
}
