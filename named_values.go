package satline

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// A NamedValue is a derived value to show: its name in the trade, and its text
// with unit and standard uncertainty.
type NamedValue struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Values lists the derived values that are there, in the order a technician
// works them out, in one system of units.
func (d Derived) Values(sys quantity.System) []NamedValue {
	var out []NamedValue
	add := func(name, text string) {
		if text != "" {
			out = append(out, NamedValue{name, text})
		}
	}
	add("evaporating temperature (dew)", shown(d.EvaporatingDew, sys))
	add("condensing temperature (bubble)", shown(d.CondensingBubble, sys))
	add("superheat", shown(d.Superheat, sys))
	add("subcooling", shown(d.Subcooling, sys))
	add("condensing over outdoor air", shown(d.CondensingOverOutdoor, sys))
	add("approach, liquid over outdoor air", shown(d.Approach, sys))
	if d.CompressionRatio != nil {
		add("compression ratio", fmt.Sprintf("%.2f ± %.2f", *d.CompressionRatio, d.CompressionRatioStd))
	}
	add("temperature split", shown(d.TemperatureSplit, sys))
	if d.ReturnHumidity != nil {
		add("return relative humidity", fmt.Sprintf("%.0f %% ± %.0f %%", 100**d.ReturnHumidity, 100*d.ReturnHumidityStd))
	}
	add("total capacity", shown(d.TotalCapacity, sys))
	add("sensible capacity", shown(d.SensibleCapacity, sys))
	add("latent capacity", shown(d.LatentCapacity, sys))
	if d.SensibleHeatRatio != nil {
		add("sensible heat ratio", fmt.Sprintf("%.2f ± %.2f", *d.SensibleHeatRatio, d.SensibleHeatRatioStd))
	}
	add("condensate", shown(d.Condensate, sys))
	if e := d.Efficiency; e != nil {
		add("efficiency today", fmt.Sprintf("EER %.1f ± %.1f Btu/h per W, COP %.2f ± %.2f", e.EER, e.EERStd, e.COP, e.COPStd))
	}
	return out
}

func shown[T quantity.Quantity](u *quantity.Uncertain[T], sys quantity.System) string {
	if u == nil {
		return ""
	}
	return u.Format(sys)
}
