package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/satline/satline/internal/base/visible"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// show appends a value as it stands inside a sentence.
func (b *Book) show(out []byte, v any) []byte {
	switch v := v.(type) {
	case string:
		return append(out, visible.Line(v)...)
	case int:
		return strconv.AppendInt(out, int64(v), 10)
	case fact.Term:
		return b.term(out, string(v))
	case fact.Terms:
		return b.list(out, v, b.Term("list.and"))
	case fact.Share:
		return b.share(out, float64(v))
	case fact.Times:
		return append(out, b.Decimal(fmt.Sprintf("%.1f:1", float64(v)))...)
	case fact.Number:
		return append(out, b.Decimal(strconv.FormatFloat(float64(v), 'f', 1, 64))...)
	case time.Duration:
		return append(out, span(v)...)
	case quantity.Mass:
		return b.mass(out, v)
	case quantity.Uncertain[quantity.Mass]:
		if out = b.mass(out, v.Value); v.Std > 0 {
			out = b.mass(append(out, " ± "...), quantity.Mass(v.Std))
		}
		return out
	case quantity.GaugePressure:
		if b.units == quantity.IP && v < 0 { // as a compound gauge shows it
			return v.AppendStyled(out, quantity.Style{Comma: b.comma}.In("inHg vac", 1))
		}
		return v.AppendStyled(out, b.style())
	case styled:
		return v.AppendStyled(out, b.style())
	}
	return fmt.Append(out, v)
}

// styled is a quantity, with its uncertainty or without.
type styled interface {
	AppendStyled([]byte, quantity.Style) []byte
}

func (b *Book) style() quantity.Style { return quantity.Style{System: b.units, Comma: b.comma} }

// mass appends one as a charging scale shows it.
func (b *Book) mass(out []byte, m quantity.Mass) []byte {
	if b.units == quantity.IP && m >= quantity.Pounds(1) {
		pounds := math.Floor(m.Pounds() + 1e-3)
		ounces := math.Max(0, (m - quantity.Pounds(pounds)).Ounces())
		return append(out, b.Decimal(fmt.Sprintf("%.0f lb %.1f oz", pounds, ounces))...)
	}
	return m.AppendStyled(out, b.style())
}

// Reading writes a value by its name, as in a visit or a table: "power", "reading.power". Electric
// power is in kilowatts in every system of units, other than heat.
func (b *Book) Reading(name string, v any) string { return string(b.reading(nil, name, v)) }

func (b *Book) reading(out []byte, name string, v any) []byte {
	p, ok := v.(styled)
	if ok && name[strings.LastIndexByte(name, '.')+1:] == "power" {
		return p.AppendStyled(out, b.style().In("kW", 2))
	}
	return b.show(out, v)
}

// share appends a chance or a part in per cent. Nothing that a field instrument says is
// certain, or impossible.
func (b *Book) share(out []byte, p float64) []byte {
	switch {
	case p < 0.01 && p >= 0:
		return b.term(out, "share.below-one")
	case p > 0.99:
		return b.term(out, "share.above-99")
	}
	return append(strconv.AppendFloat(out, 100*p, 'f', 0, 64), " %"...)
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

func (b *Book) list(out []byte, terms fact.Terms, joint string) []byte {
	for i, t := range terms {
		switch {
		case i == 0:
		case i == len(terms)-1:
			out = append(append(append(out, ' '), joint...), ' ')
		default:
			out = append(out, ", "...)
		}
		out = b.term(out, string(t))
	}
	return out
}
