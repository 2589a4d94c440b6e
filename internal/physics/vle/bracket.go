package vle

// A bracket closes in on where a function that rises crosses zero, by regula falsi in the
// Illinois variant: the value at an end that stays is halved (Dowell and Jarratt 1971, BIT
// 11:168-174; from memory).
type bracket struct {
	low, high     float64
	atLow, atHigh float64 // the values there
	side          int     // of the last value: 1 high, -1 low, 0 none
}

// secant is where the line through both ends crosses zero.
func (b *bracket) secant() float64 {
	return (b.low*b.atHigh - b.high*b.atLow) / (b.atHigh - b.atLow)
}

// take makes x an end by the value there.
func (b *bracket) take(x, at float64) {
	if at > 0 {
		b.high, b.atHigh = x, at
		if b.side > 0 {
			b.atLow /= 2
		}
		b.side = 1
		return
	}
	b.low, b.atLow = x, at
	if b.side < 0 {
		b.atHigh /= 2
	}
	b.side = -1
}

// inside is x where that is between low and high, else their middle.
func inside(x, low, high float64) float64 {
	if x > low && x < high {
		return x
	}
	return 0.5 * (low + high)
}
