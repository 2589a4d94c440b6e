package diagnose

import (
	"github.com/satline/satline/quantity/fact"
)

// Signatures of instruments.
const (
	SuctionClamp      Code = "suction-clamp"
	LiquidClamp       Code = "liquid-clamp"
	DischargeClamp    Code = "discharge-clamp"
	SuctionGauge      Code = "suction-gauge-zero"
	LiquidGauge       Code = "liquid-gauge-zero"
	SuctionHose       Code = "suction-hose"
	LiquidHose        Code = "liquid-hose"
	Altitude          Code = "altitude-not-set"
	DryWick           Code = "dry-wick"
	BulbsSwapped      Code = "bulbs-swapped"
	HosesSwapped      Code = "hoses-swapped"
	ClampsSwapped     Code = "clamps-swapped"
	AirSensorsSwapped Code = "air-sensors-swapped"
	SunOnSensor       Code = "outdoor-sensor-in-sun"
	OutdoorSensor     Code = "outdoor-sensor"
	SupplySensor      Code = "supply-sensor"
	readingsClash     Code = "readings-contradict"
)

var instrumentTraits = []traits{
	{code: SuctionClamp, prior: 0.012, cost: ofInstrument},
	{code: LiquidClamp, prior: 0.01, cost: ofInstrument},
	{code: DischargeClamp, prior: 0.01, cost: ofInstrument},
	{code: SuctionGauge, prior: 0.008, size: asPressure, cost: ofInstrument},
	{code: LiquidGauge, prior: 0.008, size: asPressure, cost: ofInstrument},
	{code: SuctionHose, prior: 0.004, cost: ofInstrument},
	{code: LiquidHose, prior: 0.004, cost: ofInstrument},
	{code: Altitude, prior: 0.003, cost: ofInstrument},
	{code: DryWick, prior: 0.012, cost: ofInstrument},
	{code: BulbsSwapped, prior: 0.003, cost: ofInstrument},
	{code: HosesSwapped, prior: 0.003, cost: ofInstrument},
	{code: ClampsSwapped, prior: 0.003, cost: ofInstrument},
	{code: AirSensorsSwapped, prior: 0.003, cost: ofInstrument},
	{code: SunOnSensor, prior: 0.01, size: asDelta, cost: ofInstrument},
	{code: OutdoorSensor, prior: 0.001, cost: ofInstrument},
	{code: SupplySensor, prior: 0.01, size: asDelta, cost: ofInstrument},
}

// clashTraits are of readings that no cause makes.
var clashTraits = traits{code: readingsClash, prior: 0.003, cost: ofInstrument}

// ofSaturation are the dangers that are worked out from saturation temperatures.
var ofSaturation = []string{
	"floodback", "superheat-low", "slugging", "evaporating-coldest", "evaporating-cold",
	"discharge-cool", "condensing-highest", "condensing-high",
}

// ofSuction are those of them that a suction pressure makes.
var ofSuction = []string{
	"floodback", "superheat-low", "evaporating-coldest", "evaporating-cold",
	"compression-ratio-highest", "compression-ratio-high",
}

var instrumentFaults = []Fault{
	// suction line clamp loose, uninsulated or on the wrong pipe: a clamp in poor contact
	// reads between the pipe and the air around it: the superheat comes out too high.
	{
		Code: SuctionClamp, Kind: Instrument, Signature: SuctionClamp, Share: 1,
		Readings: []string{"suctionLine"},
		Seems:    []string{"floodback", "superheat-low"},
		Sources:  []fact.Source{practice},
	},
	// liquid line clamp loose, uninsulated or on the wrong pipe: a clamp in poor contact reads
	// between the pipe and the outdoor air, which is colder: the subcooling comes out too high.
	// In the sun, or beside the compressor and its hot line, it reads too warm.
	{
		Code: LiquidClamp, Kind: Instrument, Signature: LiquidClamp, Share: 1,
		Readings: []string{"liquidLine"},
		Sources:  []fact.Source{practice},
	},
	// discharge line clamp loose or uninsulated: it reads between the pipe and the outdoor air,
	// which is colder; or another figure was written down.
	{
		Code: DischargeClamp, Kind: Instrument, Signature: DischargeClamp, Share: 1,
		Readings: []string{"dischargeLine"},
		Seems:    []string{"discharge-cool", "discharge-hottest", "discharge-hot"},
		Sources:  []fact.Source{practice},
	},
	// suction gauge off zero: every pressure is off by the same amount, and the saturation
	// temperature with it.
	{
		Code: SuctionGauge, Kind: Instrument, Signature: SuctionGauge, Share: 1,
		Readings: []string{"suctionPressure"},
		Seems:    ofSuction,
		Sources:  []fact.Source{practice},
	},
	// high-side gauge off zero: every pressure is off by the same amount, and the saturation
	// temperature with it.
	{
		Code: LiquidGauge, Kind: Instrument, Signature: LiquidGauge, Share: 1,
		Readings: []string{"liquidPressure"},
		Seems:    []string{"discharge-cool", "condensing-highest", "condensing-high"},
		Sources:  []fact.Source{practice},
	},
	// suction hose shut, its core not pressed, or its gauge dead: what it shows is not the
	// pressure of the port.
	{
		Code: SuctionHose, Kind: Instrument, Signature: SuctionHose, Share: 1,
		Readings: []string{"suctionPressure"},
		Seems:    ofSuction,
		Sources:  []fact.Source{practice},
	},
	// high-side hose shut, its core not pressed, or its gauge dead.
	{
		Code: LiquidHose, Kind: Instrument, Signature: LiquidHose, Share: 1,
		Readings: []string{"liquidPressure"},
		Seems:    []string{"discharge-cool", "condensing-highest", "condensing-high"},
		Sources:  []fact.Source{practice},
	},
	// altitude not set: a gauge counts from the atmosphere around it, which falls by about 3.5
	// % for each 1000 ft; a saturation temperature computed from sea level is too high.
	{
		Code: Altitude, Kind: Instrument, Signature: Altitude, Share: 1,
		Readings: []string{"suctionPressure", "liquidPressure"},
		Sources: []fact.Source{
			{Title: "U.S. Standard Atmosphere, 1976", Standing: fact.Published}, practice,
		},
	},
	// wet bulb read with a dry or warm wick: a wick that is dry, dirty or in still air reads
	// between wet and dry bulb, and the target superheat with it is too high.
	{
		Code: DryWick, Kind: Instrument, Signature: DryWick, Share: 1,
		Readings: []string{"returnWetBulb"},
		Sources:  []fact.Source{practice},
	},
	// wet bulb and dry bulb swapped: the wet bulb is never above the dry bulb.
	{
		Code: BulbsSwapped, Kind: Instrument, Signature: BulbsSwapped, Share: 1,
		Readings: []string{"returnDryBulb", "returnWetBulb"},
		Sources:  []fact.Source{practice},
	},
	// high and low hose swapped: a running compressor makes the high side higher.
	{
		Code: HosesSwapped, Kind: Instrument, Signature: HosesSwapped, Share: 1,
		Readings: []string{"suctionPressure", "liquidPressure"},
		Seems:    ofSaturation,
		Sources:  []fact.Source{practice},
	},
	// the machine is heating: with the reversing valve over, the indoor coil condenses and the
	// outdoor coil boils: read as cooling, nothing fits.
	{
		Code: Heating, Kind: Instrument, Signature: Heating, Share: 1, HeatPump: true,
		Sources: []fact.Source{practice},
	},
	// suction and liquid line clamps exchanged: each clamp reads the other pipe: superheat and
	// subcooling come out tens of degrees too high, together.
	{
		Code: ClampsSwapped, Kind: Instrument, Signature: ClampsSwapped, Share: 1,
		Readings: []string{"suctionLine", "liquidLine"},
		Seems:    []string{"floodback", "superheat-low"},
		Sources:  []fact.Source{practice},
	},
	// return and outdoor thermometers exchanged: the return is taken for the outdoor air and
	// the outdoor air for the return.
	{
		Code: AirSensorsSwapped, Kind: Instrument, Signature: AirSensorsSwapped, Share: 1,
		Readings: []string{"returnDryBulb", "outdoorDryBulb"},
		Seems:    []string{"condensing-high"},
		Sources:  []fact.Source{practice},
	},
	// outdoor thermometer in the sun or in discharge air: radiation warms a bare sensor by 5
	// °F to 20 °F above the air.
	{
		Code: SunOnSensor, Kind: Instrument, Signature: SunOnSensor, Share: 1,
		Readings: []string{"outdoorDryBulb"},
		Sources:  []fact.Source{practice},
	},
	// outdoor thermometer off, another unit or figure written down, or the air of another day.
	{
		Code: OutdoorSensor, Kind: Instrument, Signature: OutdoorSensor, Share: 1,
		Readings: []string{"outdoorDryBulb"},
		Seems:    []string{"condensing-highest", "condensing-high"},
		Sources:  []fact.Source{practice},
	},
	// supply thermometer wet, seeing the coil, or far down the duct: a wet sensor or one in
	// sight of the coil reads too cold; one past warm ducts too warm.
	{
		Code: SupplySensor, Kind: Instrument, Signature: SupplySensor, Share: 1,
		Readings: []string{"supplyDryBulb"},
		Sources:  []fact.Source{practice},
	},
	// the readings contradict each other: no cause, and no two causes, give these readings
	// together: one of them at least is not what it is taken for.
	{
		Code: readingsClash, Kind: Instrument, Signature: readingsClash, Share: 1,
		Sources: []fact.Source{practice},
	},
}
