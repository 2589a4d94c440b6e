package diagnose

import (
	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// A state is a suspect at one severity, as a shift of the readings.
type state struct {
	severity float64
	weight   float64 // prior among the states of its suspect
	shift    vector
	gain     *matrix          // nil: the shift is the same for every machine
	rest     *matrix          // nil: nothing is left of the scatter
	restMore float64          // by how much of itself rest is more than that
	around   float64          // the variance of the shift itself, as a part of it
	doubt    vector           // variance beside rest
	pull     *pull            // nil: no reading is drawn toward the air
	capacity float64          // part of the cooling capacity lost, on average
	fluid    string           // which refrigerant, for OtherRefrigerant
	variant  string           // entry of the table, where it is not the signature's own
	level    *signature.Level // nil for what is not in the table
	// bound is the log likelihood of the air, were this the cause, where it has one of its own.
	bounded bool
	bound   float64
}

// left is what a state adds to the covariance of two features, beside its doubt.
func (s *state) left(f, g int) (x float64) {
	if s.rest != nil {
		x = (1 + s.restMore) * s.rest[f][g]
	}
	return x + s.around*s.shift[f]*s.shift[g]
}

// takeLeft fills in what left and doubt come to, of a feature with those at the places up to it.
func (s *state) takeLeft(row []float64, f int, at *[features]int) {
	clear(row)
	if s.rest != nil {
		times, rest := 1+s.restMore, &s.rest[f]
		for j := range row {
			row[j] = times * rest[at[j]]
		}
	}
	if s.around != 0 {
		by := s.around * s.shift[f]
		for j := range row {
			row[j] += by * s.shift[at[j]]
		}
	}
	row[len(row)-1] += s.doubt[f]
}

// shifts says that a state leaves the scatter of machines as it is, but for how far its shift is.
func (s *state) shifts() bool {
	return s.gain == nil && s.rest == nil && s.pull == nil && s.doubt == vector{}
}
