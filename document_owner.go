package satline

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/normal"
)

// ownerBlocks says what was found in words that need no training.
func (a Assessment) ownerBlocks(d *document) {
	found := block{heading: "What was found", paragraphs: []string{ownerFound[a.Charge.Outcome]}}
	causes, mended := a.ownerCauses()
	if s := a.Steadiness; s != nil && !s.Course.Steady() {
		causes, mended = nil, false // readings that still move tell no cause
	}
	for _, c := range causes {
		found.items = append(found.items, item{text: c})
	}
	if slices.ContainsFunc(a.Doubts, grave) {
		found.paragraphs = append(found.paragraphs, "Some measurements did not agree with each other and are to be taken again before anything is decided.")
	}
	if a.Freeze != nil && a.Freeze.Chance > 0.5 {
		text := "The indoor coil is cold enough to collect ice as the machine runs now."
		if a.Freeze.Outcome != airside.FrostForming.String() || len(a.Freeze.Instead) > 0 {
			text += " A clean filter, open supply and return grilles and a higher setting of the thermostat help."
		}
		found.paragraphs = append(found.paragraphs, text)
	}
	d.blocks = append(d.blocks, found)
	if len(a.Risks) > 0 {
		danger := block{heading: "Please note", paragraphs: []string{"The compressor, the costliest part of the machine, is at risk as it runs now:"}}
		var said []string
		for _, r := range a.Risks {
			if text := ownerRisks[r.Code]; text != "" && !slices.Contains(said, text) {
				said = append(said, text)
				danger.items = append(danger.items, item{text: text})
			}
		}
		d.blocks = append(d.blocks, danger)
	}
	next := block{heading: "What comes next", paragraphs: []string{ownerNext[a.Charge.Outcome]}}
	if a.Charge.Hold != "" {
		next.paragraphs[0] = "Whether it is the refrigerant alone is settled first; none is added or taken out before that."
	}
	if a.Charge.Outcome == ChargeNotNow && mended {
		found.paragraphs[0] = "Something else than the amount of refrigerant comes first; the refrigerant cannot be judged before that is put right."
		d.blocks[0] = found
		next.paragraphs[0] = "What was found above is put right, and the machine measured again. No refrigerant is added or taken out before that."
	}
	if a.Charge.Outcome == ChargeInBand && mended {
		found.paragraphs[0] = "The amount of refrigerant reads right as the machine runs now, but something else does not."
		d.blocks[0] = found
		next.paragraphs = []string{"What was found above is looked into and put right, and the machine measured again. Nothing is done about the refrigerant before that."}
	}
	if a.Freeze != nil && a.Freeze.Outcome == airside.FrostForming.String() {
		next.paragraphs = append([]string{"The ice is thawed first, with the cooling off and the fan on, and what made it is looked for; measurements on an iced machine mean nothing."}, next.paragraphs...)
	}
	if a.Air != nil && a.Air.Do != "" {
		next.paragraphs = append([]string{"First the air: filter, coil, blower and ducts are looked at, because too little air looks like a fault of the refrigerant."}, next.paragraphs...)
	}
	if slices.ContainsFunc(a.Risks, func(r Risk) bool { return r.Grave && !strings.HasPrefix(r.Stop, "stop") }) && !(a.Freeze != nil && a.Freeze.Outcome == airside.FrostForming.String()) {
		next.paragraphs = append([]string{"What puts the compressor at risk is looked for first."}, next.paragraphs...)
	}
	if slices.ContainsFunc(a.Risks, func(r Risk) bool { return strings.HasPrefix(r.Stop, "stop") }) {
		next.paragraphs = append([]string{"The cooling stays off until what puts the compressor at risk is put right; it is run only to measure."}, next.paragraphs...)
	}
	d.blocks = append(d.blocks, next)
}

// ownerCauses says what is likely in words that need no training, and whether
// any of it is another cause than the amount of refrigerant.
func (a Assessment) ownerCauses() (causes []string, other bool) {
	var order []string
	share := map[string]float64{}
	for _, f := range a.Findings {
		said := map[string]bool{}
		for code := range strings.SplitSeq(f.Code, "+") {
			plain := ownerCause[diagnose.Code(code)]
			if plain == "" || said[plain] {
				continue
			}
			if share[plain] == 0 {
				order = append(order, plain)
			}
			said[plain] = true
			share[plain] += f.Probability
		}
	}
	slices.SortStableFunc(order, func(x, y string) int { return cmp.Compare(share[y], share[x]) })
	for _, plain := range order {
		if share[plain] < worthOwner {
			continue
		}
		causes = append(causes, fmt.Sprintf("Likely (%s): %s.", normal.Percent(share[plain]), plain))
		other = other || plain != ownerCause[diagnose.Undercharge] && plain != ownerCause[diagnose.Overcharge]
	}
	return causes, other
}

// worthOwner is the probability from which a cause is told to the owner.
const worthOwner = 0.25

const ownerMeasuring = "one of the measurements is off and is to be taken again; that is no fault of the machine"

// ownerCause names each cause for a person who does not know the machine.
var ownerCause = map[diagnose.Code]string{
	diagnose.Undercharge:      "there is too little refrigerant, most often because of a leak",
	diagnose.Overcharge:       "there is too much refrigerant",
	diagnose.NonCondensables:  "air or another gas has got in among the refrigerant",
	diagnose.Restriction:      "something blocks the flow of the refrigerant, such as a clogged filter in its pipe or a valve that does not open",
	diagnose.Overfeed:         "the part that meters the refrigerant lets too much through",
	diagnose.VaporLeak:        "the compressor pumps less than it should, or gas leaks back past a valve; this is proved before anything dear is replaced",
	diagnose.OtherRefrigerant: "the refrigerant in the machine may not be the one on its label",
	diagnose.LowIndoorAir:     "too little air flows through the indoor unit; a dirty filter is the usual reason",
	diagnose.HighIndoorAir:    "more air flows through the indoor unit than is meant",
	diagnose.ReturnLeak:       "hot air, as from an attic, is drawn into the duct that leads back to the machine",
	diagnose.CondenserAir:     "the outdoor unit cannot give off its heat: it is dirty, blocked, or its fan is weak",
	diagnose.LowLoad:          "the rooms are cooler than the machine is meant to cool",
	diagnose.LowAmbient:       "it is too cool outdoors for a machine without a control for cool weather",
	diagnose.Economizer:       "outdoor air is being drawn in",
	diagnose.NoTrap:           "the drain for the water lacks its trap",
	diagnose.SuctionClamp:     ownerMeasuring,
	diagnose.LiquidClamp:      ownerMeasuring,
	diagnose.SuctionGauge:     ownerMeasuring,
	diagnose.LiquidGauge:      ownerMeasuring,
	diagnose.Altitude:         ownerMeasuring,
	diagnose.DryWick:          ownerMeasuring,
	diagnose.BulbsSwapped:     ownerMeasuring,
	diagnose.HosesSwapped:     ownerMeasuring,
	diagnose.SunOnSensor:      ownerMeasuring,
	diagnose.SupplySensor:     ownerMeasuring,
}

const (
	ownerLiquid = "Liquid refrigerant can reach the compressor, which is made to pump gas only. It wears out early, or breaks."
	ownerHot    = "The compressor runs hotter than is good for its oil."
	ownerIce    = "The indoor coil can freeze over; then the air stops and the compressor suffers."
	ownerStrain = "The compressor has to work against a greater difference of pressure than it should, and runs hot."
)

// ownerRisks says what each danger to the compressor means.
var ownerRisks = map[string]string{
	"floodback": ownerLiquid, "slugging": ownerLiquid, "superheat-low": ownerLiquid, "discharge-cool": ownerLiquid,
	"discharge-hottest": ownerHot, "discharge-hot": ownerHot,
	"compression-ratio-highest": ownerStrain, "compression-ratio-high": ownerStrain,
	"evaporating-coldest": ownerIce, "evaporating-cold": ownerIce,
	"current-high":      "The compressor draws more current than it is made for. It runs hot, and its protection may stop it on a hot day.",
	"suction-in-vacuum": "The low-pressure side is below the pressure of the air around it: any leak draws air in. The machine is to be stopped.",
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
