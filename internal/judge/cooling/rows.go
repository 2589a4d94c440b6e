package cooling

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// ways are what is done about the conditions that spoil the readings.
var ways = map[string]fact.Code{
	"fluid-no-liquid-in-summer": modes.MakersChart,
	"fluid-in-vacuum":           modes.MakersChart,
	"fluid-toxic-indoors":       modes.MakersChart,
	"coil-iced":                 modes.Thaw,
	"panels-off":                modes.PanelsOn,
	"run-short":                 modes.RunOn,
	"just-moved":                modes.Wait,
	"coil-wet":                  modes.DryCoil,
	"condenser-fan-cycling":     modes.HoldFan,
	"economizer-open":           modes.CloseDamper,
	"doors-open":                modes.CloseDoors,
	"outdoor-cold":              modes.WarmerDay,
	"house":                     modes.HouseRule,
}

// cleans is what takes away the dirt of a cause.
var cleans = map[diagnose.Code]fact.Code{
	diagnose.LowIndoorAir: modes.CleanFilter,
	diagnose.CondenserAir: modes.CleanOutdoor,
}

// secures is what is looked at, with the machine stopped, about a danger.
var secures = map[string][]fact.Code{
	"condensing-highest":        {modes.OutdoorFan, modes.OutdoorCoil},
	"suction-in-vacuum":         {modes.OpenValves},
	"compression-ratio-highest": {modes.OpenValves},
	"current-highest":           {modes.Voltage},
}

// asides are the looks that stand behind a reading below, or above, what its label asks for, in
// their order.
var asides = map[charge.Method]struct{ below, above []string }{
	charge.Superheat:  {[]string{airLook}, []string{"suction-clamp-second", "oil-and-leak"}},
	charge.Subcooling: {[]string{"oil-and-leak"}, []string{"liquid-clamp-second", "outdoor-coil"}},
	charge.Approach:   {[]string{"liquid-clamp-second"}, []string{"outdoor-coil", "oil-and-leak"}},
}

// secured is the cause that the steps of secures look for.
var secured = map[string]diagnose.Code{"condensing-highest": diagnose.CondenserAir}
