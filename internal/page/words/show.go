package words

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/internal/base/visible"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// show writes a value as it stands inside a sentence.
func (b *Book) show(v any) string {
	switch v := v.(type) {
	case string:
		return visible.Line(v)
	case int:
		return fmt.Sprint(v)
	case fact.Term:
		return b.Term(string(v))
	case fact.Terms:
		return b.list(v)
	case fact.Share:
		return b.share(float64(v))
	case fact.Times:
		return b.decimal(fmt.Sprintf("%.1f:1", float64(v)))
	case time.Duration:
		return span(v)
	case quantity.Mass:
		return b.mass(v)
	case quantity.Uncertain[quantity.Mass]:
		if v.Std > 0 {
			return b.mass(v.Value) + " ± " + b.mass(quantity.Mass(v.Std))
		}
		return b.mass(v.Value)
	case quantity.GaugePressure:
		if b.units == quantity.IP && v < 0 { // as a compound gauge shows it
			return v.Styled(quantity.Style{Comma: b.comma}.In("inHg vac", 1))
		}
		return v.Styled(quantity.Style{System: b.units, Comma: b.comma})
	case interface{ Styled(quantity.Style) string }:
		return v.Styled(quantity.Style{System: b.units, Comma: b.comma})
	}
	return fmt.Sprint(v)
}

// mass writes one as a charging scale shows it.
func (b *Book) mass(m quantity.Mass) string {
	if b.units == quantity.IP && m >= quantity.Pounds(1) {
		pounds := math.Floor(m.Pounds() + 1e-3)
		ounces := math.Max(0, (m - quantity.Pounds(pounds)).Ounces())
		return b.decimal(fmt.Sprintf("%.0f lb %.1f oz", pounds, ounces))
	}
	return m.Styled(quantity.Style{System: b.units, Comma: b.comma})
}

// Reading writes a reading by its name in a visit. Electric power is in kilowatts in every
// system of units, other than heat.
func (b *Book) Reading(name string, v any) string {
	if p, ok := v.(interface{ Styled(quantity.Style) string }); ok && name == "power" {
		return p.Styled(quantity.Style{System: b.units, Comma: b.comma}.In("kW", 2))
	}
	return b.show(v)
}

// share writes a chance or a part in per cent. Nothing that a field instrument says is
// certain, or impossible.
func (b *Book) share(p float64) string {
	switch {
	case p < 0.01 && p >= 0:
		return b.Term("share.below-one")
	case p > 0.99:
		return b.Term("share.above-99")
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

// span writes a time as it is read from a watch or a calendar.
func span(d time.Duration) string {
	switch {
	case d < 2*time.Minute && d != time.Minute:
		return fmt.Sprintf("%.0f s", d.Seconds())
	case d < 3*time.Hour:
		return fmt.Sprintf("%.0f min", math.Ceil(d.Minutes()))
	case d < 72*time.Hour:
		return fmt.Sprintf("%.0f h", d.Hours())
	}
	return fmt.Sprintf("%.0f d", d.Hours()/24)
}

func (b *Book) list(terms fact.Terms) string {
	var out string
	for i, t := range terms {
		switch {
		case i == 0:
		case i == len(terms)-1:
			out += " " + b.Term("list.and") + " "
		default:
			out += ", "
		}
		out += b.Term(string(t))
	}
	return out
}
