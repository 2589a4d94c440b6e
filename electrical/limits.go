package electrical

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Sources of the limits.
var (
	label    = fact.Source{Title: "the unit's label", Standing: fact.Label}
	practice = fact.Source{Standing: fact.CommonPractice}
	// voltageBand: a motor runs within 10 % of its rated voltage.
	voltageBand = fact.Source{Title: "NEMA MG 1-2011, 12.44", Standing: fact.Published}
	// unbalanced: 1 % is what a motor takes without derating; above 5 % it is not to run.
	unbalanced = fact.Source{Title: "NEMA MG 1-2011, 14.36", Standing: fact.Published}
	// dropNote: 5 % over feeder and branch is recommended, and no requirement.
	dropNote = fact.Source{
		Title: "NFPA 70, 210.19(A), informational note", Standing: fact.FromMemory,
	}
	// overload: protection may let the compressor draw 156 % of its rated load current.
	overload = fact.Source{Title: "NFPA 70, 440.52(B)", Standing: fact.Published}
	// fanOverload: 115 % for a motor without a service factor.
	fanOverload = fact.Source{Title: "NFPA 70, 430.32(A)(1)", Standing: fact.FromMemory}
	// insulation: 5 MΩ for random-wound stators; kilovolts + 1 MΩ for older windings.
	insulation = fact.Source{Title: "IEEE Std 43-2013, table 3", Standing: fact.Published}
	// coilBand: a contactor closes from 85 % of its coil's voltage on.
	coilBand = fact.Source{Title: "UL 60947-4-1, 8.2.1.2", Standing: fact.FromMemory}
	classTwo = fact.Source{
		Title: "NFPA 70, chapter 9, table 11(A): class 2", Standing: fact.FromMemory,
	}
	// aboveRated: a capacitor stands 110 % of its rated voltage.
	aboveRated = fact.Source{Title: "IEC 60252-1, 6.1", Standing: fact.FromMemory}
)

const (
	mostVoltageOff = 0.10 // of the rated voltage, either way
	leastAtStart   = 0.85 // of the rated voltage; common practice
	mostDrop       = 0.05

	watchedUnbalance = 0.01
	mostUnbalance    = 0.05
	// mostCurrentUnbalance is common practice: a current is six to ten times as far off as the
	// voltage is (NEMA MG 1, 14.36, from memory).
	mostCurrentUnbalance = 0.10
	// lostPhase is how low the lowest of three stands where one is not there.
	lostPhase = 0.75

	closesFrom   = 0.85
	mostClassTwo = quantity.Voltage(30)
	// An open switch has the voltage of its circuit across it, a closed one next to none.
	openFrom     = 0.5
	closedWithin = quantity.Voltage(1)

	// wornDrop and burntDrop across a contact under load are common practice: 5 V at 20 A are
	// 100 W in a contact.
	wornDrop  = quantity.Voltage(0.5)
	burntDrop = quantity.Voltage(5)

	mostContinuous = 1.56 // of the rated load current
	mostOfFan      = 1.15
	// A rotor that stands draws its locked current, less where the voltage dips; without a
	// label four to six times the rated one, common practice.
	lockedPart  = 0.6
	lockedTimes = 3.5
	// littleLoad is the part of the rated current below which a compressor hardly pumps.
	littleLoad = 0.4
	noCurrent  = 0.03

	// openLine is above every winding of such a motor.
	openLine = quantity.Resistance(10e3)
	// sumWithin and sumSlack are how far windings in series may be off their sum.
	sumWithin, sumSlack = 0.05, quantity.Resistance(0.2)
	mostUneven          = 0.05

	soundInsulation = quantity.Resistance(5e6)
)

// leastInsulation is that of windings which are not to be fed: kilovolts plus one megohm.
func leastInsulation(v quantity.Voltage) quantity.Resistance {
	return quantity.Megohms(1 + float64(v)/1000)
}
