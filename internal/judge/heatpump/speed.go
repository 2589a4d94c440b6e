package heatpump

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/heatpump/signature"
)

// A speed is the share of its full capacity that a machine runs at, with the chance of it.
type speed struct{ share, chance float64 }

// speeds are those that a machine may run at: as stated, else by its stages. Chances are common
// practice, no source.
func speeds(k population.Known) []speed {
	switch {
	case k.Share > 0:
		return []speed{{min(max(k.Share, 0.15), 1.2), 1}}
	case k.Stages == population.VariableSpeed:
		return []speed{{1, 0.25}, {0.75, 0.25}, {0.55, 0.25}, {0.4, 0.25}}
	case k.Stages == population.TwoStage:
		return []speed{{1, 0.5}, {0.7, 0.5}}
	}
	return []speed{{1, 1}}
}

// modulates says that the machine may run below its full capacity, as one does whose house wants
// less.
func (b *belief) modulates() bool { return len(b.speeds) > 1 || b.speeds[0].share < 1 }

// byShare are the exponents of the share by which each feature falls where both fans slow down
// as its power of 0.6 and a coil's conductance as that of 0.3, by the effectiveness of the coils
// (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, chapter 11, from memory); the
// last two are logarithms of what they say.
var byShare = [signature.Features]float64{
	signature.EvaporatingUnder: 0.6, signature.CondensingOver: 0.5, signature.Subcooling: 0.5,
	signature.DischargeOver: 0.4, signature.Rise: 0.4, signature.OutdoorDrop: 0.4,
	signature.Airflow: 0.6, signature.Power: 1.15,
}

// slow is what a row and its mean come to at a share of the full capacity. How the fans follow is
// the maker's choice: half of what changes is left open.
func (s speed) slow(r *signature.Row, m *[signature.Features]float64) {
	if s.share == 1 {
		return
	}
	const open = 0.5
	for f := range m {
		by := m[f] * (math.Pow(s.share, byShare[f]) - 1)
		if g := signature.Feature(f); g == signature.Airflow || g == signature.Power {
			by = 100 * byShare[f] * math.Log(s.share)
		}
		m[f] += by
		r.Covariance[f][f] += open * open * by * by
	}
}
