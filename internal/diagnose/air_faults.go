package diagnose

// Signatures of the air side.
const (
	LowIndoorAir  Code = "low-indoor-airflow"
	HighIndoorAir Code = "high-indoor-airflow"
	ReturnLeak    Code = "return-duct-leak"
	CondenserAir  Code = "condenser-heat-rejection"
)

var airFaults = []Fault{
	{
		Code: "filter", Name: "dirty filter", Kind: Air, Signature: LowIndoorAir, Share: 0.35,
		Physics:  "Less air brings less heat to the coil: it runs colder and drier inside, the split grows while the capacity falls.",
		Symptoms: "large split, low suction pressure, low superheat on a fixed restrictor; high static pressure; ice",
		Repair:   "see the filter and renew it if it is dirty; then see the indoor coil, the blower and the registers", Why: "airflow before charge: on low air every charging target is wrong",
		Sources: []Source{rossiBraun, breukerBraun, kim, acca},
	},
	{
		Code: "blower", Name: "blower slow, dirty or turning backwards", Kind: Air, Signature: LowIndoorAir, Share: 0.15,
		Physics:  "As a dirty filter, by the fan itself: a low speed tap, a loose belt, a failing capacitor, a loaded wheel.",
		Symptoms: "large split with a low static pressure",
		Repair:   "see the speed tap, capacitor, belt and wheel; set the airflow by the fan table", Why: "airflow before charge",
		Sources: []Source{acca, practice},
	},
	{
		Code: "indoor-coil", Name: "indoor coil dirty", Kind: Air, Signature: LowIndoorAir, Share: 0.2,
		Physics:  "Dirt on the coil hinders the air and the heat.",
		Symptoms: "large pressure drop across the coil, large split",
		Repair:   "see the indoor coil from the side where the air enters; clean it and its drain pan where they are dirty", Why: "airflow before charge",
		Sources: []Source{rossiBraun, breukerBraun, kim},
	},
	{
		Code: "iced-coil", Name: "ice on the indoor coil", Kind: Air, Signature: LowIndoorAir, Share: 0.1,
		Physics:  "Ice hinders the air, which makes the coil colder still. It follows from low air, low charge, low load or a cold night, and reads as low air whatever began it.",
		Symptoms: "frost on the coil and the suction line, hardly any air at the registers",
		Repair:   "stop the compressor, run the blower until the ice is gone and the coil is dry, then measure anew", Why: "no reading on an iced coil tells what began it",
		Sources: []Source{practice},
	},
	{
		Code: "ducts", Name: "closed dampers or too little duct or return", Kind: Air, Signature: LowIndoorAir, Share: 0.2,
		Physics:  "The duct system passes less than the blower would move.",
		Symptoms: "high static pressure with a clean filter and coil, closed registers, a return grille too small",
		Repair:   "open dampers and registers; measure the static pressure; add return where it is over the limit of the blower", Why: "airflow before charge",
		Sources: []Source{acca, practice},
	},
	{
		Code: HighIndoorAir, Name: "too much indoor air", Kind: Air, Signature: HighIndoorAir, Share: 1,
		Physics:  "More air keeps the coil warm: it dries the air little.",
		Symptoms: "small split, humid rooms, suction pressure and superheat high, noise, water carried off the coil",
		Repair:   "measure the airflow; lower the blower speed by the fan table where it is above what the unit is made for", Why: "airflow before charge",
		Sources: []Source{acca, practice},
	},
	{
		Code: ReturnLeak, Name: "hot air leaking into the return duct", Kind: Air, Signature: ReturnLeak, Share: 1,
		Physics:  "Attic or outdoor air joins the return past the point where it was read: the coil gets hotter, more humid air than the reading says.",
		Symptoms: "small split from grille to supply, suction pressure and superheat high for the return reading",
		Repair:   "read the air at the coil inlet; seal the return if it is warmer there than at the grille", Why: "charging by a return reading that the coil does not see goes wrong",
		Sources: []Source{acca, practice},
	},
	{
		Code: "condenser-coil", Name: "dirty or blocked outdoor coil", Kind: Air, Signature: CondenserAir, Share: 0.62,
		Physics:  "Less outdoor air, or a coat of dirt, needs a larger temperature difference to reject the heat.",
		Symptoms: "high condensing pressure with a low subcooling, large rise of the outdoor air, hot discharge, high power",
		Repair:   "see that the outdoor fan runs as it should, and the coil through its depth; clean the coil if it is dirty, clear its surroundings, let it dry, measure anew", Why: "clean before measuring the charge",
		Sources: []Source{rossiBraun, breukerBraun, kim},
	},
	{
		Code: fanDead, Name: "outdoor fan not turning", Kind: Air, Signature: CondenserAir, Variant: string(fanDead), Share: 0.08,
		Physics:  "Without its fan the outdoor coil rejects what still air takes: the head rises until a control or the compressor stops.",
		Symptoms: "a condensing temperature over the outdoor air that no dirt makes, rising; no air felt at the top",
		Repair:   "stop the compressor; see the fan's capacitor, motor, contactor and blade, then the coil", Why: "at such a head nothing else can be judged, and the compressor is in danger",
		Sources: []Source{practice},
	},
	{
		Code: "condenser-fan", Name: "outdoor fan slow or turning backwards", Kind: Air, Signature: CondenserAir, Share: 0.2,
		Physics:  "The fan moves less air over a clean coil.",
		Symptoms: "as a blocked coil, with a clean coil; little air felt at the top",
		Repair:   "see the fan's capacitor, motor, direction and blade", Why: "heat rejection before charge",
		Sources: []Source{kim, practice},
	},
	{
		Code: "condenser-recirculation", Name: "outdoor unit breathing its own air", Kind: Air, Signature: CondenserAir, Variant: "condenser-recirculation", Share: 0.18,
		Physics:  "Discharge air returns to the coil: it sees warmer air than the thermometer in the shade.",
		Symptoms: "high condensing pressure over the outdoor air, normal subcooling, normal rise counted from the air at the coil",
		Repair:   "measure the air at the face of the coil; clear decks, walls and plants, or move the unit", Why: "heat rejection before charge",
		Sources: []Source{practice},
	},
}

// Circumstances: the machine is sound, and the day or the use is not ordinary.
const (
	LowLoad    Code = "low-load"
	LowAmbient Code = "low-ambient"
	Economizer Code = "economizer-open"
	NoTrap     Code = "missing-trap"
)

var circumstances = []Fault{
	{
		Code: LowLoad, Name: "low load or a low set-point", Kind: Circumstance, Signature: LowLoad, Share: 1,
		Physics:  "Cool or dry return air has little heat to give: the coil runs cold, below freezing in the end, with every part sound.",
		Symptoms: "return wet bulb low, low suction pressure, a target superheat near or below {5 °F}",
		Repair:   "raise the set-point and let the space warm up before judging the charge; a freeze thermostat stops the coil from icing", Why: "no method charges right at a low load",
		Sources: []Source{practice},
	},
	{
		Code: LowAmbient, Name: "cool weather without head-pressure control", Kind: Circumstance, Signature: LowAmbient, Share: 1,
		Physics:  "Cool outdoor air lowers the condensing pressure and so the pressure that drives the metering device: the coil starves and freezes.",
		Symptoms: "low condensing and suction pressure on a cool day or night",
		Repair:   "fit fan cycling or another head-pressure control if it must cool in such weather; judge the charge on a warm day or weigh it in", Why: "no method charges right in cool weather",
		Sources: []Source{practice},
	},
	{
		Code: Economizer, Name: "economizer open", Kind: Circumstance, Signature: Economizer, Share: 1,
		Physics:  "Outdoor air joins the return: the coil does not see the return that was read.",
		Symptoms: "return readings that do not match the split",
		Repair:   "close the economizer while measuring; see its damper and its control", Why: "conditions before measuring",
		Sources: []Source{practice},
	},
	{
		Code: NoTrap, Name: "condensate trap missing or dry", Kind: Circumstance, Signature: NoTrap, Share: 1,
		Physics:  "On a drain at negative pressure air is drawn in through the pipe and holds the water back until it blows off the pan. The circuit reads as sound.",
		Symptoms: "water below the unit, air whistling in the drain, a full pan",
		Repair:   "see the condensate drain; where it has no trap, fit one as deep as the unit's instructions say, and prime it", Why: "without a trap air holds the water back; the refrigerant has no part in it",
		Sources: []Source{practice},
	},
}
