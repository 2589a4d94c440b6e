package diagnose

import (
	"strings"
	"testing"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// Refrigerant is never moved while airflow, an instrument or the steadiness of
// the readings is in doubt; common practice and ANSI/ACCA 5 QI (from memory).
func TestChargeWaits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := signature.For(signature.Fixed)
		v := table.Sound.Mean(signature.Rated, signature.UsualFluid)
		for _, cause := range table.Causes {
			if rapid.IntRange(0, 3).Draw(t, cause.Code) != 0 {
				continue
			}
			k := rapid.IntRange(0, len(cause.Levels)-1).Draw(t, cause.Code+" level")
			d := cause.Levels[k].Shift(&table.Sound, signature.Rated, signature.UsualFluid)
			for f := range v {
				v[f] += d[f]
			}
		}
		e := reads(signature.Rated, v)
		e.Seen.CoilIced = rapid.Bool().Draw(t, "iced")
		e.Seen.FilterDirty = rapid.Bool().Draw(t, "filter")
		if rapid.Bool().Draw(t, "unsteady") {
			e.Unsteady = "superheat still falls"
		}
		d := Infer(e)
		doubt := e.Unsteady != "" || e.Seen.CoilIced || d.Verdict == Contradictory ||
			d.any([]Code{LowIndoorAir, HighIndoorAir, ReturnLeak}) > doubtful || d.any(instrumentSignatures) > doubtful
		for i := range d.Order {
			do, _ := d.Order[i].Texts(quantity.IP)
			moves := strings.Contains(do, "weigh refrigerant in or add") || strings.Contains(do, "recover refrigerant in small steps")
			if doubt && moves {
				t.Fatalf("charge is moved in doubt: %q", do)
			}
		}
	})
}

// The order is instruments, indoor air, outdoor air, circuit, charge.
func TestOrderOfStages(t *testing.T) {
	for _, x := range []struct {
		code Code
		want stage
	}{
		{SuctionClamp, stageInstruments}, {"refrigerant-selected", stageInstruments},
		{LowLoad, stageCircumstances}, {"filter", stageIndoorAir}, {ReturnLeak, stageIndoorAir},
		{"condenser-coil", stageOutdoorAir}, {"liquid-line-restriction", stageCircuit}, {NonCondensables, stageCircuit},
		{"compressor-valves", stageProof}, {Undercharge, stageCharge}, {Overcharge, stageCharge},
	} {
		if got := stageOf(lookup(x.code)); got != x.want {
			t.Errorf("%s is at stage %d, want %d", x.code, got, x.want)
		}
	}
}

func TestIcedCoilIsThawedFirst(t *testing.T) {
	table := signature.For(signature.Fixed)
	v := table.Sound.Mean(signature.Rated, signature.UsualFluid)
	e := reads(signature.Rated, v)
	e.Seen.CoilIced = true
	d := Infer(e)
	if do, _ := d.Order[0].Texts(quantity.IP); !strings.Contains(do, "until the ice is gone") {
		t.Errorf("first step %q", do)
	}
}
