package population

import "math"

// Known is what is known of how a machine is built. Zero fields are not known.
type Known struct {
	// Refrigerant is its designation.
	Refrigerant string
	// Valve is an expansion valve, Electronic one that a controller moves.
	Valve, Electronic bool
	// Year in which it was built.
	Year int
	// SEER is its seasonal efficiency, Btu/Wh.
	SEER   float64
	Stages Stages
	// Share of its full capacity that it runs at.
	Share       float64
	Arrangement Arrangement
}

// SEERPerSEER2 is about what a seasonal efficiency by the later rating is by the earlier one.
const SEERPerSEER2 = 1.05

// unlike is how likely a machine is of a kind whose years or efficiency are not those
// known of it: labels are misread, and kinds overlap.
const unlike = 0.02

// unsaid is how likely it is not said that a machine runs at reduced capacity, which is not
// how instructions have it read, or that it hangs on a wall; common practice, no source.
const unsaid = 0.25

// electronic is the share of valves that a controller moves, by the stages: where the speed varies,
// the controller is there (common practice, no source).
var electronic = [...]float64{SingleStage: 0.15, TwoStage: 0.25, VariableSpeed: 0.9}

// sharedWithin is how near to what is said a machine runs to the share of its kind.
const sharedWithin = 0.12

// Chance returns how likely a machine is so, among all that are met.
func (k *Known) Chance() float64 {
	sum := 0.0
	for i := range Kinds {
		sum += Kinds[i].Weight * k.like(&Kinds[i])
	}
	return sum
}

// Weights returns the probability of each of Kinds.
func (k *Known) Weights() []float64 {
	w, total := make([]float64, len(Kinds)), k.Chance()
	for i := range Kinds {
		w[i] = Kinds[i].Weight * k.like(&Kinds[i])
	}
	for i := range w {
		w[i] /= total
	}
	return w
}

// like is how likely what is known is of a kind.
func (k *Known) like(x *Kind) float64 {
	p := unlike * unlike
	if listed := shareOf(x.refrigerants, k.Refrigerant); listed > 0 {
		p = listed
	} else if !anyKind(k.Refrigerant) {
		p = 1
	}
	if k.Valve {
		p *= x.valve
	} else {
		p *= 1 - x.valve + unlike
	}
	if k.Electronic && k.Stages == 0 {
		p *= electronic[x.Stages]
	}
	if k.Year > 0 {
		const slack = 1
		if k.Year < x.From-slack || k.Year > x.To+slack {
			p *= unlike
		} else {
			p /= float64(min(x.To, latest) - x.From + 2*slack)
		}
	}
	if k.SEER > 0 {
		const std = 0.5
		off := max(x.LeastSEER-k.SEER, k.SEER-x.MostSEER, 0) / std
		p *= max(unlike, math.Exp(-off*off/2)) / (x.MostSEER - x.LeastSEER)
	}
	if k.Stages > 0 && k.Stages != x.Stages {
		p *= unlike * unlike
	}
	if k.Share > 0 {
		off := (x.capacity.Mean/usualCapacity.Mean - k.Share) / sharedWithin
		p *= max(unlike*unlike, math.Exp(-off*off/2))
	} else if x.Running == ReducedCapacity && !k.varies(x) {
		p *= unsaid
	}
	arrangement := k.Arrangement
	if arrangement == 0 && shareOf(x.arrangements, WallMounted) > 0 {
		p *= unsaid
	} else if arrangement > 0 {
		p *= max(unlike*unlike, shareOf(x.arrangements, arrangement))
	}
	return p
}

// varies says that the speed of the compressor is known to vary, or likely to by its valve: nobody
// sees how fast it runs.
func (k *Known) varies(x *Kind) bool {
	likely := k.Stages == 0 && k.Electronic
	return x.Stages == VariableSpeed && (k.Stages == x.Stages || likely)
}

// anyKind reports whether some kind holds a refrigerant; one that none holds says nothing.
func anyKind(designation string) bool {
	for i := range Kinds {
		if shareOf(Kinds[i].refrigerants, designation) > 0 {
			return true
		}
	}
	return false
}

func shareOf[T comparable](of []share[T], x T) float64 {
	sum, found := 0.0, 0.0
	for _, s := range of {
		sum += s.weight
		if s.of == x {
			found += s.weight
		}
	}
	return found / sum
}
