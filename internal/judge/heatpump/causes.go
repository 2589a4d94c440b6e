package heatpump

import "github.com/satline/satline/internal/judge/heatpump/signature"

// Causes that the code asks for by name.
const (
	sound          = "sound"
	undercharge    = "undercharge"
	overcharge     = "overcharge"
	gas            = "non-condensables"
	nextToEmpty    = "next-to-empty"
	notPumping     = "not-pumping"
	lowIndoorAir   = "low-indoor-airflow"
	outdoorAir     = "outdoor-air-short"
	strips         = "auxiliary-heat"
	defrost        = "defrost-wrong"
	suctionPort    = "suction-port"
	reversing      = "reversing-valve"
	dischargeClamp = "discharge-clamp"
	otherFluid     = "other-refrigerant"
	contradiction  = "readings-contradict"
)

// A cause is what may be wrong, in one or more faults that the gauges cannot tell apart.
// Shares and priors are common practice, no source. What it costs, in minutes, is as in
// package diagnose: to mend it, and to leave it.
type cause struct {
	code          string
	prior         float64
	mend, neglect float64
	faults        []fault
	// ofInstrument says that a reading is wrong, not the machine.
	ofInstrument bool
	// signature is its place in signature.Causes; -1 where a row of its own is made.
	signature int
	// low and high are the ends of its size, a share; zero where it has none.
	low, high float64
}

// A fault is one way to have a cause. opens says that the circuit is opened to mend it, cold
// that it is found in frosting weather alone.
type fault struct {
	code        string
	share       float64
	opens, cold bool
}

func one(code string) []fault { return []fault{{code: code, share: 1}} }

func instrument(code string, prior, mend, neglect float64, fault string) cause {
	return cause{
		code: code, prior: prior, mend: mend, neglect: neglect, faults: one(fault),
		ofInstrument: true,
	}
}

var causes = placed([]cause{
	{code: sound, prior: 0.42, faults: one(sound)},
	{code: undercharge, prior: 0.12, mend: 90, neglect: 260, faults: one(undercharge),
		low: 0.07, high: 0.42},
	{code: overcharge, prior: 0.045, mend: 90, neglect: 200, faults: one(overcharge),
		low: 0.07, high: 0.42},
	{code: gas, prior: 0.012, mend: 180, neglect: 160,
		faults: one(gas)},
	{code: "restriction", prior: 0.045, mend: 120, neglect: 260, faults: []fault{
		{code: "outdoor-device-starving", share: 0.45},
		{code: "liquid-line-restriction", share: 0.25, opens: true},
		{code: "check-valve-stuck", share: 0.3},
	}},
	{code: "overfeed", prior: 0.035, mend: 60, neglect: 200, faults: []fault{
		{code: "check-valve-leaking", share: 0.5}, {code: "outdoor-device-large", share: 0.5},
	}},
	{code: "vapor-leak", prior: 0.02, mend: 60, neglect: 180, low: 0.07, high: 0.6, faults: []fault{
		{code: "compressor-valves", share: 0.85}, {code: "reversing-valve-leak", share: 0.15},
	}},
	{code: reversing, prior: 0.017, mend: 60, neglect: 180, low: 0.07, high: 0.5,
		faults: one("reversing-valve-leak")},
	{code: notPumping, prior: 0.012, mend: 60, neglect: 300, faults: []fault{
		{code: "reversing-valve-midway", share: 0.5}, {code: "compressor-runs-idle", share: 0.5},
	}},
	{code: lowIndoorAir, prior: 0.12, mend: 20, neglect: 220, low: 0.14, high: 0.62,
		faults: []fault{
			{code: "filter", share: 0.5}, {code: "blower", share: 0.15},
			{code: "indoor-coil", share: 0.15}, {code: "ducts", share: 0.2},
		}},
	{code: outdoorAir, prior: 0.1, mend: 25, neglect: 220, low: 0.25, high: 0.9, faults: []fault{
		{code: "outdoor-ice", share: 0.5, cold: true}, {code: "outdoor-dirt", share: 0.3},
		{code: "outdoor-fan", share: 0.2},
	}},
	{code: strips, prior: 0.035, mend: 20, neglect: 120, faults: one("strips-on")},
	{code: defrost, prior: 0.02, mend: 40, neglect: 120, faults: []fault{
		{code: "defrost-often", share: 0.6, cold: true},
		{code: "defrost-long", share: 0.4, cold: true},
	}},
	{code: nextToEmpty, prior: 0.015, mend: 120, neglect: 300, faults: one(nextToEmpty)},
	instrument(suctionPort, 0.025, 3, 60, suctionPort),
	instrument("suction-clamp", 0.025, 5, 8, "suction-clamp"),
	instrument("liquid-clamp", 0.025, 5, 8, "liquid-clamp"),
	instrument(dischargeClamp, 0.003, 5, 8, dischargeClamp),
	instrument("suction-gauge-zero", 0.015, 5, 8, "suction-gauge-zero"),
	instrument("liquid-gauge-zero", 0.015, 5, 8, "liquid-gauge-zero"),
	instrument("supply-sensor", 0.03, 5, 8, "supply-sensor"),
	instrument(otherFluid, 0.005, 4, 260, "refrigerant-selected"),
	instrument(contradiction, 0.004, 10, 20, contradiction),
})

// placed gives each cause its place in the table of signatures. What leaves none reads as a
// sound machine, or has a row of its own in special.
func placed(all []cause) []cause {
	for i := range all {
		all[i].signature = -1
		for k, code := range signature.Causes {
			if code == all[i].code {
				all[i].signature = k
			}
		}
	}
	return all
}

// Harms of a charge weighed in anew where the charge was not what was wrong, in minutes.
const wrongCharge = 220

// anotherRound is the time to settle and read again after something that was not it.
const anotherRound = 25
