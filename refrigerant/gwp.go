package refrigerant

import "strings"

// A GWP is a global warming potential over 100 years, against the same mass of
// carbon dioxide, by two assessments of the Intergovernmental Panel on Climate
// Change. Laws name the assessment they mean; the two are not mixed.
type GWP struct {
	AR4 GWPValue `json:"ar4"` // Fourth Assessment, WG I, table 2.14 (2007)
	AR5 GWPValue `json:"ar5"` // Fifth Assessment, WG I, table 8.A.1 (2013)
	// US is the figure that the law of the United States counts with, 40 CFR 84.64; nil
	// where it gives none, for what is no hydrofluorocarbon and holds none.
	US *GWPValue `json:"us,omitempty"`
}

// A GWPValue is one figure with its source. A blend's is the sum over its
// components by mass.
type GWPValue struct {
	Value  float64 `json:"value"`
	Source string  `json:"source"` // the table the figure is from
	// Note names the components that the table does not list and says what was taken for them,
	// in English as Source is, or is empty.
	Note string `json:"note,omitzero"`
}

const (
	sourceAR4 = "IPCC Fourth Assessment Report (2007), Working Group I, table 2.14, 100 years, " +
		"without feedbacks"
	sourceUS = "40 CFR 84.64: exchange values of 42 U.S.C. 7675(c), " +
		"and of table 1 for what a blend holds besides"
	sourceAR5 = "IPCC Fifth Assessment Report (2013), Working Group I, table 8.A.1, 100 years, " +
		"without feedbacks"
)

// A gwpFact is a figure and how it came to stand in the column.
type gwpFact struct {
	value float64
	from  gwpFrom
}

type gwpFrom uint8

const (
	listed       gwpFrom = iota // in the column's own table
	belowOne                    // listed as "<1"
	thirdReport                 // Third Assessment Report (2001), table 6.7
	fromAR4                     // AR4 table 2.14, where AR5 has no line
	sixthReport                 // AR6 (2021), table 7.SM.7
	indirectAR4                 // AR4 section 2.10.3.2, indirect effect
	likeButane                  // the figure of butane
	fgasAnnexII                 // Regulation (EU) 517/2014, annex II
	fgasAnnexIV                 // Regulation (EU) 517/2014, annex IV
	shortLived                  // lives for days; 1 is an upper bound
	byConvention                // counted as zero
	usTable                     // 40 CFR 84.64(b), table 1
	usRange                     // the same, where it prints a range
	usLeftOut                   // 40 CFR 84.64(c)
)

var gwpNotes = [...]string{
	belowOne:     "listed as below 1, counted as 1",
	thirdReport:  "not listed; from the Third Assessment Report, table 6.7",
	fromAR4:      "not listed; from AR4 table 2.14",
	sixthReport:  "not listed; from the Sixth Assessment Report, table 7.SM.7, from memory",
	indirectAR4:  "not listed; indirect effect, AR4 section 2.10.3.2",
	likeButane:   "not listed; taken as butane's, AR4 section 2.10.3.2",
	fgasAnnexII:  "not listed; from Regulation (EU) No 517/2014, annex II, from memory",
	fgasAnnexIV:  "not listed; from Regulation (EU) No 517/2014, annex IV, from memory",
	shortLived:   "not listed; lives for days, counted as 1, which is an upper bound",
	byConvention: "not listed; counted as 0 by convention",
	usTable:      "by table 1 of 84.64(b)",
	usRange:      "has a range in table 1 of 84.64(b), its upper end",
	usLeftOut:    "is not in table 1 of 84.64(b), left out by 84.64(c)",
}

// GWP returns the global warming potential of r, the zero GWP where r is no
// refrigerant.
func (r *Refrigerant) GWP() GWP {
	if len(r.components()) == 0 {
		return GWP{}
	}
	return GWP{
		AR4: r.gwp(sourceAR4, func(f *pureFact) gwpFact { return f.ar4 }),
		AR5: r.gwp(sourceAR5, func(f *pureFact) gwpFact { return f.ar5 }),
		US:  r.gwpUS(),
	}
}

// gwpUS returns the figure of 40 CFR 84.64, nil where r holds nothing that the Act
// regulates.
func (r *Refrigerant) gwpUS() *GWPValue {
	for _, c := range r.components() {
		if pureFactOf(c.Designation).control == HFC {
			v := r.gwp(sourceUS, exchangeValue)
			return &v
		}
	}
	return nil
}

// exchangeValue is what a component counts. The exchange values of the Act are those of
// AR4; table 1 gives other components figures of their own, and what it does not name, as
// R-22, is left out.
func exchangeValue(f *pureFact) gwpFact {
	if f.control == HFC {
		return gwpFact{f.ar4.value, listed}
	}
	if v, ok := tableOne[f.designation]; ok {
		return gwpFact{v, usTable}
	}
	if f.designation == "R-601" || f.designation == "R-601a" {
		return gwpFact{2.7, usRange}
	}
	return gwpFact{0, usLeftOut}
}

var tableOne = map[string]float64{
	"R-1224yd(Z)": 1, "R-1233zd(E)": 4, "R-1234yf": 1, "R-1234ze(E)": 1,
	"R-1336mzz(E)": 26, "R-1336mzz(Z)": 2, "R-170": 5.5, "R-290": 3.3, "R-600": 4,
	"R-600a": 1, "R-717": 1, "R-744": 1, "R-1270": 1.8, "R-E170": 1,
}

func (r *Refrigerant) gwp(source string, column func(*pureFact) gwpFact) GWPValue {
	v := GWPValue{Source: source}
	var notes []string
	for _, c := range r.components() {
		f := column(pureFactOf(c.Designation))
		v.Value += c.MassFraction * f.value
		if f.from != listed {
			notes = append(notes, c.Designation+" "+gwpNotes[f.from])
		}
	}
	v.Note = strings.Join(notes, "; ")
	return v
}
