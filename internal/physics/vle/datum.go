package vle

import "github.com/satline/satline/internal/physics/helmholtz"

// A Datum is the state at which a model's enthalpy and entropy are fixed.
type Datum struct {
	T    float64 // K
	H, S float64 // J/kg, J/(kg K), of saturated liquid at T
	// NormalBoilingPoint says that the datum is the bubble point at 101325 Pa
	// with h = s = 0, because the fluid has no liquid at 0 °C.
	NormalBoilingPoint bool
}

// IIR is the model on the datum of the International Institute of
// Refrigeration: h = 200 kJ/kg and s = 1 kJ/(kg K) for liquid at the bubble
// point at 0 °C. A fluid that is frozen or above its critical point there has
// h = s = 0 for liquid at its normal boiling point, or at its triple point
// where that is above atmospheric pressure.
//
// Water's 0 °C is 0.01 K below its triple point; its equation is used down to
// there, as is usual.
func IIR(m *helmholtz.Model) (*helmholtz.Model, Datum, error) {
	s := New(m)
	d := Datum{T: 273.15, H: 200e3, S: 1e3}
	pt, err := s.BubbleT(d.T)
	if err != nil {
		pt, err = s.BubbleP(101325)
		d = Datum{NormalBoilingPoint: true}
	}
	if err != nil {
		return nil, Datum{}, err
	}
	d.T = pt.T
	l := m.At(pt.T, pt.RhoLiquid)
	return m.WithDatum(d.H*m.MolarMass()-l.H, d.S*m.MolarMass()-l.S), d, nil
}
