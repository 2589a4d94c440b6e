package diagnose_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A published row is what a sound machine reads by its maker.
type published struct {
	refrigerant             *refrigerant.Refrigerant
	metering                string
	stage, arrangement      string
	size                    float64 // 1000 Btu/h
	dry, wet, outdoor       float64 // °F
	suctionPSIG, liquidPSIG float64
}

func readPublished(t *testing.T) []published {
	t.Helper()
	f, err := os.Open("population/testdata/machines.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := make([]published, 0, len(all))
	for _, x := range all[1:] {
		p := published{metering: x[2], arrangement: x[3], stage: x[4]}
		if p.refrigerant, err = refrigerant.Lookup(x[1]); err != nil {
			t.Fatal(err)
		}
		for i, to := range []*float64{&p.size, &p.dry, &p.wet, &p.outdoor, &p.suctionPSIG,
			&p.liquidPSIG} {
			if *to, err = strconv.ParseFloat(x[5+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		out = append(out, p)
	}
	return out
}

func reading(fahrenheit, std float64) readcheck.Temp {
	u := quantity.Fahrenheit(fahrenheit).PlusMinus(quantity.KelvinDelta(std))
	return &u
}

// evidence is what gauges and the air say of a row.
func (p *published) evidence(t *testing.T, m refrigerant.Metering) diagnose.Evidence {
	t.Helper()
	atmosphere := quantity.StandardAtmosphere
	gauge := func(psig float64) readcheck.Gauge {
		u := quantity.PSIG(psig).PlusMinus(quantity.PSIG(1))
		return &u
	}
	at := func(f func(quantity.Pressure) (quantity.Temperature, error), psig,
		std float64) readcheck.Temp {
		v, err := f(quantity.PSIG(psig).Absolute(atmosphere))
		if err != nil {
			t.Fatal(err)
		}
		return reading(v.Fahrenheit(), std)
	}
	r := p.refrigerant
	var known population.Known
	if p.arrangement == "wall-mounted" {
		// Nobody overlooks that, and it condenses as no other machine does.
		known.Arrangement = population.WallMounted
	}
	if p.stage == "low" {
		known.Share = 0.7
	}
	return diagnose.Evidence{
		Known: known,
		Fluid: r, Others: diagnose.Alternatives(r), Atmosphere: atmosphere, Metering: m,
		NominalCapacity: quantity.BtuPerHour(1000 * p.size),
		Input: readcheck.Input{
			SuctionPressure: gauge(p.suctionPSIG), LiquidPressure: gauge(p.liquidPSIG),
			EvaporatingDew:   at(r.DewTemperature, p.suctionPSIG, 0.3),
			CondensingBubble: at(r.BubbleTemperature, p.liquidPSIG, 0.25),
			CondensingDew:    at(r.DewTemperature, p.liquidPSIG, 0.25),
			OutdoorDryBulb:   reading(p.outdoor, 0.35),
			ReturnDryBulb:    reading(p.dry, 0.35), ReturnWetBulb: reading(p.wet, 0.4),
		},
	}
}

// full adds the lines at the label's subcooling and the usual superheat, and a supply.
func (p *published) full(
	t *testing.T, m refrigerant.Metering, supply float64,
) (diagnose.Evidence, bool) {
	e := p.evidence(t, m)
	superheat := 10.0
	if m == refrigerant.FixedRestrictor {
		target, err := charge.TableSuperheat(
			quantity.Fahrenheit(p.wet), quantity.Fahrenheit(p.outdoor),
		)
		if err != nil {
			return e, false
		}
		superheat = target.Fahrenheit()
		e.Expected = append(
			e.Expected,
			diagnose.Expectation{Feature: signature.Superheat, Value: float64(target), Std: 0.6},
		)
	} else {
		e.Expected = append(e.Expected, diagnose.Expectation{Feature: signature.Subcooling,
			Value: float64(quantity.FahrenheitDelta(10)), Std: 1, AtRated: true})
	}
	e.SuctionLine = reading(e.EvaporatingDew.Value.Fahrenheit()+superheat, 0.5)
	e.LiquidLine = reading(e.CondensingBubble.Value.Fahrenheit()-10, 0.5)
	e.SupplyDryBulb = reading(supply, 0.35)
	return e, true
}

// devices a row is tried with: that of its page, or both.
func (p *published) devices() []refrigerant.Metering {
	switch p.metering {
	case "valve":
		return []refrigerant.Metering{refrigerant.TXV}
	case "fixed orifice":
		return []refrigerant.Metering{refrigerant.FixedRestrictor}
	}
	return []refrigerant.Metering{refrigerant.TXV, refrigerant.FixedRestrictor}
}

// targetSplit is that of California Energy Commission table RA3.2-3 at the wet bulb, with
// a dry bulb of 80 °F (from memory); other rows are not tried.
const targetSplit = 18.3

// Machines that are sound by their makers are called sound.
func TestPublishedMachinesAreSound(t *testing.T) {
	n, sound, called := 0, 0, 0
	taken := map[string]int{}
	for _, p := range readPublished(t) {
		if p.dry != 80 || p.wet != 67 {
			continue
		}
		for _, m := range p.devices() {
			for _, off := range []float64{-2, 0, 2} {
				e, ok := p.full(t, m, p.dry-targetSplit+off)
				if !ok {
					continue
				}
				n++
				d := diagnose.Infer(e)
				first := &d.Explanations[0]
				if len(first.Causes) == 0 {
					sound++
					continue
				}
				key := fmt.Sprintf(
					"%v %s %s m%d off %+g", p.outdoor, p.refrigerant.Designation(), p.stage, m, off,
				)
				taken[first.Code()]++
				if first.Probability >= 0.5 {
					called++
					t.Logf(
						"%s: %s %.2f (sound %.2f)", key, first.Code(), first.Probability, d.Healthy,
					)
				}
			}
		}
	}
	t.Logf(
		"of %d: nothing wrong first %.1f %%, called wrong with half or more %.1f %%; %v", n,
		100*float64(sound)/float64(n), 100*float64(called)/float64(n), taken,
	)
	if float64(sound) < 0.90*float64(n) || float64(called) > 0.02*float64(n) {
		t.Errorf(
			"of %d sound machines %d were called sound, %d something else with half or more", n,
			sound, called,
		)
	}
}

// Pressures and air alone accuse no sound machine, whatever its metering device is taken for.
func TestPressuresAloneAccuseNobody(t *testing.T) {
	worst, at := 0.0, ""
	for _, p := range readPublished(t) {
		for _, m := range p.devices() {
			d := diagnose.Infer(p.evidence(t, m))
			for i := range d.Explanations {
				x := &d.Explanations[i]
				if x.Code() == "sound" || x.Causes[0].Kind == diagnose.Circumstance {
					continue
				}
				if x.Probability > worst {
					worst, at = x.Probability, fmt.Sprintf("%s of %v %s at %v °F outdoors",
						x.Code(), p.size, p.refrigerant.Designation(), p.outdoor)
				}
			}
		}
	}
	t.Logf("worst %.2f, %s", worst, at)
	if worst > 0.3 {
		t.Errorf("%.2f, %s", worst, at)
	}
}
