package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A lookup answers one question without a visit.
type lookup struct {
	takes  string // what it is given, as in the line that helps
	values int
	answer func(args []string, at place) (fact.Fact, error)
}

// A place is where a question is asked, and in which units it is answered.
type place struct {
	atmosphere quantity.Pressure
	units      quantity.System
}

var lookups = map[string]lookup{
	"saturation": {`REFRIGERANT "118 psig" | "52 °F"`, 2, saturation},
	"superheat":  {`REFRIGERANT SUCTION-PRESSURE SUCTION-LINE`, 3, superheat},
	"subcooling": {`REFRIGERANT LIQUID-PRESSURE LIQUID-LINE`, 3, subcooling},
	"target":     {`OUTDOOR-DRY-BULB RETURN-WET-BULB, of a fixed restrictor`, 2, target},
	"air":        {`DRY-BULB WET-BULB | "50 %"`, 2, air},
}

// belowZero tells values below zero from flags, by a minus sign in the place of the hyphen.
func belowZero(args []string) []string {
	out := slices.Clone(args)
	for i, a := range out {
		if len(a) > 1 && a[0] == '-' && a[1] >= '0' && a[1] <= '9' {
			out[i] = "\u2212" + a[1:]
		}
	}
	return out
}

// lookUp answers by name; flags may stand before and behind the values.
func lookUp(name string, args []string) (string, error) {
	l := lookups[name]
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	units := flags.String("units", "IP", "IP or SI")
	spoken := flags.String("language", "en", "language of the answer")
	elevation := flags.String("elevation", "", "of the site, as in \"5280 ft\"")
	var values []string
	for rest := belowZero(args); ; {
		if err := flags.Parse(rest); err != nil {
			return "", fmt.Errorf("%s: %w", name, err)
		}
		if rest = flags.Args(); len(rest) == 0 {
			break
		}
		values, rest = append(values, rest[0]), rest[1:]
		if len(rest) == 0 {
			break
		}
		if err := flags.Parse(rest); err != nil {
			return "", fmt.Errorf("%s: %w", name, err)
		}
	}
	if len(values) != l.values {
		return "", fmt.Errorf(
			"%s takes %s [-elevation \"5280 ft\"] [-units SI] [-language es]; the look-ups are %s",
			name, l.takes, strings.Join(slices.Sorted(maps.Keys(lookups)), ", "),
		)
	}
	var system quantity.System
	if err := system.UnmarshalText([]byte(*units)); err != nil {
		return "", fmt.Errorf("-units: %w", err)
	}
	atmosphere := quantity.StandardAtmosphere
	if *elevation != "" {
		h, err := quantity.ParseLength(*elevation)
		if err != nil {
			return "", fmt.Errorf("-elevation: %w", err)
		}
		at, err := satline.Site{Elevation: &h}.Atmosphere()
		if err != nil {
			return "", fmt.Errorf("-elevation: %w", err)
		}
		atmosphere = at.Pressure.Value
	}
	f, err := l.answer(values, place{atmosphere, system})
	if err != nil {
		return "", fmt.Errorf("%s: %w", name, err)
	}
	return satline.Say(f, satline.Language(*spoken), system) + "\n", nil
}

// saturation answers a pressure with temperatures, and a temperature with pressures.
func saturation(args []string, at place) (fact.Fact, error) {
	r, err := refrigerant.Lookup(args[0])
	if err != nil {
		return fact.Fact{}, err
	}
	fluid := fact.Of("fluid", r.Designation())
	if t, err := quantity.ParseTemperature(args[1]); err == nil {
		bubble, err := r.BubblePressure(t)
		if err != nil {
			return fact.Fact{}, err
		}
		dew, err := r.DewPressure(t)
		return fact.New("lookup.at-temperature", fluid, fact.Amount("at", t),
			fact.Amount("bubble", bubble.Gauge(at.atmosphere)), fact.Amount("dew",
				dew.Gauge(at.atmosphere))), err
	}
	p, err := quantity.ParseGaugePressure(args[1])
	if err != nil {
		return fact.Fact{}, fmt.Errorf(
			"%q is neither a gauge pressure nor a temperature; "+
				"write one as in \"118 psig\" or \"52 °F\"", args[1],
		)
	}
	bubble, err := r.BubbleTemperature(p.Absolute(at.atmosphere))
	if err != nil {
		return fact.Fact{}, err
	}
	dew, err := r.DewTemperature(p.Absolute(at.atmosphere))
	return fact.New("lookup.at-pressure", fluid, fact.Amount("at", p),
		fact.Amount("bubble", bubble), fact.Amount("dew", dew)), err
}

// line reads refrigerant, gauge pressure and line temperature.
func line(args []string) (r *refrigerant.Refrigerant, p quantity.GaugePressure,
	t quantity.Temperature, err error) {
	r, err = refrigerant.Lookup(args[0])
	if err == nil {
		p, err = quantity.ParseGaugePressure(args[1])
	}
	if err == nil {
		t, err = quantity.ParseTemperature(args[2])
	}
	return r, p, t, err
}

func superheat(args []string, at place) (fact.Fact, error) {
	r, p, t, err := line(args)
	if err != nil {
		return fact.Fact{}, err
	}
	dew, err := r.DewTemperature(p.Absolute(at.atmosphere))
	return fact.New("lookup.superheat", fact.Amount("superheat", t.Sub(dew)),
		fact.Amount("dew", dew)), err
}

func subcooling(args []string, at place) (fact.Fact, error) {
	r, p, t, err := line(args)
	if err != nil {
		return fact.Fact{}, err
	}
	bubble, err := r.BubbleTemperature(p.Absolute(at.atmosphere))
	return fact.New("lookup.subcooling", fact.Amount("subcooling", bubble.Sub(t)),
		fact.Amount("bubble", bubble)), err
}

func target(args []string, _ place) (fact.Fact, error) {
	outdoor, err := quantity.ParseTemperature(args[0])
	if err != nil {
		return fact.Fact{}, err
	}
	wetBulb, err := quantity.ParseTemperature(args[1])
	if err != nil {
		return fact.Fact{}, err
	}
	t, err := charge.SuperheatTarget(nil, wetBulb.PlusMinus(0), outdoor.PlusMinus(0))
	if err != nil {
		return fact.Fact{}, err
	}
	return fact.New("lookup.target", fact.Amount("target", t.Value.Value),
		fact.Amount("tolerance", t.Tolerance)), nil
}

func air(args []string, at place) (fact.Fact, error) {
	dryBulb, err := quantity.ParseTemperature(args[0])
	if err != nil {
		return fact.Fact{}, err
	}
	var a psychro.Air
	wetBulb, notWetBulb := quantity.ParseTemperature(args[1])
	humidity, notHumidity := quantity.ParseRatio(args[1])
	switch {
	case notWetBulb == nil:
		a, err = psychro.FromWetBulb(dryBulb, wetBulb, at.atmosphere)
	case notHumidity == nil:
		a, err = psychro.FromRelativeHumidity(dryBulb, float64(humidity), at.atmosphere)
	default:
		err = errors.New(
			"the second value is a wet bulb, as in \"63 °F\", or a humidity, as in \"50 %\"",
		)
	}
	if err != nil {
		return fact.Fact{}, err
	}
	enthalpy := a.EnthalpyIP() // the two systems count from different zeros
	if at.units == quantity.SI {
		enthalpy = a.Enthalpy()
	}
	return fact.New("lookup.air", fact.Amount("dryBulb", dryBulb),
		fact.Amount("wetBulb", a.WetBulb()),
		fact.Amount("dewPoint", a.DewPoint()), fact.Of("humidity",
			fact.Share(a.RelativeHumidity())),
		fact.Amount("enthalpy", enthalpy), fact.Amount("density", a.Density())), nil
}
