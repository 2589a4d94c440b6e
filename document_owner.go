package satline

// ownerBlocks says what was found in words that need no training.
func (a Assessment) ownerBlocks(d *document) {
	found := block{heading: "What was found", paragraphs: []string{ownerFound[a.Charge.Outcome]}}
	for _, f := range a.Findings {
		if f.Probability >= 0.25 {
			found.items = append(found.items, item{text: "Likely cause: " + f.Cause})
		}
	}
	if len(a.Doubts) > 0 {
		found.paragraphs = append(found.paragraphs, "Some measurements did not agree with each other and are to be taken again before anything is decided.")
	}
	if a.Freeze != nil && a.Freeze.Chance > 0.5 {
		found.paragraphs = append(found.paragraphs, "The indoor coil is cold enough to collect ice as the machine runs now. A clean filter, open supply and return grilles and a higher setting of the thermostat help.")
	}
	d.blocks = append(d.blocks, found)
	if len(a.Risks) > 0 {
		danger := block{heading: "Please note", paragraphs: []string{"The compressor, the costliest part of the machine, is at risk as it runs now:"}}
		for _, r := range a.Risks {
			danger.items = append(danger.items, item{text: r.Why})
		}
		d.blocks = append(d.blocks, danger)
	}
	next := block{heading: "What comes next", paragraphs: []string{ownerNext[a.Charge.Outcome]}}
	if a.Air != nil && a.Air.Do != "" {
		next.paragraphs = append([]string{"First the air: filter, coil, blower and ducts are looked at, because too little air looks like a fault of the refrigerant."}, next.paragraphs...)
	}
	d.blocks = append(d.blocks, next)
}

// ownerCautions are for a person who does not work on the machine.
func (a Assessment) ownerCautions() []string {
	out := []string{"Work on the refrigerant circuit and on the wiring is for licensed technicians. The machine's label and its maker's instructions outrank this report."}
	if a.Refrigerant.Flammable {
		out = append(out, "The refrigerant of this machine, "+a.Refrigerant.Designation+", can burn. If it leaks, keep flames and sparks away, open windows and leave the room.")
	}
	return out
}

var ownerFound = map[ChargeOutcome]string{
	ChargeInBand:      "The amount of refrigerant in the machine is right.",
	ChargeLow:         "The machine appears to have too little refrigerant. Refrigerant is not used up: if some is missing, it has leaked or was never put in.",
	ChargeHigh:        "The machine appears to have too much refrigerant. That costs electricity and can harm the compressor.",
	ChargeCannotTell:  "Whether the amount of refrigerant is right could not be told with certainty from the instruments at hand.",
	ChargeNotNow:      "The amount of refrigerant could not be judged under today's conditions.",
	ChargeNotMeasured: "The amount of refrigerant was not measured.",
}

var ownerNext = map[ChargeOutcome]string{
	ChargeInBand:      "Nothing has to be done about the refrigerant.",
	ChargeLow:         "The leak is to be found and mended before refrigerant is added; then a little is added at a time, and the machine measured again after each.",
	ChargeHigh:        "A little refrigerant is taken out at a time, into a cylinder and not into the air, and the machine measured again after each.",
	ChargeCannotTell:  "The amount of refrigerant is left as it is until a better measurement decides.",
	ChargeNotNow:      "The measurement is repeated under better conditions, or the refrigerant is taken out, weighed and put back by the label.",
	ChargeNotMeasured: "The missing measurements are taken.",
}
