package main

import (
	"math"
	"strings"
	"testing"
)

// text is a fact by its printed name.
func (s sheetOfPaper) text(name string) string {
	for _, g := range s.p.Given {
		if g.Name == name {
			return g.Value
		}
	}
	return ""
}

// side is −1, 0 or 1 for a value below, within or above a band around another.
func side(v, middle, band float64) int {
	switch {
	case v < middle-band-1e-9:
		return -1
	case v > middle+band+1e-9:
		return 1
	}
	return 0
}

// inWords finds the answer of each form with words for its answer from the print alone, as a
// student of the course would; those of a fault stand against the model, in
// TestDiagnosesByTheModel.
var inWords = map[string]func(s sheetOfPaper) string{
	"target/judge": func(s sheetOfPaper) string {
		return map[[2]int]string{
			{1, -1}: "add", {-1, 1}: "recover", {0, 0}: "leave", {1, 1}: "restriction",
			{-1, 0}: "airflow",
		}[[2]int{
			side(s.v("measured superheat"), s.target(),
				s.v("tolerance of the superheat, either way")),
			side(s.v("measured subcooling"), s.v("subcooling of this machine when sound"),
				s.v("tolerance of the subcooling, either way")),
		}]
	},
	"target/weather": func(s sheetOfPaper) string {
		if math.IsNaN(s.target()) {
			return "none"
		}
		return "charge-a"
	},
	"recovery/which": func(s sheetOfPaper) string {
		rows := s.p.Tables[0].Rows
		switch s.vacuumAsked() {
		case figure(rows[0][1]):
			return "none"
		case figure(rows[2][1]):
			return "ten"
		}
		return "fifteen"
	},
	"evacuation/judge": func(s sheetOfPaper) string {
		r, limit := s.p.Tables[0].Rows, s.v("limit of the test")
		at := func(i int) float64 { return figure(r[i][1]) }
		last := len(r) - 1
		switch {
		case at(0) > limit:
			return "shallow"
		case at(last) <= limit:
			return "sound"
		case at(last)-at(last-1) > (at(1)-at(0))/2:
			return "leak"
		}
		return "water"
	},
	"nitrogen/judge": func(s sheetOfPaper) string {
		a := s.v("atmosphere here")
		tight := (s.v("gauge at the start")+a)*s.hot("gas at the end")/s.hot("gas at the start") - a
		warmer := 2 * s.v("the thermometer is right within") / s.hot("gas at the start")
		most := 2*s.v("the gauge is right within") + warmer*(s.v("gauge at the start")+a)
		switch side(s.v("gauge at the end"), tight, most) {
		case -1:
			return "leaks"
		case 1:
			return "too-much"
		}
		if strings.HasSuffix(s.text("held for"), "min") {
			return "short"
		}
		return "holds"
	},
	"rules/method": func(s sheetOfPaper) string {
		switch {
		case s.text("seen") != "":
			return "weigh-in"
		case strings.Contains(s.text("metering device"), "piston"):
			return "superheat"
		case strings.Contains(s.text("label"), "approach"):
			return "approach"
		}
		return "subcooling"
	},
	"split/judge": func(s sheetOfPaper) string {
		split := s.v("return air, dry bulb") - s.v("supply air")
		way := side(split, s.split(), s.v("tolerance of the split, either way"))
		found := [...]string{"low", "in-band", "high"}[way+1]
		if strings.Contains(s.text("seen besides"), "probe") {
			found += "-else"
		}
		return found
	},
	"standing/judge": func(s sheetOfPaper) string {
		at, within := s.v("coil and cabinet, soaked"),
			s.v("gauge and thermometer together are right within")
		own, shown := s.pressureAt(bubble, at), s.v("gauge, machine off")
		row := s.p.Tables[0].Rows
		degree := (figure(row[1][bubble]) - figure(row[0][bubble])) /
			(figure(row[1][0]) - figure(row[0][0]))
		for _, g := range s.p.Given {
			if other := figure(g.Value); strings.HasSuffix(g.Name, "would show") &&
				math.Abs(shown-other) <= within*degree {
				return "other"
			}
		}
		return [...]string{"lost", "sound", "air"}[side(shown, own, 1.3*within*degree)+1]
	},
	"blend-leak/gone": func(s sheetOfPaper) string {
		sign := 1.0
		if strings.Contains(s.p.Ask, "smallest") {
			sign = -1
		}
		first, least := "", math.Inf(1)
		for i, h := range s.p.Tables[0].Head {
			name, ok := strings.CutSuffix(h, " %")
			left := s.read(0, i, s.v("share of the charge that is lost"))
			if share := sign * left / figure(s.p.Tables[0].Rows[0][i]); ok && share < least {
				first, least = name, share
			}
		}
		return first
	},
	"safety/group": func(s sheetOfPaper) string { return s.text("safety group") },
}

// A student who has nothing but the print finds every answer in words, and by the stated
// tolerances finds it alone.
func TestWordsFollowFromThePrint(t *testing.T) {
	found := map[string]map[string]int{}
	for _, o := range styles {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			for o.Seed = 70; o.Seed < 72; o.Seed++ {
				o.PerTopic, o.Topics = 8, nil
				for form := range inWords {
					o.Topics = append(o.Topics, form)
				}
				for _, p := range mustGenerate(t, o).Problems {
					at := p.Topic + "/" + p.Form
					got := inWords[at](sheetOfPaper{t, p})
					if got != p.rightCode {
						t.Errorf("%s: the print says %q where the key has %q: %s %v %v", at, got,
							p.rightCode,
							p.Statement, p.Given, p.Tables)
					}
					if found[at] == nil {
						found[at] = map[string]int{}
					}
					found[at][got]++
				}
			}
		}
	}
	for form := range inWords {
		if len(found[form]) < 2 {
			t.Errorf("%s has only the answers %v", form, found[form])
		}
	}
	t.Log(found)
}
