package psychro

import (
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/quantity"
)

// SupplyAir returns the air at a supply dry bulb that keeps a room at a state
// while the room gives off heat and water vapor, what happens to it on its way
// to the room's state, and the flow of dry air that it takes. The vapor brings
// its own enthalpy, about 2.56 MJ/kg from people, which is not in heat.
//
// All supply states that hold the room lie on one line through its state, whose
// slope is (heat + water·enthalpy)/water. It is a *RangeError where the line does
// not reach the dry bulb between dry and saturated air.
func SupplyAir(
	room Air, dryBulb quantity.Temperature, heat quantity.Power, water quantity.MassFlow,
	vapor quantity.SpecificEnthalpy,
) (Process, quantity.MassFlow, error) {
	if err := room.check("room air"); err != nil {
		return Process{}, 0, err
	}
	if err := checkTemperature("supply dry bulb", float64(dryBulb)); err != nil {
		return Process{}, 0, err
	}
	if !(heat > 0 && heat < 1e12) {
		return Process{}, 0, &RangeError{
			Quantity: "heat of the room",
			Value:    heat,
			Min:      quantity.Power(0),
			Advice:   "a room that gives off no heat needs no cool supply air",
		}
	}
	if !(water >= 0 && water < 1e9) {
		return Process{}, 0, &RangeError{
			Quantity: "water of the room",
			Value:    water,
			Min:      quantity.MassFlow(0),
			Advice:   "it is the vapor that people and things in the room give off",
		}
	}
	if most := quantity.KilojoulesPerKilogram(5000); !(vapor >= -most && vapor <= most) {
		return Process{}, 0, &RangeError{
			Quantity: "enthalpy of the vapor",
			Value:    vapor,
			Min:      -most,
			Max:      most,
			Advice:   "it is about 2560 kJ/kg for vapor from people",
		}
	}
	if !(float64(dryBulb) < room.t) {
		return Process{}, 0, &RangeError{
			Quantity: "supply dry bulb",
			Value:    dryBulb,
			Max:      room.DryBulb(),
			Advice:   "air as warm as the room takes no heat from it",
		}
	}
	m, p, t := room.model, room.p, float64(dryBulb)
	total := float64(heat) + float64(water)*float64(vapor)
	h2 := float64(room.Enthalpy())
	// The wetter the supply, the less water it can take up on its way.
	short := func(w float64) float64 {
		return float64(water)*(h2-m.enthalpy(t, w, p)) - total*(room.w-w)
	}
	most, ok := m.saturationHumidityRatio(t, p)
	if !ok || most > room.w {
		most = room.w
	}
	if short(0) > 0 || short(most) < 0 {
		return Process{}, 0, &RangeError{
			Quantity: "supply dry bulb",
			Value:    dryBulb,
			Max:      room.DryBulb(),
			Advice: "no air of that temperature takes up heat and water in this proportion; " +
				"supply it warmer or cooler, or dry it further and reheat",
		}
	}
	w := root.Rising(short, 0, most)
	supply, err := m.at(t, w, p)
	if err != nil {
		return Process{}, 0, err
	}
	flow := total / (h2 - float64(supply.Enthalpy()))
	if !(flow < 1e9) {
		return Process{}, 0, &RangeError{
			Quantity: "supply dry bulb",
			Value:    dryBulb,
			Max:      room.DryBulb(),
			Advice:   "air as warm as the room takes no heat from it",
		}
	}
	return Process{
		Start: supply, End: room, Water: room.w - w, WaterEnthalpy: vapor,
		Heat: quantity.SpecificEnthalpy(h2) - supply.Enthalpy() -
			quantity.SpecificEnthalpy(room.w-w)*vapor,
	}, quantity.MassFlow(flow), nil
}
