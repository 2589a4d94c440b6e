package main

import (
	"math"
	"strings"
	"testing"
)

// A sheetOfPaper is what a student has: the printed problem, and nothing else.
type sheetOfPaper struct {
	t *testing.T
	p Problem
}

// v is the number of a fact by its printed name.
func (s sheetOfPaper) v(name string) float64 {
	for _, g := range s.p.Given {
		if g.Name == name {
			return figure(g.Value)
		}
	}
	return math.NaN()
}

// or is the same, with what to take where it is not given.
func (s sheetOfPaper) or(name string, without float64) float64 {
	if v := s.v(name); !math.IsNaN(v) {
		return v
	}
	return without
}

func (s sheetOfPaper) ip() bool {
	for _, g := range s.p.Given {
		for _, u := range []string{"°F", "psi", "CFM", "Btu", " lb", " oz", " ft", "in. ", "µm"} {
			if strings.Contains(g.Value, u) {
				return true
			}
		}
	}
	return strings.Contains(s.p.Answer.Unit, "micron") || strings.Contains(s.p.Answer.Unit, "hp") ||
		strings.Contains(s.p.Answer.Unit, "Btu")
}

func (s sheetOfPaper) either(ip, si float64) float64 {
	if s.ip() {
		return ip
	}
	return si
}

// read is the first table read from one column to another, between rows where
// need be.
func (s sheetOfPaper) read(from, to int, at float64) float64 {
	for i, t := range s.p.Tables {
		if t.Caption != "Standard atmosphere" {
			return s.readIn(i, from, to, at)
		}
	}
	return math.NaN()
}

func (s sheetOfPaper) readIn(table, from, to int, at float64) float64 {
	rows := s.p.Tables[table].Rows
	for i := range rows {
		x, y := figure(rows[i][from]), figure(rows[i][to])
		if math.Abs(x-at) < 1e-9 {
			return y
		}
		if i == 0 {
			continue
		}
		before, below := figure(rows[i-1][from]), figure(rows[i-1][to])
		if (before-at)*(x-at) < 0 {
			return below + (at-before)/(x-before)*(y-below)
		}
	}
	return math.NaN()
}

// row is a figure of the row that a name heads; when is which of several.
func (s sheetOfPaper) row(name string, column, which int) float64 {
	for _, r := range s.p.Tables[0].Rows {
		if r[0] == name {
			if which == 0 {
				return figure(r[column])
			}
			which--
		}
	}
	return math.NaN()
}

// listed is the pressure to look up in the table of the problem.
func (s sheetOfPaper) listed(pressure float64) float64 {
	if strings.Contains(s.p.Tables[0].Caption, "absolute") {
		return pressure + s.v("atmosphere here")
	}
	return pressure
}

func (s sheetOfPaper) gaugeOf(listed float64) float64 {
	if strings.Contains(s.p.Tables[0].Caption, "absolute") {
		return listed - s.v("atmosphere here")
	}
	return listed
}

func (s sheetOfPaper) dew(name string) float64    { return s.read(dew, 0, s.listed(s.v(name))) }
func (s sheetOfPaper) bubble(name string) float64 { return s.read(bubble, 0, s.listed(s.v(name))) }
func (s sheetOfPaper) pressureAt(column int, t float64) float64 {
	return s.gaugeOf(s.read(0, column, t))
}

// factor is 1.08 or 1.21, in thin air by the pressure of the atmosphere.
func (s sheetOfPaper) factor() float64 {
	return s.either(1.08, 1.21) * s.or("atmosphere here", 1) / s.or("atmosphere at the sea", 1)
}

// heat is Btu/h or W of electric heat.
func (s sheetOfPaper) heat() float64 { return s.v("voltage") * s.v("current") * s.either(3.412, 1) }

func (s sheetOfPaper) rise() float64 {
	return s.or("temperature rise", s.v("supply air")-s.v("return air, dry bulb"))
}

// lowerBy is how far the atmosphere is below that of the sea.
func (s sheetOfPaper) lowerBy() float64 {
	if v := s.v("atmosphere lower than at the sea by"); !math.IsNaN(v) {
		return v
	}
	for i, t := range s.p.Tables {
		if t.Caption == "Standard atmosphere" {
			return s.readIn(i, 0, 2, s.v("elevation"))
		}
	}
	return math.NaN()
}

// enthalpies of the air entering and leaving a coil.
func (s sheetOfPaper) entering() float64 {
	for i, h := range s.p.Tables[0].Head {
		if i > 0 && figure(h) == s.v("entering, dry bulb") {
			return s.read(0, i, s.v("entering, wet bulb"))
		}
	}
	return math.NaN()
}

func (s sheetOfPaper) leaving() float64 {
	for i, h := range s.p.Tables[0].Head {
		if i > 0 && figure(h) == s.v("leaving, dry bulb") {
			return s.read(0, i, s.v("leaving, wet bulb"))
		}
	}
	return math.NaN()
}

func (s sheetOfPaper) airFactor() float64 {
	if v := s.v("specific volume of the entering air, for its dry air"); !math.IsNaN(v) {
		return s.either(60, 1e-3) / v
	}
	return s.either(4.5, 1.2e-3)
}

// dryAir is lb/h or kg/h of dry air.
func (s sheetOfPaper) dryAir() float64 {
	return s.airFactor() * s.v("airflow") * s.either(1, 3600)
}

// h1, h2 and h4 are the enthalpies around the machine.
func (s sheetOfPaper) cycle() (h1, h2, h4 float64) {
	h4 = s.row("liquid in the liquid line", 2, 0)
	if math.IsNaN(h4) {
		h4 = (s.row("liquid", 2, 0) + s.row("liquid", 2, 1)) / 2
	}
	return s.row("vapor in the suction line", 2, 0), s.row("vapor discharged", 2, 0), h4
}

// under reads a table by a temperature across and one down.
func (s sheetOfPaper) under(across, down float64) float64 {
	for i, h := range s.p.Tables[0].Head {
		if i > 0 && figure(h) == across {
			return s.read(0, i, down)
		}
	}
	return math.NaN()
}

func (s sheetOfPaper) target() float64 {
	return s.under(s.v("return air, wet bulb"), s.v("outdoor air"))
}

func (s sheetOfPaper) split() float64 {
	return s.under(s.v("return air, dry bulb"), s.v("return air, wet bulb"))
}

func humidityRatio(pw, p float64) float64 { return 0.621945 * pw / (p - pw) }

func (s sheetOfPaper) whole() float64 { return s.either(7000, 1000) }

func (s sheetOfPaper) share() float64 {
	return (s.v("mixed air") - s.v("return air, dry bulb")) /
		(s.v("outdoor air") - s.v("return air, dry bulb"))
}

func (s sheetOfPaper) mix(outdoor, back string) float64 {
	share := s.v("of it outdoor air") / s.v("airflow in all")
	return share*s.v(outdoor) + (1-share)*s.v(back)
}

// hot is a temperature from absolute zero.
func (s sheetOfPaper) hot(name string) float64 {
	return s.v(name) + s.v("zero of the scale above absolute zero")
}

func (s sheetOfPaper) vacuumAsked() float64 {
	column := 1
	if s.v("whole charge") >= s.either(200, 91) {
		column = 2
	}
	for _, g := range s.p.Given {
		if g.Name == "class of the refrigerant" {
			return s.row(g.Value, column, 0)
		}
	}
	return math.NaN()
}

func (s sheetOfPaper) safeFill() float64 {
	factor := s.v("refrigerant it may hold for each unit of water capacity")
	if math.IsNaN(factor) {
		factor = 0.8 * s.v("weight of the liquid at 130 °F (54 °C) over that of water")
	}
	return factor * s.v("water capacity stamped (WC)")
}

// line is what the line set and the accessories take beyond the label.
func (s sheetOfPaper) line() float64 {
	return (s.v("liquid line installed")-s.v("liquid line that the label counts"))*
		s.v("label, for liquid line more or less") +
		s.or("filter drier and accessories fitted on site hold", 0)
}

func (s sheetOfPaper) ratio(low, high string) float64 {
	a := s.v("atmosphere here")
	return (s.v(high) + a) / (s.v(low) + a)
}

// power is all electric power that is on.
func (s sheetOfPaper) power() float64 {
	return s.or("electric power", s.v("electric power of the outdoor unit")+
		s.v("electric power of the indoor blower"))
}

func (s sheetOfPaper) sensible() float64 {
	return s.or("sensible capacity", s.factor()*s.v("airflow")*s.either(1, 1e-3)*
		(s.v("return air, dry bulb")-s.v("supply air")))
}

func (s sheetOfPaper) water() float64 {
	return s.dryAir() * (s.v("water in the entering air") - s.v("water in the leaving air")) /
		s.whole()
}

func (s sheetOfPaper) external() float64 {
	return s.v("supply side of the blower box") - s.v("return side of the blower box")
}

// component is the column of the part of a blend that is asked for.
func (s sheetOfPaper) component() int {
	for i, h := range s.p.Tables[0].Head {
		if name, ok := strings.CutSuffix(h, " %"); ok &&
			strings.Contains(s.p.Ask, name+" is left") {
			return i
		}
	}
	return 0
}

func (s sheetOfPaper) lostRow(fromRight int) float64 {
	return s.read(0, len(s.p.Tables[0].Head)-fromRight, s.v("share of the charge that is lost"))
}

func (s sheetOfPaper) microfarads() float64 {
	return s.v("factor at this frequency") * s.v("current in the wire to the capacitor") /
		s.v("voltage across it")
}

func (s sheetOfPaper) amperes(microfarads float64) float64 {
	return microfarads * s.v("voltage across it") / s.v("factor at this frequency")
}

// phases are the mean of three readings and the largest deviation from it.
func (s sheetOfPaper) phases(names ...string) (mean, off float64) {
	for _, n := range names {
		mean += s.v(n) / 3
	}
	for _, n := range names {
		off = max(off, math.Abs(s.v(n)-mean))
	}
	return mean, off
}

func (s sheetOfPaper) lines() (mean, off float64) {
	return s.phases("between lines 1 and 2", "between lines 2 and 3", "between lines 3 and 1")
}

// lost is the voltage lost on the wires, for each unit of the way.
func (s sheetOfPaper) lostPer() float64 {
	for _, g := range s.p.Given {
		if g.Name == "wire, copper" {
			for _, r := range s.p.Tables[0].Rows {
				if r[0] == g.Value {
					return 2 * figure(r[1]) / 1000 * s.v("current, running")
				}
			}
		}
	}
	return math.NaN()
}

const wayThere = "one way from panel to motor"

// byHand solves each form with a number from the print alone.
var byHand = map[string]func(s sheetOfPaper) float64{
	"saturation/boiling":    func(s sheetOfPaper) float64 { return s.dew("suction pressure") },
	"saturation/condensing": func(s sheetOfPaper) float64 { return s.bubble("liquid pressure") },
	"saturation/cylinder": func(s sheetOfPaper) float64 {
		return s.pressureAt(bubble, s.v("room"))
	},
	"saturation/coil": func(s sheetOfPaper) float64 {
		return s.pressureAt(dew, s.v("boiling temperature wanted"))
	},
	"glide/evaporator": func(s sheetOfPaper) float64 {
		return s.dew("pressure in the evaporator") - s.bubble("pressure in the evaporator")
	},
	"glide/condenser": func(s sheetOfPaper) float64 {
		return s.dew("pressure in the condenser") - s.bubble("pressure in the condenser")
	},
	"glide/mean": func(s sheetOfPaper) float64 {
		return (s.dew("pressure in the evaporator") + s.bubble("pressure in the evaporator")) / 2
	},
	"glide/inlet": func(s sheetOfPaper) float64 {
		low, high := s.bubble("pressure in the evaporator"), s.dew("pressure in the evaporator")
		return low + s.v("vapor at the coil inlet")/100*(high-low)
	},
	"superheat/find": func(s sheetOfPaper) float64 {
		return s.v("suction line") - s.dew("suction pressure")
	},
	"superheat/line": func(s sheetOfPaper) float64 {
		return s.dew("suction pressure") + s.v("superheat wanted")
	},
	"superheat/pressure": func(s sheetOfPaper) float64 {
		return s.pressureAt(dew, s.v("suction line")-s.v("superheat wanted"))
	},
	"superheat/coil": func(s sheetOfPaper) float64 {
		p := s.v("suction pressure") + s.v("pressure lost in the suction line")
		return s.v("clamp at the coil outlet") - s.read(dew, 0, s.listed(p))
	},
	"subcooling/find": func(s sheetOfPaper) float64 {
		return s.bubble("liquid pressure") - s.v("liquid line")
	},
	"subcooling/line": func(s sheetOfPaper) float64 {
		return s.bubble("liquid pressure") - s.v("subcooling wanted")
	},
	"subcooling/pressure": func(s sheetOfPaper) float64 {
		return s.pressureAt(bubble, s.v("liquid line")+s.v("subcooling wanted"))
	},
	"subcooling/riser": func(s sheetOfPaper) float64 {
		p := s.v("liquid pressure") - s.v("pressure lost on the way up")
		return s.read(bubble, 0, s.listed(p)) - s.v("liquid line")
	},
	"altitude/superheat": func(s sheetOfPaper) float64 {
		return s.v("suction line") - s.read(dew, 0, s.v("suction pressure")-s.lowerBy())
	},
	"altitude/subcooling": func(s sheetOfPaper) float64 {
		return s.read(bubble, 0, s.v("liquid pressure")-s.lowerBy()) - s.v("liquid line")
	},
	"altitude/shown": func(s sheetOfPaper) float64 {
		return s.read(0, dew, s.v("boiling temperature wanted")) + s.lowerBy()
	},
	"altitude/absolute": func(s sheetOfPaper) float64 {
		return s.v("suction pressure") + s.v("atmosphere at the sea") - s.lowerBy()
	},
	"cycle/flow": func(s sheetOfPaper) float64 {
		h1, _, h4 := s.cycle()
		return s.v("heat taken up") * s.either(1, 1000) / (h1 - h4)
	},
	"cycle/condenser": func(s sheetOfPaper) float64 {
		h1, h2, h4 := s.cycle()
		return s.v("heat taken up") * (h2 - h4) / (h1 - h4)
	},
	"cycle/work": func(s sheetOfPaper) float64 {
		h1, h2, h4 := s.cycle()
		return s.v("heat taken up") / s.either(3412, 1) * (h2 - h1) / (h1 - h4)
	},
	"cycle/cop": func(s sheetOfPaper) float64 {
		h1, h2, h4 := s.cycle()
		return (h1 - h4) / (h2 - h1)
	},
	"target/read": func(s sheetOfPaper) float64 { return s.target() },
	"target/apart": func(s sheetOfPaper) float64 {
		return math.Abs(s.v("measured superheat") - s.target())
	},
	"air/wet-bulb": func(s sheetOfPaper) float64 {
		dry, wet := s.v("dry bulb"), s.v("wet bulb")
		ws := humidityRatio(s.read(0, 1, wet), s.v("atmosphere here"))
		if s.ip() {
			return 7000 * ((1093-0.556*wet)*ws - 0.240*(dry-wet)) / (1093 + 0.444*dry - wet)
		}
		return 1000 * ((2501-2.326*wet)*ws - 1.006*(dry-wet)) / (2501 + 1.86*dry - 4.186*wet)
	},
	"air/relative": func(s sheetOfPaper) float64 {
		pw := s.read(0, 1, s.v("dry bulb")) * s.v("relative humidity") / 100
		return s.whole() * humidityRatio(pw, s.v("atmosphere here"))
	},
	"air/dew-point": func(s sheetOfPaper) float64 {
		return s.whole() * humidityRatio(s.read(0, 1, s.v("dew point")), s.v("atmosphere here"))
	},
	"air/condenses": func(s sheetOfPaper) float64 {
		return s.read(1, 0, s.read(0, 1, s.v("dry bulb"))*s.v("relative humidity")/100)
	},
	"capacity/total": func(s sheetOfPaper) float64 {
		return s.airFactor() * s.v("airflow") * (s.entering() - s.leaving())
	},
	"capacity/airflow": func(s sheetOfPaper) float64 {
		return s.v("cooling capacity") / (s.airFactor() * (s.entering() - s.leaving()))
	},
	"capacity/leaving": func(s sheetOfPaper) float64 {
		return s.entering() - s.v("cooling capacity")/(s.airFactor()*s.v("airflow"))
	},
	"capacity/share": func(s sheetOfPaper) float64 {
		return 100 * s.airFactor() * s.v("airflow") * (s.entering() - s.leaving()) /
			s.v("capacity on the label")
	},
	"airflow/electric": func(s sheetOfPaper) float64 { return s.heat() / (s.factor() * s.rise()) },
	"airflow/furnace": func(s sheetOfPaper) float64 {
		return s.v("input") * s.either(1, 1000) * s.v("efficiency") / 100 / (s.factor() * s.rise())
	},
	"airflow/rise": func(s sheetOfPaper) float64 {
		return s.heat() / (s.factor() * s.v("airflow"))
	},
	"airflow/per-ton": func(s sheetOfPaper) float64 {
		return s.v("airflow") / (s.v("capacity on the label") / s.either(12000, 1))
	},
	"recovery/absolute": func(s sheetOfPaper) float64 {
		return s.v("standard atmosphere") - s.vacuumAsked()
	},
	"recovery/more": func(s sheetOfPaper) float64 { return s.vacuumAsked() - s.v("vacuum now") },
	"recovery/mountain": func(s sheetOfPaper) float64 {
		return s.v("atmosphere here") - (s.v("standard atmosphere") - s.vacuumAsked())
	},
	"cylinder/net": func(s sheetOfPaper) float64 { return s.safeFill() },
	"cylinder/gross": func(s sheetOfPaper) float64 {
		return s.safeFill() + s.v("tare stamped (TW)")
	},
	"cylinder/room": func(s sheetOfPaper) float64 {
		return s.safeFill() + s.v("tare stamped (TW)") - s.v("the scale shows")
	},
	"cylinder/stays": func(s sheetOfPaper) float64 {
		return s.v("charge to be recovered") - s.safeFill()
	},
	"evacuation/rate": func(s sheetOfPaper) float64 {
		r := s.p.Tables[0].Rows
		first, last := r[0], r[len(r)-1]
		return (figure(last[1]) - figure(first[1])) / (figure(last[0]) - figure(first[0]))
	},
	"evacuation/until": func(s sheetOfPaper) float64 {
		per := (s.v("vacuum gauge then") - s.v("vacuum gauge at first")) / s.v("time between")
		from := s.v("vacuum gauge then")
		if strings.Contains(s.p.Ask, "from the first reading") {
			from = s.v("vacuum gauge at first")
		}
		return (s.v("limit of the test") - from) / per
	},
	"evacuation/boils": func(s sheetOfPaper) float64 { return s.read(1, 0, s.v("vacuum gauge")) },
	"nitrogen/expected": func(s sheetOfPaper) float64 {
		a := s.v("atmosphere here")
		return (s.v("gauge at the start")+a)*s.hot("gas at the end")/s.hot("gas at the start") - a
	},
	"nitrogen/missing": func(s sheetOfPaper) float64 {
		a := s.v("atmosphere here")
		return (s.v("gauge at the start")+a)*s.hot("gas at the end")/s.hot("gas at the start") - a -
			s.v("gauge at the end")
	},
	"nitrogen/highest": func(s sheetOfPaper) float64 {
		a := s.v("atmosphere here")
		return (s.v("test pressure not to be passed")+a)*s.hot("gas at the start")/
			s.hot("gas at the end") - a
	},
	"weighin/total": func(s sheetOfPaper) float64 { return s.v("charge on the label") + s.line() },
	"weighin/extra": func(s sheetOfPaper) float64 { return s.line() },
	"weighin/short": func(s sheetOfPaper) float64 { return s.v("charge on the label") + s.line() },
	"weighin/scale": func(s sheetOfPaper) float64 {
		return s.v("the scale under the cylinder shows") - s.v("charge on the label") - s.line()
	},
	"rules/wait": func(s sheetOfPaper) float64 {
		return max(s.v("least running time before a reading")-s.v("running since"),
			s.v("least time after refrigerant was moved")-s.v("refrigerant moved"))
	},
	"compression/ratio": func(s sheetOfPaper) float64 {
		return s.ratio("suction pressure", "discharge pressure")
	},
	"compression/discharge": func(s sheetOfPaper) float64 {
		a := s.v("atmosphere here")
		return s.v("compression ratio")*(s.v("suction pressure")+a) - a
	},
	"compression/suction": func(s sheetOfPaper) float64 {
		a := s.v("atmosphere here")
		return (s.v("discharge pressure")+a)/s.v("compression ratio") - a
	},
	"compression/rise": func(s sheetOfPaper) float64 {
		return s.ratio("suction pressure", "discharge pressure now") -
			s.ratio("suction pressure", "discharge pressure")
	},
	"efficiency/ratio": func(s sheetOfPaper) float64 {
		return s.v("cooling capacity") / s.power()
	},
	"efficiency/power": func(s sheetOfPaper) float64 {
		return s.v("cooling capacity") / s.v("efficiency")
	},
	"efficiency/capacity": func(s sheetOfPaper) float64 { return s.v("efficiency") * s.power() },
	"efficiency/season": func(s sheetOfPaper) float64 {
		kw := s.power()
		if strings.Contains(s.p.Ask+s.p.Statement, "EER") {
			kw /= 1000
		}
		return kw * s.v("running in a season") *
			(1 - s.v("efficiency")/s.v("efficiency of the new machine"))
	},
	"mixing/temperature": func(s sheetOfPaper) float64 {
		return s.mix("outdoor air", "return air, dry bulb")
	},
	"mixing/humidity": func(s sheetOfPaper) float64 {
		return s.mix("water in the outdoor air", "water in the return air")
	},
	"mixing/share": func(s sheetOfPaper) float64 { return 100 * s.share() },
	"mixing/flow":  func(s sheetOfPaper) float64 { return s.v("airflow in all") * s.share() },
	"coil/ratio":   func(s sheetOfPaper) float64 { return s.sensible() / s.v("total capacity") },
	"coil/latent":  func(s sheetOfPaper) float64 { return s.v("total capacity") - s.sensible() },
	"coil/bypass": func(s sheetOfPaper) float64 {
		surface := s.v("coil surface (apparatus dew point)")
		return 100 * (s.v("air leaving, dry bulb") - surface) /
			(s.v("air entering, dry bulb") - surface)
	},
	"coil/leaving": func(s sheetOfPaper) float64 {
		surface := s.v("coil surface (apparatus dew point)")
		return surface + s.v("bypass factor")/100*(s.v("air entering, dry bulb")-surface)
	},
	"condensate/rate": func(s sheetOfPaper) float64 { return s.water() },
	"condensate/fall": func(s sheetOfPaper) float64 {
		return s.v("condensate") * s.whole() / s.dryAir()
	},
	"condensate/bucket": func(s sheetOfPaper) float64 {
		return s.v("the bucket holds") / s.water()
	},
	"condensate/latent": func(s sheetOfPaper) float64 {
		return s.water() * s.v("heat that condensing gives off") / s.either(1, 3600)
	},
	"static/external": func(s sheetOfPaper) float64 { return s.external() },
	"static/left": func(s sheetOfPaper) float64 {
		return s.v("most on the label") - s.external()
	},
	"static/share": func(s sheetOfPaper) float64 {
		return -100 * s.v("return side of the blower box") / s.external()
	},
	"static/filter": func(s sheetOfPaper) float64 {
		r := s.v("airflow") / s.v("airflow of the filter's label")
		return s.v("drop of the clean filter at that") * r * r *
			(1 + s.or("loaded as it is, it drops more than a clean one by", 0)/100)
	},
	"split/target": func(s sheetOfPaper) float64 { return s.split() },
	"split/apart": func(s sheetOfPaper) float64 {
		return math.Abs(s.v("return air, dry bulb") - s.v("supply air") - s.split())
	},
	"split/supply": func(s sheetOfPaper) float64 { return s.v("return air, dry bulb") - s.split() },
	"standing/expected": func(s sheetOfPaper) float64 {
		return s.pressureAt(bubble, s.v("coil and cabinet, soaked"))
	},
	"standing/partial": func(s sheetOfPaper) float64 {
		return s.v("gauge, machine off") - s.pressureAt(bubble, s.v("coil and cabinet, soaked"))
	},
	"standing/degrees": func(s sheetOfPaper) float64 {
		return s.bubble("gauge, machine off") - s.v("coil and cabinet, soaked")
	},
	"blend-leak/left": func(s sheetOfPaper) float64 {
		lost := s.v("share of the charge that is lost")
		return s.v("charge on the label") * (1 - lost/100) * s.read(0, s.component(), lost) / 100
	},
	"blend-leak/pressure": func(s sheetOfPaper) float64 {
		head := s.p.Tables[0].Head
		return figure(s.p.Tables[0].Rows[0][len(head)-2]) - s.lostRow(2)
	},
	"blend-leak/shift": func(s sheetOfPaper) float64 {
		return s.v("superheat by the table of the fresh blend") - s.lostRow(1)
	},
	"safety/most": func(s sheetOfPaper) float64 {
		return s.read(0, 1, s.or("floor of the room",
			s.v("one side of the room")*s.v("other side of the room")))
	},
	"safety/floor": func(s sheetOfPaper) float64 {
		return s.read(1, 0, s.v("charge of the circuit"))
	},
	"safety/least": func(s sheetOfPaper) float64 {
		volume := s.v("volume for group 2L")
		for _, g := range s.p.Given {
			if g.Name == "safety group" && g.Value == "A3" {
				volume = s.v("volume for groups 2 and 3")
			}
		}
		free := volume * s.v("lower limit of flammability")
		if c := s.v("charge of the circuit"); !math.IsNaN(c) {
			return c - free
		}
		return free
	},
	"heating/capacity": func(s sheetOfPaper) float64 {
		return s.factor() * s.v("airflow") * s.rise() * s.either(1, 1e-3)
	},
	"heating/cop": func(s sheetOfPaper) float64 {
		return s.v("heat to the house") / s.either(3412, 1) / s.power()
	},
	"heating/auxiliary": func(s sheetOfPaper) float64 {
		loss := s.or("loss of the house", s.v("loss of the house for each degree")*
			(s.v("return air, dry bulb")-s.v("outdoor air")))
		return (loss - s.read(0, 1, s.v("outdoor air"))) / s.either(3412, 1)
	},
	"heating/frost": func(s sheetOfPaper) float64 {
		return s.v("frost that gathers while it runs") * s.v("from one defrost to the next") / 60 *
			s.or("share of that time in which it runs", 100) / 100 * s.v("heat to melt ice")
	},
	"refrigeration/superheat": func(s sheetOfPaper) float64 {
		return s.v("suction line at the bulb of the valve") - s.dew("suction pressure")
	},
	"refrigeration/difference": func(s sheetOfPaper) float64 {
		return s.v("air of the cold room") - s.dew("suction pressure")
	},
	"refrigeration/pressure": func(s sheetOfPaper) float64 {
		return s.pressureAt(dew,
			s.v("cold room wanted at")-s.v("room over boiling temperature, usual here"))
	},
	"refrigeration/room": func(s sheetOfPaper) float64 {
		return s.dew("suction pressure") + s.v("room over boiling temperature, usual here")
	},
	"capacitor/load": func(s sheetOfPaper) float64 { return s.microfarads() },
	"capacitor/percent": func(s sheetOfPaper) float64 {
		return 100 * s.microfarads() / s.v("capacitor, on its case")
	},
	"capacitor/current": func(s sheetOfPaper) float64 {
		return s.amperes(s.v("capacitor, on its case"))
	},
	"capacitor/least": func(s sheetOfPaper) float64 {
		return s.amperes(s.v("capacitor, on its case") *
			(1 - s.v("tolerance on its case, either way")/100))
	},
	"wire/drop": func(s sheetOfPaper) float64 { return s.lostPer() * s.v(wayThere) },
	"wire/percent": func(s sheetOfPaper) float64 {
		return 100 * s.lostPer() * s.v(wayThere) / s.v("voltage at the panel")
	},
	"wire/longest": func(s sheetOfPaper) float64 {
		return s.v("voltage at the panel") * s.v("most that may be lost") / 100 / s.lostPer()
	},
	"wire/at-motor": func(s sheetOfPaper) float64 {
		return s.v("voltage at the panel") - s.lostPer()*s.v(wayThere)
	},
	"phases/voltage": func(s sheetOfPaper) float64 {
		mean, off := s.lines()
		return 100 * off / mean
	},
	"phases/current": func(s sheetOfPaper) float64 {
		mean, off := s.phases("line 1", "line 2", "line 3")
		return 100 * off / mean
	},
	"phases/deviation": func(s sheetOfPaper) float64 {
		_, off := s.lines()
		return off
	},
	"phases/derated": func(s sheetOfPaper) float64 {
		mean, off := s.lines()
		return s.v("power of the motor on its nameplate") * s.read(0, 1, 100*off/mean)
	},
}

// doseByHand goes on at the rate of the first dose.
func doseByHand(s sheetOfPaper) float64 {
	per := (s.v("after") - s.v("before")) / s.v("first dose")
	return (s.v("target")-s.v("after"))/per - s.or("moved since, not yet settled", 0)
}

// A student who has nothing but the print finds every number of the key.
func TestThePrintIsEnough(t *testing.T) {
	solved := 0
	for _, o := range styles {
		for o.Difficulty = 1; o.Difficulty <= 3; o.Difficulty++ {
			for o.Seed = 50; o.Seed < 53; o.Seed++ {
				o.PerTopic = 4
				for _, p := range mustGenerate(t, o).Problems {
					if p.Answer.Words {
						continue
					}
					solve := byHand[p.Topic+"/"+p.Form]
					if p.Topic == "dosing" {
						solve = doseByHand
					}
					if solve == nil {
						t.Fatalf("%s/%s is not solved by hand", p.Topic, p.Form)
					}
					found := solve(sheetOfPaper{t, p})
					if !(math.Abs(found-p.Answer.Value) <= p.Answer.Within) {
						t.Errorf("%s/%s: the print gives %g where the key has %s within %g: %s "+
							"%v %v",
							p.Topic, p.Form, found, p.Answer.Text, p.Answer.Within, p.Statement,
							p.Given, p.Tables)
					}
					solved++
				}
			}
		}
	}
	t.Logf("%d answers found from the print alone", solved)
}
