package refrigerant

import (
	"errors"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A RoomRule is what bounds the charge that a room may have of a flammable refrigerant.
type RoomRule string

// The rules of IEC 60335-2-40, clause GG.
const (
	// AnyRoom: so small a charge is not bound to an area.
	AnyRoom RoomRule = "any-room"
	// ByArea: the area of the floor bounds it.
	ByArea RoomRule = "by-area"
	// ByMeasures: so large a charge takes measures besides area (detection, circulation or
	// ventilation, shut-off valves), which the unit's instructions state.
	ByMeasures RoomRule = "by-measures"
)

// A RoomLimit is the charge of a flammable refrigerant against the floor of a room.
type RoomLimit struct {
	Rule RoomRule `json:"rule"`
	// Most is the charge that the circuit may have, and Floor the area that goes with it:
	// one of the two was asked for, the other is the answer. With AnyRoom, Most is the
	// charge up to which no area is asked for and Floor is zero; with ByMeasures, Most is
	// the largest that area alone allows.
	Most  quantity.Mass     `json:"most"`
	Floor quantity.Area     `json:"floor"`
	Limit FlammabilityLimit `json:"limit"`
	// Source of the rule.
	Source string `json:"source"`
}

const roomSource = "IEC 60335-2-40:2018, clause GG.2, as manufacturers' instructions reprint it; " +
	"a unit with detection and circulation of its own may take more, " +
	"and its instructions come first"

// ErrRoomToxic is returned for a refrigerant of class B, which the standard does not cover:
// its toxicity bounds the charge before fire does.
var ErrRoomToxic = errors.New(
	"a refrigerant of higher toxicity is not bound by a fire rule: " +
		"see ASHRAE 15 or ISO 5149 for what a room may have of it",
)

// Release heights of IEC 60335-2-40, for the places where an indoor unit hangs. The lowest
// opening that leaks to the room decides, and never counts as less than that of the floor.
const (
	OnFloor  quantity.Length = 0.6
	AtWindow quantity.Length = 1.0
	OnWall   quantity.Length = 1.8
	AtTop    quantity.Length = 2.2 // ceiling, or a register there
)

// A roomScale holds the charges, in m³ of air at the flammability limit, between which the
// area of a room bounds a charge. Group 2L may have more than what burns readily.
type roomScale struct{ any, most float64 }

func (r *Refrigerant) roomScale() roomScale {
	if g := r.SafetyGroup(); g == A2L || g == B2L {
		return roomScale{6, 52}
	}
	return roomScale{4, 26}
}

// RoomCharge returns the most of r that a circuit may hold whose indoor part stands in
// a closed room with the given floor and leaks at the given height above it, without
// ventilation, detector or shut-off valves: the larger of m₁ and
//
//	m = min(2.5·LFL^(5/4)·h·√A, 0.75·LFL·h·A)
//
// in kg, kg/m³, m and m², and no more than m₂: IEC 60335-2-40, clause GG.2. For group 2L
// m₁ is 6 and m₂ 52 times the limit, for what burns readily 4 and 26. Rooms joined by
// openings that the standard accepts, and ducts that serve several, count together as the
// unit's instructions say.
//
// Errors are those of FlammabilityLimit, ErrRoomToxic and *RangeError.
func (r *Refrigerant) RoomCharge(floor quantity.Area, height quantity.Length) (RoomLimit, error) {
	const largest = quantity.Area(1e4)
	limit, h, err := r.room(height)
	if err != nil {
		return RoomLimit{}, err
	}
	if !(floor > 0 && floor <= largest) {
		return RoomLimit{}, &RangeError{
			Quantity: "floor of the room",
			Value:    floor,
			Max:      largest,
			Advice: "it is above zero: give the area of the smallest closed room that the " +
				"machine serves or stands in",
		}
	}
	l, a, scale := float64(limit.Density), float64(floor), r.roomScale()
	out := RoomLimit{Rule: ByArea, Floor: floor, Limit: limit, Source: roomSource}
	byArea := boundByArea(l, h, a)
	switch {
	case byArea <= scale.any*l:
		out.Rule, out.Most = AnyRoom, quantity.Mass(scale.any*l)
		out.Floor = 0
	case byArea > scale.most*l:
		out.Rule, out.Most = ByMeasures, quantity.Mass(scale.most*l)
	default:
		out.Most = quantity.Mass(byArea)
	}
	return out, nil
}

// RoomFloor returns the least floor of a closed room for a circuit that holds charge, by
// the same rule as RoomCharge. A charge that the rule bounds by no area has a floor of
// zero; one that needs more than area has the floor of the largest that area alone allows,
// and the rule ByMeasures. Errors are those of RoomCharge.
func (r *Refrigerant) RoomFloor(charge quantity.Mass, height quantity.Length) (RoomLimit, error) {
	const largest = quantity.Mass(1000)
	limit, h, err := r.room(height)
	if err != nil {
		return RoomLimit{}, err
	}
	if !(charge > 0 && charge <= largest) {
		return RoomLimit{}, &RangeError{
			Quantity: "charge of the circuit",
			Value:    charge,
			Max:      largest,
			Advice:   "it is above zero: the label's charge and what was added for the line set",
		}
	}
	l, m, scale := float64(limit.Density), float64(charge), r.roomScale()
	out := RoomLimit{Rule: ByArea, Most: charge, Limit: limit, Source: roomSource}
	switch {
	case m <= scale.any*l:
		out.Rule, out.Most = AnyRoom, quantity.Mass(scale.any*l)
		return out, nil
	case m > scale.most*l:
		m = scale.most * l
		out.Rule, out.Most = ByMeasures, quantity.Mass(m)
	}
	out.Floor = quantity.Area(floorFor(l, h, m))
	return out, nil
}

// boundByArea is the charge in kg for a limit in kg/m³, a height in m and a floor in m².
func boundByArea(limit, height, floor float64) float64 {
	return min(2.5*math.Pow(limit, 1.25)*height*math.Sqrt(floor), 0.75*limit*height*floor)
}

// floorFor is the inverse of boundByArea.
func floorFor(limit, height, charge float64) float64 {
	root := charge / (2.5 * math.Pow(limit, 1.25) * height)
	return max(root*root, charge/(0.75*limit*height))
}

// room returns the limit of r and the height that counts.
func (r *Refrigerant) room(height quantity.Length) (FlammabilityLimit, float64, error) {
	const highest = quantity.Length(2.2)
	limit, err := r.FlammabilityLimit()
	if err != nil {
		return FlammabilityLimit{}, 0, err
	}
	if r.SafetyGroup().HigherToxicity() {
		return FlammabilityLimit{}, 0, ErrRoomToxic
	}
	if !(height >= 0 && height <= 20) {
		return FlammabilityLimit{}, 0, &RangeError{
			Quantity: "height of release above the floor",
			Value:    height,
			Min:      quantity.Length(0),
			Max:      quantity.Length(20),
			Advice:   "give that of the lowest opening that leaks to the room",
		}
	}
	return limit, float64(min(max(height, OnFloor), highest)), nil
}

// Fact is the limit as a fact, "room.by-area", with the charge and the floor.
func (l RoomLimit) Fact() fact.Fact {
	f := fact.New(fact.Code("room."+string(l.Rule)), fact.Amount("most", l.Most))
	if l.Rule == AnyRoom || l.Rule == ByMeasures {
		return f
	}
	return f.With(fact.Amount("floor", l.Floor))
}
