package charge

import (
	"encoding/json"
	"fmt"
	"math"

	"github.com/satline/satline/internal/finite"
	"github.com/satline/satline/quantity"
)

// A Reading names what a doubt comes from.
type Reading string

// The readings, named as the fields of a visit are, and the other sources of
// doubt.
const (
	SuctionPressure Reading = "suctionPressure"
	SuctionLine     Reading = "suctionLine"
	LiquidPressure  Reading = "liquidPressure"
	LiquidLine      Reading = "liquidLine"
	OutdoorDryBulb  Reading = "outdoorDryBulb"
	ReturnWetBulb   Reading = "returnWetBulb"
	// Atmosphere is the pressure that a gauge counts from.
	Atmosphere Reading = "atmosphere"
	// SaturationCurve is the doubt of a saturation temperature at a known pressure, of
	// a refrigerant whose properties are an estimate.
	SaturationCurve Reading = "saturationCurve"
	// LabelFigure is the doubt stated with a figure of the label.
	LabelFigure Reading = "label"
	// GeneralFigure is the doubt whether a general figure fits this machine.
	GeneralFigure Reading = "generalFigure"
	// Unsteadiness is the scatter of a value over time.
	Unsteadiness Reading = "unsteadiness"
)

// Name returns the reading in words: "suction pressure".
func (r Reading) Name() string {
	switch r {
	case SuctionPressure:
		return "suction pressure"
	case SuctionLine:
		return "suction line temperature"
	case LiquidPressure:
		return "liquid pressure"
	case LiquidLine:
		return "liquid line temperature"
	case OutdoorDryBulb:
		return "outdoor dry bulb"
	case ReturnWetBulb:
		return "return wet bulb"
	case Atmosphere:
		return "atmospheric pressure"
	case SaturationCurve:
		return "saturation temperature of the refrigerant"
	case LabelFigure:
		return "label figure"
	case GeneralFigure:
		return "general figure"
	case Unsteadiness:
		return "unsteadiness"
	}
	return string(r)
}

// A Term is one input's part in the uncertainty of a temperature difference.
type Term struct {
	Reading Reading
	// Std is the standard uncertainty of the reading, in its own SI unit:
	// kelvin or pascals.
	Std float64
	// Sensitivity is the change of the result per unit of the reading.
	Sensitivity float64
}

// Contribution is |Sensitivity|·Std, the standard uncertainty that the reading
// alone would give the result (GUM 5.1.3); 0 where that is no number.
func (t Term) Contribution() quantity.TemperatureDelta {
	return finite.OrZero(quantity.TemperatureDelta(math.Abs(t.Sensitivity) * t.Std))
}

type termJSON struct {
	Reading      Reading                   `json:"reading"`
	Contribution quantity.TemperatureDelta `json:"contribution"`
}

// MarshalJSON writes the reading and its contribution. How that splits into an uncertainty
// and a sensitivity is not kept: a record says in one unit what each reading costs.
func (t Term) MarshalJSON() ([]byte, error) {
	return json.Marshal(termJSON{t.Reading, t.Contribution()})
}

// UnmarshalJSON reads what MarshalJSON writes: a term with that contribution
// and a sensitivity of 1.
func (t *Term) UnmarshalJSON(text []byte) error {
	var j termJSON
	if err := json.Unmarshal(text, &j); err != nil {
		return err
	}
	*t = Term{j.Reading, math.Abs(float64(j.Contribution)), 1}
	return nil
}

// budgetSize holds the longest chain: gauge, atmosphere, saturation curve, clamp, wet
// bulb, outdoor air, unsteadiness, and one to spare.
const budgetSize = 8

// A Budget is the uncertainty budget of a temperature difference: independent
// terms, combined to first order (GUM 5.1.2, equation 10). The zero Budget has
// no terms. It is an array, so that a verdict needs no allocation.
type Budget struct {
	terms [budgetSize]Term
	n     int
}

func (b *Budget) add(r Reading, std, sensitivity float64) {
	if b.n < budgetSize && std > 0 && sensitivity != 0 {
		b.terms[b.n] = Term{r, std, sensitivity}
		b.n++
	}
}

func (b *Budget) join(other Budget) {
	for _, t := range other.terms[:other.n] {
		b.add(t.Reading, t.Std, t.Sensitivity)
	}
}

// Terms returns the terms in the order of the chain.
func (b Budget) Terms() []Term { return append([]Term(nil), b.terms[:b.n]...) }

// Std returns the combined standard uncertainty.
func (b Budget) Std() quantity.TemperatureDelta {
	sum := 0.0
	for _, t := range b.terms[:b.n] {
		c := t.Sensitivity * t.Std
		sum += c * c
	}
	return quantity.TemperatureDelta(math.Sqrt(sum))
}

// Largest returns the term that contributes most; false where there is none.
func (b Budget) Largest() (Term, bool) {
	best := -1
	for i := range b.terms[:b.n] {
		if best < 0 || b.terms[i].Contribution() > b.terms[best].Contribution() {
			best = i
		}
	}
	if best < 0 {
		return Term{}, false
	}
	return b.terms[best], true
}

// MarshalJSON writes the terms as an array.
func (b Budget) MarshalJSON() ([]byte, error) {
	return json.Marshal(b.terms[:b.n])
}

// UnmarshalJSON reads what MarshalJSON writes.
func (b *Budget) UnmarshalJSON(text []byte) error {
	var terms []Term
	if err := json.Unmarshal(text, &terms); err != nil {
		return err
	}
	if len(terms) > budgetSize {
		return fmt.Errorf(
			"charge: an uncertainty budget of %d terms; the longest chain has %d",
			len(terms),
			budgetSize,
		)
	}
	*b = Budget{}
	for _, t := range terms {
		b.add(t.Reading, t.Std, t.Sensitivity)
	}
	return nil
}
