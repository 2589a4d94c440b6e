package testbench

import (
	"fmt"
	"math"
	"sync"

	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// gasConstant in J/(mol K); exact since the SI of 2019.
const gasConstant = 8.31446261815324

// A fluid is a refrigerant with what estimates of transport properties need.
type fluid struct {
	*cyclefluid.Fluid
	refrigerant *refrigerant.Refrigerant
	tc, pc      float64 // K, Pa
	molar       float64 // g/mol
	boiling     float64 // K, at one atmosphere
	acentric    float64
	idealCp     float64 // J/(kg K), of thin vapor at 300 K
	tube        shortTube
}

var fluids sync.Map // of *fluid by designation

func fluidOf(designation string) (*fluid, error) {
	if f, ok := fluids.Load(designation); ok {
		return f.(*fluid), nil
	}
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		return nil, err
	}
	c, err := cyclefluid.New(r)
	if err != nil {
		return nil, err
	}
	boiling, err := r.NormalBoilingPoint()
	if err != nil {
		return nil, err
	}
	critical := r.Critical()
	f := &fluid{
		Fluid: c, refrigerant: r, tube: shortTubeOf(designation),
		tc: float64(critical.Temperature), pc: float64(critical.Pressure),
		molar: 1000 * r.MolarMass(), boiling: float64(boiling),
	}
	p, err := r.BubblePressure(quantity.Temperature(0.7 * f.tc))
	if err != nil {
		return nil, fmt.Errorf("acentric factor of %s: %w", designation, err)
	}
	// Pitzer's definition.
	f.acentric = -math.Log10(float64(p)/f.pc) - 1
	thin := c.At(max(1.2*c.LowPressure(), 0.5e5))
	f.idealCp = (thin.VaporAt(302).H - thin.VaporAt(298).H) / 4
	fluids.Store(designation, f)
	return f, nil
}

// A transport holds the properties of both phases at one pressure that heat transfer and
// friction ask for, in SI units.
type transport struct {
	muL, muV, kL, kV, cpL, cpV, prL, prV, rhoL, rhoV, latent, sigma, reduced float64
}

// transport estimates viscosity, conductivity and surface tension by corresponding states,
// since equations of state do not have them. Methods after Poling, Prausnitz and O'Connell,
// The Properties of Gases and Liquids, 5th ed. 2001 (from memory): liquid viscosity of Letsou
// and Stiel 1973, AIChE Journal 19:409; vapor viscosity of Lucas; liquid conductivity of Sato
// and Riedel; vapor conductivity of Eucken, modified; surface tension of Brock and Bird 1955,
// AIChE Journal 1:174.
func (f *fluid) transport(b *cyclefluid.Isobar) transport {
	t := transport{
		rhoL: 1 / b.Bubble.V, rhoV: 1 / b.Dew.V, latent: b.Dew.H - b.Bubble.H,
		cpV: b.DewHeatCapacity(), reduced: b.P / f.pc,
	}
	t.cpL = (b.Bubble.H - b.LiquidAt(b.Bubble.T-4).H) / 4
	tr := min(b.Bubble.T/f.tc, 0.98)
	atm := f.pc / 101325
	xi := math.Pow(f.tc, 1.0/6) / (math.Sqrt(f.molar) * math.Pow(atm, 2.0/3))
	plain := 0.015174 - 0.02135*tr + 0.0075*tr*tr
	bent := 0.042552 - 0.07674*tr + 0.0340*tr*tr
	t.muL = 1e-3 * (plain + f.acentric*bent) / xi

	trv := b.Dew.T / f.tc
	lucas := 0.176 * math.Pow(f.tc/(math.Pow(f.molar, 3)*math.Pow(f.pc/1e5, 4)), 1.0/6)
	t.muV = 1e-7 / lucas * (0.807*math.Pow(trv, 0.618) - 0.357*math.Exp(-0.449*trv) +
		0.340*math.Exp(-4.058*trv) + 0.018)

	riedel := func(tr float64) float64 { return 3 + 20*math.Pow(1-tr, 2.0/3) }
	t.kL = 1.1053 / math.Sqrt(f.molar) * riedel(tr) / riedel(f.boiling/f.tc)
	specific := 1000 * gasConstant / f.molar
	cv := f.idealCp - specific
	t.kV = t.muV * cv * (1.32 + 1.77*specific/cv)

	tbr := f.boiling / f.tc
	q := 0.1196*(1+tbr*math.Log(f.pc/101325)/(1-tbr)) - 0.279
	bar := f.pc / 1e5
	t.sigma = 1e-3 * math.Pow(bar, 2.0/3) * math.Cbrt(f.tc) * q * math.Pow(1-tr, 11.0/9)

	t.prL, t.prV = t.muL*t.cpL/t.kL, t.muV*t.cpV/t.kV
	return t
}
