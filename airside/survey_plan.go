package airside

import (
	"maps"
	"slices"
	"sort"

	"github.com/satline/satline/quantity/fact"
)

// mends by the part.
var mends = map[string]fact.Code{
	"filter": "air.do.filter", "coil": "air.do.coil", "return": "air.do.return",
	"supply-ducts": "air.do.supply",
}

// plan puts the cheapest before the dearest: dirt, the part that takes most, the blower, the
// burner. No blower is sped up against a pressure that is too high already.
func (j *surveyor) plan() {
	do := func(code fact.Code) {
		if !slices.ContainsFunc(j.out.Plan, func(f fact.Fact) bool { return f.Code == code }) {
			j.out.Plan = append(j.out.Plan, fact.New(code))
		}
	}
	if j.hot || j.fired {
		do("air.do.heat-off")
	}
	for _, part := range [...]string{"filter", "coil"} {
		if j.dirty[part] {
			do(mends[part])
		}
	}
	resists := j.planResistance(do)
	switch {
	case (j.little || j.hot) && !resists && len(j.dirty) == 0:
		do("air.do.blower")
	case j.much || j.cool && !j.little:
		do("air.do.slow-down")
	}
	if j.fired || j.hot && !j.little {
		do("air.do.input")
	}
	if len(j.out.Plan) == 0 {
		do("air.do.go-on")
	} else {
		do("air.do.read-again")
	}
	j.cautions()
}

// planResistance plans against what the air has to get through and that is not dirt, and
// reports whether that is too much.
func (j *surveyor) planResistance(do func(fact.Code)) bool {
	// What is clean again may be all that it takes.
	high := j.high && j.out.Static.External.Value-j.excess > j.out.Static.Maximum
	resists := high || len(j.dirty) == 0 && len(j.large) > 0 && (j.little || j.hot)
	if resists {
		parts := slices.Sorted(maps.Keys(j.large))
		sort.SliceStable(
			parts, func(a, b int) bool { return j.large[parts[a]] > j.large[parts[b]] },
		)
		for _, part := range parts {
			do(mends[part])
		}
		if len(parts) == 0 && len(j.dirty) == 0 {
			do("air.do.find-part")
		}
	}
	return resists
}

func (j *surveyor) cautions() {
	caution := func(code fact.Code) { j.out.Cautions = append(j.out.Cautions, fact.New(code)) }
	if j.hot || j.fired {
		caution("air.caution.hot")
	}
	if j.s.Gas != nil {
		caution("caution.gas-heat")
	}
	if j.s.Electric != nil {
		caution("caution.live-parts")
	}
	caution("caution.drilling")
	caution("caution.belts")
	caution("caution.label-first")
}
