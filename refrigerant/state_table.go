package refrigerant

import (
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// A StateTable answers density, enthalpy and entropy of one phase from a table made of the
// equation of state, some ten times as fast as that. Get one from Refrigerant.StateTable. It
// does not change; all methods are safe for concurrent use and allocate nothing. Nil and the
// zero StateTable are none and have no range.
//
// The table covers the pressures of Range: from that of a dew point of −58 °C, or of the
// first bubble point that the refrigerant has, to 0.9 of the critical pressure, or to where
// the dew line of a blend turns back. It goes from the dew point up to 480 K, at least 40 K
// and at most 130 K above the critical temperature, but not beyond Limits; and from the
// bubble point down to the MinTemperature of Limits. There
// density is within 1e-5 of the equation, enthalpy within 2 J/kg and entropy within
// 0.01 J/(kg·K), which are 1e-5 of what the IIR datum gives liquid at 0 °C.
type StateTable struct {
	of        *Refrigerant
	low, high quantity.Pressure
	critical  float64 // Pa
	logLow    float64
	perStep   float64
	sides     [table.Edges]side
}

// A side of the two-phase region is the phase that lies there.
type side struct {
	phase Phase
	end   float64    // K: the last temperature
	edge  table.Line // K: bubble or dew point
	sheet *table.Sheet
}

// What the columns of a sheet hold: the density of liquid, or that of vapor over pressure;
// enthalpy; entropy.
const (
	densityColumn = iota
	enthalpyColumn
	entropyColumn
)

// A TableState is what a StateTable says of a refrigerant at one condition. Enthalpy and
// entropy count from the IIR datum, as those of State do.
type TableState struct {
	Phase       Phase                     `json:"phase"`
	Temperature quantity.Temperature      `json:"temperature"`
	Density     quantity.Density          `json:"density"`
	Enthalpy    quantity.SpecificEnthalpy `json:"enthalpy"`
	Entropy     quantity.SpecificEntropy  `json:"entropy"`
}

// Range returns the lowest and the highest pressure of the table.
func (t *StateTable) Range() (low, high quantity.Pressure) {
	if !t.made() {
		return 0, 0
	}
	return t.low, t.high
}

func (t *StateTable) made() bool { return t != nil && t.of != nil }

// At returns the state at pressure p and temperature temp. What the table does not cover,
// two phases and supercritical states among it, is answered by Refrigerant.State, as slowly
// and with its errors, or ErrNoRefrigerant.
func (t *StateTable) At(p quantity.Pressure, temp quantity.Temperature) (s TableState, err error) {
	if !t.made() {
		return s, ErrNoRefrigerant
	}
	if p >= t.low && p <= t.high {
		var b Isobar
		b.set(t, float64(p))
		if e, ok := b.side(float64(temp)); ok {
			b.fill(&s, e, float64(temp))
			return s, nil
		}
	}
	v, err := t.of.State(p, temp)
	return TableState{v.Phase, v.Temperature, v.Density, v.Enthalpy, v.Entropy}, err
}

// place is what the isobars have equal steps of: the logarithm of pressure far from the
// critical point, and near it that of the distance, on which properties depend as a power.
func (t *StateTable) place(p float64) float64 { return helmholtz.Log(p / (t.critical - p)) }
