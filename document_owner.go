package satline

// ownerBlocks says what was found in words that need no training.
func (a Assessment) ownerBlocks(d *document) {
	found := block{heading: "What was found", paragraphs: []string{ownerCharge[a.Charge.Outcome]}}
	for _, f := range a.Findings {
		if f.Probability >= 0.25 {
			found.items = append(found.items, item{text: "Likely cause: " + f.Cause})
		}
	}
	if len(a.Doubts) > 0 {
		found.paragraphs = append(found.paragraphs, "Some measurements did not agree with each other and are to be taken again before anything is decided.")
	}
	next := block{heading: "What comes next", numbered: true}
	for _, s := range a.Next {
		next.items = append(next.items, item{text: s.Do})
	}
	danger := block{}
	if len(a.Risks) > 0 {
		danger = block{heading: "Please note", paragraphs: []string{"The compressor, the costliest part of the machine, is at risk as it runs now:"}}
		for _, r := range a.Risks {
			danger.items = append(danger.items, item{text: r.Why})
		}
	}
	d.blocks = append(d.blocks, found, danger, next)
}

var ownerCharge = map[ChargeOutcome]string{
	ChargeInBand:      "The amount of refrigerant in the machine is right.",
	ChargeLow:         "The machine appears to have too little refrigerant. Refrigerant is not used up: if some is missing, it has leaked or was never put in, and the leak is to be found before more is added.",
	ChargeHigh:        "The machine appears to have too much refrigerant. That costs electricity and can harm the compressor; the excess is recovered, not vented.",
	ChargeCannotTell:  "Whether the amount of refrigerant is right could not be told with certainty from the instruments at hand.",
	ChargeNotNow:      "The amount of refrigerant could not be judged under today's conditions.",
	ChargeNotMeasured: "The amount of refrigerant was not measured.",
}
