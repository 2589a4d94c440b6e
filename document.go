package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/internal/normal"
)

// Audience is whom a report is written for.
type Audience int

// The audiences.
const (
	// Technician: at the machine, now. What to do comes before the numbers.
	Technician Audience = iota
	// File: the technical record, with every number and its source.
	File
	// Owner: the person who pays, in plain language.
	Owner
)

var audienceNames = []string{"", "technician", "file", "owner"}

// String returns "technician", "file" or "owner".
func (a Audience) String() string { return nameOf(audienceNames, int(a)+1) }

// MarshalText implements encoding.TextMarshaler.
func (a Audience) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads "technician", "file" or "owner", which makes an Audience a
// flag.TextVar.
func (a *Audience) UnmarshalText(text []byte) error {
	i, err := indexOf("audience", audienceNames, text)
	if err == nil {
		*a = Audience(i - 1)
	}
	return err
}

// A document is a report before it has a format.
type document struct {
	title  string
	lines  []string // under the title
	blocks []block
}

// A block is a section of a document. Its parts are written in this order.
type block struct {
	heading    string
	paragraphs []string
	table      *table
	items      []item
	numbered   bool
	pictures   []Picture
}

// An item is a line of a list with lines below it.
type item struct {
	text  string
	below []string
}

type table struct {
	head []string
	rows [][]string
}

// A Picture is an SVG drawing for a report, such as the pressure-enthalpy
// diagram of refrigerant/diagram or the chart of psychro/chart.
type Picture struct {
	Caption string
	SVG     []byte
}

func (a Assessment) document(audience Audience, pictures []Picture) document {
	d := document{title: a.Title}
	if d.title == "" {
		d.title = "Air conditioner assessment"
	}
	switch audience {
	case Owner:
		a.ownerBlocks(&d)
	case File:
		a.head(&d)
		d.blocks = append(d.blocks, a.verdictBlock(), a.readingsBlock(), a.derivedBlock(), a.airBlock(), a.freezeBlock(), a.findingsBlock(audience), a.riskBlock(), a.nextBlock(), a.settleBlock())
	default:
		a.head(&d)
		d.blocks = append(d.blocks, a.verdictBlock(), a.riskBlock(), a.nextBlock(), a.settleBlock(), a.readingsBlock(), a.derivedBlock(), a.airBlock(), a.freezeBlock(), a.findingsBlock(audience))
	}
	caution := block{heading: "Be careful"}
	cautions := a.Cautions
	if audience == Owner {
		cautions = a.ownerCautions()
	}
	for _, c := range cautions {
		caution.items = append(caution.items, item{text: c})
	}
	d.blocks = append(d.blocks, caution)
	if a.Notes != "" && audience != Owner {
		d.blocks = append(d.blocks, block{heading: "Notes", paragraphs: []string{a.Notes}})
	}
	if len(pictures) > 0 {
		d.blocks = append(d.blocks, block{heading: "Pictures", pictures: pictures})
	}
	d.blocks = slices.DeleteFunc(d.blocks, block.empty)
	return d
}

func (b block) empty() bool {
	return len(b.paragraphs) == 0 && len(b.items) == 0 && b.table == nil && len(b.pictures) == 0
}

func (a Assessment) head(d *document) {
	d.lines = append(d.lines, fmt.Sprintf("%s (safety group %s); atmosphere %s (%s)", a.Refrigerant.Designation, a.Refrigerant.SafetyGroup,
		a.Atmosphere.Pressure.Value.Format(a.Units), a.Atmosphere.Source))
	if a.Refrigerant.Estimated != "" {
		d.lines = append(d.lines, "Its properties are an estimate: "+a.Refrigerant.Estimated)
	}
}

func (a Assessment) verdictBlock() block {
	b := block{heading: "Verdict", paragraphs: []string{a.Headline}}
	for _, r := range a.Charge.Reasons {
		returning := strings.HasPrefix(r, "a superheat of") && slices.ContainsFunc(a.Risks, func(x Risk) bool { return x.Code == "floodback" })
		if !strings.Contains(a.Headline, r) && !returning { // the danger below says it
			b.items = append(b.items, item{text: r})
		}
	}
	return b
}

func (a Assessment) riskBlock() block {
	b := block{heading: "Danger to the compressor"}
	for _, r := range a.Risks {
		b.items = append(b.items, item{text: r.Text, below: []string{r.Why, "Now: " + r.Do}})
	}
	return b
}

func (a Assessment) nextBlock() block {
	b := block{heading: "Do next", numbered: true}
	for i, s := range a.Next {
		it := item{text: s.Do}
		again := slices.ContainsFunc(a.Next[:i], func(before Step) bool { return before.Why == s.Why || strings.HasPrefix(before.Why, s.Why+"; ") })
		if s.Why != "" && !again {
			it.below = []string{"Why: " + s.Why}
		}
		b.items = append(b.items, it)
	}
	return b
}

func (a Assessment) settleBlock() block {
	if a.Settle == nil || len(a.Settle.Outcomes) < 2 { // it settles nothing
		return block{}
	}
	return block{heading: "The one reading that would settle most", items: []item{{text: a.Settle.Take, below: append([]string{a.Settle.Why}, a.Settle.Outcomes...)}}}
}

func (a Assessment) readingsBlock() block {
	b := block{heading: "Readings", table: &table{head: []string{"reading", "value ± standard uncertainty", "judged"}}}
	for _, r := range a.Readings {
		belief := string(r.Belief)
		if r.Settled {
			belief += ", from the log"
		}
		b.table.rows = append(b.table.rows, []string{r.Name, r.Value, belief})
	}
	for _, s := range []*SteadinessVerdict{a.Steadiness, a.Valve} {
		if s != nil {
			b.items = append(b.items, item{text: s.Text})
		}
	}
	for _, d := range a.Doubts {
		b.items = append(b.items, item{text: d.Text, below: []string{"Look: " + d.Mend}})
	}
	return b
}

// restsOn names the readings that a derived value is made of.
var restsOn = map[string][]string{
	"evaporating temperature (dew)":     {"suctionPressure"},
	"condensing temperature (bubble)":   {"liquidPressure", "dischargePressure"},
	"superheat":                         {"suctionPressure", "suctionLine"},
	"subcooling":                        {"liquidPressure", "dischargePressure", "liquidLine"},
	"condensing over outdoor air":       {"liquidPressure", "dischargePressure", "outdoorDryBulb"},
	"approach, liquid over outdoor air": {"liquidLine", "outdoorDryBulb"},
	"compression ratio":                 {"suctionPressure", "liquidPressure", "dischargePressure"},
	"temperature split":                 {"returnDryBulb", "supplyDryBulb"},
	"return relative humidity":          {"returnDryBulb", "returnWetBulb"},
}

func (a Assessment) derivedBlock() block {
	var rows [][]string
	for _, v := range a.Derived.Values(a.Units) {
		text := v.Text
		if belief := gravest(a.Doubts, restsOn[v.Name]...); belief == Doubted || belief == Impossible {
			text += ", of " + string(belief) + " readings"
		}
		rows = append(rows, []string{v.Name, text})
	}
	if len(rows) == 0 {
		return block{}
	}
	return block{heading: "What follows from them", table: &table{head: []string{"value", "± standard uncertainty"}, rows: rows}}
}

func (a Assessment) airBlock() block {
	if a.Air == nil {
		return block{}
	}
	b := block{heading: "Air side"}
	for _, r := range a.Air.Reasons {
		b.items = append(b.items, item{text: r})
	}
	return b
}

func (a Assessment) freezeBlock() block {
	if a.Freeze == nil {
		return block{}
	}
	b := block{heading: "Freezing"}
	for _, r := range a.Freeze.Reasons {
		b.items = append(b.items, item{text: r})
	}
	for _, list := range []struct {
		name  string
		lines []string
	}{
		{"why it froze, or would", a.Freeze.Why},
		{"how far it is from freezing, each change by itself", a.Freeze.Would},
		{"what helps, in this order", a.Freeze.Instead},
	} {
		if len(list.lines) > 0 {
			b.items = append(b.items, item{text: list.name, below: list.lines})
		}
	}
	return b
}

// worthEvidence is the probability from which the evidence of a cause is given, and
// mostEvidence for how many causes at most: a technician at the machine wants less of
// it than the file.
var (
	worthEvidence = map[Audience]float64{Technician: 0.1, File: 0.03}
	mostEvidence  = map[Audience]int{Technician: 2, File: 3}
)

func (a Assessment) findingsBlock(audience Audience) block {
	b := block{heading: "What it may be"}
	if a.Change != nil {
		b.paragraphs = a.Change.Text
	}
	for i, f := range a.Findings {
		it := item{text: normal.Percent(f.Probability) + ": " + f.Cause}
		if f.Probability < worthEvidence[audience] || i >= mostEvidence[audience] {
			b.items = append(b.items, it)
			continue
		}
		for _, s := range f.For {
			it.below = append(it.below, "for: "+s)
		}
		for _, s := range f.Against {
			it.below = append(it.below, "against: "+s)
		}
		if f.Do != "" {
			it.below = append(it.below, "do: "+f.Do)
		}
		b.items = append(b.items, it)
	}
	return b
}
