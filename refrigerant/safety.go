package refrigerant

// A SafetyGroup is the class that ANSI/ASHRAE Standard 34 gives a refrigerant
// for toxicity and for fire, section 6: A is of lower toxicity, B of higher;
// 1 shows no flame, 2L burns slowly, 2 burns, 3 burns readily. A blend is
// classed by the worst composition it can leak to.
//
// The groups of the roster are those of Standard 34-2022 with its addenda,
// tables 4-1 and 4-2, from memory. The unit's label and the code in force
// decide.
type SafetyGroup string

// The safety groups of Standard 34.
const (
	A1  SafetyGroup = "A1"
	A2L SafetyGroup = "A2L"
	A2  SafetyGroup = "A2"
	A3  SafetyGroup = "A3"
	B1  SafetyGroup = "B1"
	B2L SafetyGroup = "B2L"
	B2  SafetyGroup = "B2"
	B3  SafetyGroup = "B3"
	// Unclassified is a refrigerant to which the standard has given no group,
	// and every blend that is not one of its designations.
	Unclassified SafetyGroup = "unclassified"
)

// Flammable reports whether g is one of the groups that burn: 2L, 2 and 3.
// Unclassified is not known to be safe, and counts as flammable.
func (g SafetyGroup) Flammable() bool { return g != A1 && g != B1 }

// HigherToxicity reports whether g is in class B.
func (g SafetyGroup) HigherToxicity() bool { return g == B1 || g == B2L || g == B2 || g == B3 }

// SafetyGroup returns the group of r, Unclassified for a NewBlend.
func (r *Refrigerant) SafetyGroup() SafetyGroup {
	if r == nil || r.group == "" {
		return Unclassified
	}
	return r.group
}

// Flammable reports whether r can burn: its group is 2L, 2 or 3, or it has no
// group and holds something that can, or is not known at all. A2L burns slowly, and
// still burns: no open flame, leak detector on, ventilation, and tools rated for it.
func (r *Refrigerant) Flammable() bool {
	if g := r.SafetyGroup(); g != Unclassified {
		return g.Flammable()
	}
	for _, c := range r.components() {
		if pureFactOf(c.Designation).group.Flammable() {
			return true
		}
	}
	return len(r.components()) == 0
}
