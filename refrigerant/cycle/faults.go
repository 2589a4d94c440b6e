package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// Faults are what is wrong with a machine. The zero Faults is a sound one. Relative
// changes are fractions: −0.2 is 20 % less.
type Faults struct {
	// Charge is the relative change from the correct charge, −0.8 to 1.
	Charge float64 `json:"charge,omitzero"`
	// IndoorAirflow and OutdoorAirflow are relative changes of the flow of air, −0.95
	// to 1: a blocked filter, a slow fan, a matted coil.
	IndoorAirflow  float64 `json:"indoorAirflow,omitzero"`
	OutdoorAirflow float64 `json:"outdoorAirflow,omitzero"`
	// EvaporatorFouling and CondenserFouling are the share lost of the air side's
	// conductance at the same flow of air, 0 to 0.95: dirt that insulates.
	EvaporatorFouling float64 `json:"evaporatorFouling,omitzero"`
	CondenserFouling  float64 `json:"condenserFouling,omitzero"`
	// Recirculation is how much warmer the air enters the condenser than the outdoor
	// air is, 0 to 30 K.
	Recirculation quantity.TemperatureDelta `json:"recirculation,omitzero"`
	// LiquidRestriction and SuctionRestriction are the extra pressure drop that the
	// line would have at the rated flow of sound refrigerant: a clogged drier, a kink.
	LiquidRestriction  quantity.Pressure `json:"liquidRestriction,omitzero"`
	SuctionRestriction quantity.Pressure `json:"suctionRestriction,omitzero"`
	// CompressorLeak is the share of what the compressor sweeps that slips back
	// through its valves or scroll flanks, or through a reversing valve, 0 to 0.8.
	CompressorLeak float64 `json:"compressorLeak,omitzero"`
	// NonCondensables is the share left in of the air that the empty circuit holds at
	// 1 atm and 70 °F, 0 to 1.5: 1 is a circuit that was never evacuated.
	NonCondensables float64 `json:"nonCondensables,omitzero"`
	// MeteringSize is the relative change of the flow that the expansion device
	// passes, −0.95 to 2: the wrong piston, a clogged tube, an oversized valve.
	MeteringSize float64 `json:"meteringSize,omitzero"`
	// BulbOff is the share of the surrounding air's temperature that the bulb of a
	// valve feels: 0 tight and wrapped, 1 hanging in the air.
	BulbOff float64 `json:"bulbOff,omitzero"`
	// ValveSetting is added to the superheat that a valve is set for, −10 to 20 K.
	ValveSetting quantity.TemperatureDelta `json:"valveSetting,omitzero"`
	// ValveStuck holds a valve at ValveOpening, 0 to 1, whatever its bulb feels.
	ValveStuck   bool    `json:"valveStuck,omitzero"`
	ValveOpening float64 `json:"valveOpening,omitzero"`
}

func (f Faults) check() error {
	for _, c := range []struct {
		name         string
		v, low, high float64
	}{
		{"relative change of the charge", f.Charge, -0.8, 1},
		{"relative change of the indoor airflow", f.IndoorAirflow, -0.95, 1},
		{"relative change of the outdoor airflow", f.OutdoorAirflow, -0.95, 1},
		{"fouling of the evaporator", f.EvaporatorFouling, 0, 0.95},
		{"fouling of the condenser", f.CondenserFouling, 0, 0.95},
		{"leak of the compressor", f.CompressorLeak, 0, 0.8},
		{"non-condensables", f.NonCondensables, 0, 1.5},
		{"relative change of the metering device", f.MeteringSize, -0.95, 2},
		{"share of the surroundings that the bulb feels", f.BulbOff, 0, 1},
		{"opening of a stuck valve", f.ValveOpening, 0, 1},
	} {
		if err := limit.Within(
			c.name, quantity.Number(c.v), quantity.Number(c.low), quantity.Number(c.high),
			"a fraction: −0.2 is 20 % less",
		); err != nil {
			return err
		}
	}
	if err := limit.Within(
		"recirculation", f.Recirculation, 0, 30, "how much warmer than the outdoor air",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"change of the valve's setting", f.ValveSetting, -10, 20,
		"added to the superheat it is set for",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"liquid line restriction", f.LiquidRestriction, 0, quantity.Bar(60),
		"a pressure drop at rated flow",
	); err != nil {
		return err
	}
	return limit.Within(
		"suction line restriction", f.SuctionRestriction, 0, quantity.Bar(60),
		"a pressure drop at rated flow",
	)
}
