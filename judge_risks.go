package satline

import (
	"fmt"

	"github.com/satline/satline/charge"
)

// judgeRisks names what endangers the compressor.
func (j *job) judgeRisks() error {
	j.liquidReturn()
	return nil
}

// liquidReturn is judged by itself, because a machine whose charge may not be
// judged now can still be flooding its compressor.
func (j *job) liquidReturn() {
	s := j.derived.Superheat
	if s == nil || j.visit.Conditions.Heating || gravest(j.doubts, "suctionPressure", "suctionLine") == Impossible {
		return
	}
	measured, err := charge.Taken(charge.Superheat, *s)
	if err != nil || !measured.LiquidReturning() {
		return
	}
	j.risks = append(j.risks, Risk{
		Code:  "floodback",
		Grave: true,
		Text:  fmt.Sprintf("superheat %s: liquid may be coming back to the compressor, whatever the small number", s.Format(j.visit.Units)),
		Why:   "liquid washes the oil out of bearings, and a slug of it breaks valves",
		Do:    "feel and look: a sweating or frosted compressor shell says yes; find out why before it runs on",
	})
}
