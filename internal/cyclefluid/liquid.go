package cyclefluid

import "math"

// A Liquid is liquid at a temperature and pressure.
type Liquid struct {
	T, H, V float64
	Bubble  float64 // pressure at which it would boil
}

// LiquidAt returns the liquid at t, in K, and p, in Pa. Its volume is that of the
// bubble point at t.
func (f *Fluid) LiquidAt(t, p float64) Liquid {
	i, x := f.locateLiquid(t)
	v := f.liquidBetween(i, x)
	return liquid(t, p, &v)
}

func liquid(t, p float64, v *[4]float64) Liquid {
	bubble := math.Exp(v[2])
	return Liquid{t, v[0] + v[3]*(p-bubble), v[1], bubble}
}

// LiquidAtEnthalpy returns the liquid of enthalpy h at p.
func (f *Fluid) LiquidAtEnthalpy(h, p float64) Liquid {
	// Bisection on the knots, then Newton.
	low, high := 0, len(f.liquids)-1
	for high-low > 1 {
		mid := (low + high) / 2
		if f.liquids[mid].value[0] <= h {
			low = mid
		} else {
			high = mid
		}
	}
	perStep := f.liquids[low+1].value[0] - f.liquids[low].value[0]
	t := f.liquidLow + (float64(low)+(h-f.liquids[low].value[0])/perStep)/f.perKelvin
	var l Liquid
	for range 8 {
		l = f.LiquidAt(t, p)
		step := (h - l.H) / (perStep * f.perKelvin)
		if math.Abs(step) < 1e-10 {
			break
		}
		t += step
	}
	return l
}

func (f *Fluid) locateLiquid(t float64) (int, float64) {
	x := (t - f.liquidLow) * f.perKelvin
	i := min(max(int(x), 0), len(f.liquids)-2)
	return i, x - float64(i)
}

func (f *Fluid) liquidBetween(i int, x float64) [4]float64 {
	k0, k1 := &f.liquids[i], &f.liquids[i+1]
	var v [4]float64
	switch {
	case x < 0:
		for c := range v {
			v[c] = k0.value[c] + x*k0.slope[c]
		}
	case x > 1:
		for c := range v {
			v[c] = k1.value[c] + (x-1)*k1.slope[c]
		}
	default:
		v0, v1, s0, s1 := hermite(x)
		for c := range v {
			v[c] = v0*k0.value[c] + v1*k1.value[c] + s0*k0.slope[c] + s1*k1.slope[c]
		}
	}
	return v
}
