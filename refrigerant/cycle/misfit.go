package cycle

import (
	"errors"
	"fmt"
	"math"
	"sort"
	"strings"

	"github.com/satline/satline/quantity"
)

// ErrUnsettled is the error of Fit where the readings leave unknowns of the machine open
// in spite of what is assumed of it: none of them moves the machine's readings.
var ErrUnsettled = errors.New(
	"the readings do not settle the unknowns of the machine; read more of it",
)

// impossible is the misfit from which no machine of a kind reads so. Of machines with
// faults far beyond those met, several at once, 99 in 100 fit better than 7.
const impossible = 10

// missed is how many standard uncertainties a reading is off by that a MisfitError names.
const missed = 3

// A MisfitError says that no machine of the kind reads as the Readings have it: a reading is
// wrong, or in another unit, or was taken at another place or time.
type MisfitError struct {
	// Misfit is that of the nearest machine; see Fitted.Misfit.
	Misfit float64
	// Misses are the readings that it is off by more than three standard uncertainties,
	// the furthest first.
	Misses []Miss
}

// A Miss is a reading that the nearest machine does not have.
type Miss struct {
	// Reading is "suction pressure", "liquid pressure", "discharge pressure", "suction line
	// temperature", "liquid line temperature", "discharge line temperature", "supply dry
	// bulb", "air leaving the condenser" or "electric power".
	Reading string
	// Read and Nearest are what was read, and what the nearest machine would read: a
	// quantity.GaugePressure, quantity.Temperature or quantity.Power.
	Read, Nearest fmt.Stringer
	// Off is how far apart they are in standard uncertainties, of instrument and model.
	Off float64
}

// Error implements error.
func (e *MisfitError) Error() string {
	var misses []string
	for _, m := range e.Misses {
		misses = append(
			misses,
			fmt.Sprintf(
				"%s %s, where the nearest has %s", m.Reading, quantity.InBoth(m.Read),
				quantity.InBoth(m.Nearest),
			),
		)
	}
	return "no machine of this kind reads so: " + strings.Join(misses, "; ") +
		"; read these again, the furthest off first, in the unit they were read in"
}

// misfit returns the root mean square of residuals of readings.
func misfit(r []float64) float64 { return math.Sqrt(sumOfSquares(r) / float64(len(r))) }

// misses returns what the machine in state o does not read as was read.
func (l *leastSquares) misses(o *Operating) []Miss {
	var all []Miss
	for _, r := range l.readings {
		nearest := r.of(o)
		if off := math.Abs(nearest-r.measured) / r.std; off > missed {
			all = append(all, Miss{r.name, r.show(r.measured), r.show(nearest), off})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Off > all[j].Off })
	return all
}
