package satline

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/satline/satline/quantity"
)

// textWidth fits a terminal of 80 columns and a phone held sideways.
const textWidth = 78

// WriteText writes the assessment as plain text for a person, in the units of
// the visit. The error is the writer's.
func (a Assessment) WriteText(w io.Writer) error {
	_, err := io.WriteString(w, a.Text())
	return err
}

// Text returns what WriteText writes.
func (a Assessment) Text() string {
	var t textWriter
	t.title(a)
	t.section("Verdict")
	t.paragraph("", a.Headline)
	t.bullets(a.Charge.Reasons)
	if len(a.Charge.Instead) > 0 {
		t.paragraph("", "Instead:")
		t.bullets(a.Charge.Instead)
	}

	t.section("Do next")
	for i, s := range a.Next {
		t.paragraph(fmt.Sprintf("%d. ", i+1), s.Do)
		if s.Why != "" {
			t.paragraph("   ", "Why: "+s.Why)
		}
	}
	if a.Settle != nil {
		t.paragraph("One reading that would settle most: ", a.Settle.Take)
		t.paragraph("   ", a.Settle.Why)
		t.bullets(a.Settle.Outcomes)
	}

	if len(a.Risks) > 0 {
		t.section("Danger to the compressor")
		for _, r := range a.Risks {
			t.paragraph("! ", r.Text)
			t.paragraph("  ", r.Why)
			t.paragraph("  ", "Now: "+r.Do)
		}
	}

	t.section("Readings")
	for _, r := range a.Readings {
		belief := string(r.Belief)
		if r.Settled {
			belief += ", settled"
		}
		t.row(r.Name, r.Value, belief)
	}
	for _, d := range a.Doubts {
		t.paragraph("? ", d.Text)
		t.paragraph("  ", "Look: "+d.Mend)
	}

	t.section("What follows from them")
	for _, d := range a.Derived.rows(a.Units) {
		t.row(d.name, d.value, "")
	}
	if a.Air != nil {
		t.section("Air side")
		t.bullets(a.Air.Reasons)
	}
	if len(a.Findings) > 0 {
		t.section("What it may be")
		for _, f := range a.Findings {
			t.paragraph(fmt.Sprintf("%3.0f %%  ", 100*f.Probability), f.Cause)
			for _, s := range f.For {
				t.paragraph("         + ", s)
			}
			for _, s := range f.Against {
				t.paragraph("         - ", s)
			}
			if f.Do != "" {
				t.paragraph("         > ", f.Do)
			}
		}
	}
	t.section("Be careful")
	t.bullets(a.Cautions)
	if a.Notes != "" {
		t.section("Notes")
		t.paragraph("", a.Notes)
	}
	return t.b.String()
}

type textWriter struct{ b strings.Builder }

func (t *textWriter) title(a Assessment) {
	if a.Title != "" {
		t.b.WriteString(a.Title + "\n")
	}
	fmt.Fprintf(&t.b, "%s (safety group %s), atmosphere %s (%s)\n", a.Refrigerant.Designation, a.Refrigerant.SafetyGroup,
		a.Atmosphere.Pressure.Value.Format(a.Units), a.Atmosphere.Source)
	if a.Refrigerant.Estimated != "" {
		t.paragraph("", "Properties are an estimate: "+a.Refrigerant.Estimated)
	}
}

func (t *textWriter) section(name string) {
	t.b.WriteString("\n" + strings.ToUpper(name) + "\n")
}

func (t *textWriter) row(name, value, remark string) {
	line := "  " + padTo(name, 34) + padTo(value, 26) + remark
	t.b.WriteString(strings.TrimRight(line, " ") + "\n")
}

func (t *textWriter) bullets(items []string) {
	for _, s := range items {
		t.paragraph("  - ", s)
	}
}

// paragraph wraps text behind a lead; later lines are indented to match it.
func (t *textWriter) paragraph(lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line, room := lead, false
	for _, word := range strings.Fields(text) {
		if room && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > textWidth {
			t.b.WriteString(line + "\n")
			line, room = indent, false
		}
		if room {
			line += " "
		}
		line, room = line+word, true
	}
	t.b.WriteString(line + "\n")
}

func padTo(s string, width int) string {
	return s + strings.Repeat(" ", max(1, width-utf8.RuneCountInString(s)))
}

type derivedRow struct{ name, value string }

// rows lists the derived values that are there, in the order a technician
// works them out.
func (d Derived) rows(sys quantity.System) []derivedRow {
	var out []derivedRow
	add := func(name, value string) {
		if value != "" {
			out = append(out, derivedRow{name, value})
		}
	}
	add("evaporating temperature (dew)", shown(d.EvaporatingDew, sys))
	add("condensing temperature (bubble)", shown(d.CondensingBubble, sys))
	add("superheat", shown(d.Superheat, sys))
	add("subcooling", shown(d.Subcooling, sys))
	add("condensing over outdoor air", shown(d.CondensingOverOutdoor, sys))
	add("approach (liquid over outdoor air)", shown(d.Approach, sys))
	if d.CompressionRatio != nil {
		add("compression ratio", fmt.Sprintf("%.2f", *d.CompressionRatio))
	}
	add("temperature split", shown(d.TemperatureSplit, sys))
	if d.ReturnHumidity != nil {
		add("return relative humidity", fmt.Sprintf("%.0f %%", 100**d.ReturnHumidity))
	}
	add("total capacity", shown(d.TotalCapacity, sys))
	add("sensible capacity", shown(d.SensibleCapacity, sys))
	add("latent capacity", shown(d.LatentCapacity, sys))
	return out
}

func shown[T quantity.Quantity](u *quantity.Uncertain[T], sys quantity.System) string {
	if u == nil {
		return ""
	}
	return u.Format(sys)
}
