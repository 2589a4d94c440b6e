package diagnose

// Signatures of instruments.
const (
	SuctionClamp      Code = "suction-clamp"
	LiquidClamp       Code = "liquid-clamp"
	SuctionGauge      Code = "suction-gauge-zero"
	LiquidGauge       Code = "liquid-gauge-zero"
	Altitude          Code = "altitude-not-set"
	DryWick           Code = "dry-wick"
	BulbsSwapped      Code = "bulbs-swapped"
	HosesSwapped      Code = "hoses-swapped"
	ClampsSwapped     Code = "clamps-swapped"
	AirSensorsSwapped Code = "air-sensors-swapped"
	SunOnSensor       Code = "outdoor-sensor-in-sun"
	SupplySensor      Code = "supply-sensor"
	readingsClash     Code = "readings-contradict"
)

var instrumentFaults = []Fault{
	{
		Code: SuctionClamp, Name: "suction line clamp loose, uninsulated or on the wrong pipe", Kind: Instrument, Signature: SuctionClamp, Share: 1,
		Physics:  "A clamp in poor contact reads between the pipe and the air around it: the superheat comes out too high.",
		Symptoms: "a high superheat that nothing else bears out",
		Repair:   "clean the pipe, fit and insulate the clamp, wait until it is steady", Why: "a loose clamp reads toward the air around it, and the superheat is off by as much",
		Sources: []Source{practice},
	},
	{
		Code: LiquidClamp, Name: "liquid line clamp loose, uninsulated or on the wrong pipe", Kind: Instrument, Signature: LiquidClamp, Share: 1,
		Physics:  "A clamp in poor contact reads between the pipe and the outdoor air, which is colder: the subcooling comes out too high.",
		Symptoms: "a high subcooling at an ordinary condensing pressure, liquid line close to the outdoor air",
		Repair:   "clean the pipe, fit and insulate the clamp at the condenser outlet", Why: "a loose clamp reads toward the outdoor air, and the subcooling is off by as much",
		Sources: []Source{practice},
	},
	{
		Code: SuctionGauge, Name: "suction gauge off zero", Kind: Instrument, Signature: SuctionGauge, Share: 1,
		Physics:  "Every pressure is off by the same amount, and the saturation temperature with it.",
		Symptoms: "evaporating temperature and superheat off in opposite senses by the same amount",
		Repair:   "take the gauge off its port, zero it open to the air, read again", Why: "a gauge off zero is off by as much at every pressure, and the superheat with it",
		Sources: []Source{practice},
	},
	{
		Code: LiquidGauge, Name: "high-side gauge off zero", Kind: Instrument, Signature: LiquidGauge, Share: 1,
		Physics:  "Every pressure is off by the same amount, and the saturation temperature with it.",
		Symptoms: "condensing temperature and subcooling off in the same sense by the same amount",
		Repair:   "take the gauge off its port, zero it open to the air, read again", Why: "a gauge off zero is off by as much at every pressure, and the subcooling with it",
		Sources: []Source{practice},
	},
	{
		Code: Altitude, Name: "altitude not set", Kind: Instrument, Signature: Altitude, Share: 1,
		Physics:  "A gauge counts from the atmosphere around it, which falls by about 3.5 % for each {1000 ft}; a saturation temperature computed from sea level is too high.",
		Symptoms: "both saturation temperatures too high, the low one by more; superheat too low; and, since the fans move less of the thin air, both coils as if short of air",
		Repair:   "state the elevation of the site or read a barometer there", Why: "a gauge counts from the atmosphere around it",
		Sources: []Source{{Cite: "U.S. Standard Atmosphere, 1976"}, practice},
	},
	{
		Code: DryWick, Name: "wet bulb read with a dry or warm wick", Kind: Instrument, Signature: DryWick, Share: 1,
		Physics:  "A wick that is dry, dirty or in still air reads between wet and dry bulb, and the target superheat with it is too high.",
		Symptoms: "a humid return that the split and the suction pressure do not bear out",
		Repair:   "wet a clean wick, give it moving air for two minutes, read again", Why: "{1 °F} of wet bulb moves the target superheat by {1.5 °F}",
		Sources: []Source{practice},
	},
	{
		Code: BulbsSwapped, Name: "wet bulb and dry bulb swapped", Kind: Instrument, Signature: BulbsSwapped, Share: 1,
		Physics:  "The wet bulb is never above the dry bulb.",
		Symptoms: "wet bulb above dry bulb",
		Repair:   "swap the two readings back, and read both again", Why: "a wet bulb is never above its dry bulb",
		Sources: []Source{practice},
	},
	{
		Code: HosesSwapped, Name: "high and low hose swapped", Kind: Instrument, Signature: HosesSwapped, Share: 1,
		Physics:  "A running compressor makes the high side higher.",
		Symptoms: "suction pressure above liquid pressure",
		Repair:   "see which hose is on which port, and that none is on the discharge port in place of another: the suction line is the larger, cold pipe", Why: "a running compressor makes the high side higher",
		Sources: []Source{practice},
	},
	{
		Code: Heating, Name: "the machine is heating", Kind: Instrument, Signature: Heating, Share: 1, HeatPump: true,
		Physics:  "With the reversing valve over, the indoor coil condenses and the outdoor coil boils: read as cooling, nothing fits.",
		Symptoms: "supply air warmer than the return, an evaporating temperature below the outdoor air, a condensing temperature far over it",
		Repair:   "say that it heats, and judge it as a machine that does; or set the thermostat to cooling and wait", Why: "in heating no reading means what it does in cooling",
		Sources: []Source{practice},
	},
	{
		Code: ClampsSwapped, Name: "suction and liquid line clamps exchanged", Kind: Instrument, Signature: ClampsSwapped, Share: 1,
		Physics:  "Each clamp reads the other pipe: superheat and subcooling come out tens of degrees too high, together.",
		Symptoms: "a suction line far warmer than the liquid line",
		Repair:   "see which clamp is on which pipe: the suction line is the larger, insulated, cold one", Why: "superheat and subcooling are both of the other pipe",
		Sources: []Source{practice},
	},
	{
		Code: AirSensorsSwapped, Name: "return and outdoor thermometers exchanged", Kind: Instrument, Signature: AirSensorsSwapped, Share: 1,
		Physics:  "The return is taken for the outdoor air and the outdoor air for the return.",
		Symptoms: "a split that no coil makes, a condensing temperature too far over, or too close to, the outdoor reading",
		Repair:   "see which thermometer hangs where, and put the two readings right", Why: "every target rests on these two",
		Sources: []Source{practice},
	},
	{
		Code: SunOnSensor, Name: "outdoor thermometer in the sun or in discharge air", Kind: Instrument, Signature: SunOnSensor, Share: 1,
		Physics:  "Radiation warms a bare sensor by {5 °F} to {20 °F} above the air.",
		Symptoms: "condensing temperature and liquid line close to, or below, the outdoor reading",
		Repair:   "shade the sensor at the coil inlet, read again", Why: "the sun warms a bare sensor by {5 °F} to {20 °F}",
		Sources: []Source{practice},
	},
	{
		Code: SupplySensor, Name: "supply thermometer wet, seeing the coil, or far down the duct", Kind: Instrument, Signature: SupplySensor, Share: 1,
		Physics:  "A wet sensor or one in sight of the coil reads too cold; one past warm ducts too warm.",
		Symptoms: "a split that neither the suction pressure nor the superheat bears out",
		Repair:   "read with a dry sensor out of sight of the coil, several points across the duct", Why: "a wet sensor, or one that sees the coil, reads cold",
		Sources: []Source{practice},
	},
	{
		Code: readingsClash, Name: "the readings contradict each other", Kind: Instrument, Signature: readingsClash, Share: 1,
		Physics:  "No cause, and no two causes, give these readings together: one of them at least is not what it is taken for.",
		Symptoms: "readings that are each possible and together are not",
		Repair:   "take all readings again, with the instruments compared among themselves", Why: "no cause, and no two causes, give these readings together",
		Sources: []Source{practice},
	},
}
