package diagram_test

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"
	"testing"

	"github.com/satline/satline/internal/page/picture/picturetest"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
	"pgregory.net/rapid"
)

// cycleOf returns the marks of an invented machine: evaporating at 7 °C (dew) with
// 7 K superheat, condensing at 45 °C (bubble) with 6 K subcooling, at two thirds of
// the isentropic efficiency.
func cycleOf(t testing.TB, r *refrigerant.Refrigerant) []diagram.Mark {
	t.Helper()
	must := func(s refrigerant.State, err error) refrigerant.State {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	low, err := r.DewPressure(quantity.Celsius(7))
	if err != nil {
		t.Fatal(err)
	}
	high, err := r.BubblePressure(quantity.Celsius(45))
	if err != nil {
		t.Fatal(err)
	}
	suction := must(r.State(low, quantity.Celsius(14)))
	ideal := must(r.StateAtEntropy(high, suction.Entropy))
	discharge := must(
		r.StateAtEnthalpy(high, suction.Enthalpy+(ideal.Enthalpy-suction.Enthalpy)*1.5),
	)
	liquid := must(r.State(high, quantity.Celsius(39)))
	inlet := must(r.StateAtEnthalpy(low, liquid.Enthalpy))
	return []diagram.Mark{
		{Label: "suction", State: suction}, {Label: "discharge", State: discharge},
		{Label: "liquid", State: liquid}, {Label: "evaporator inlet", State: inlet},
	}
}

func lookup(t testing.TB, name string) *refrigerant.Refrigerant {
	t.Helper()
	r, err := refrigerant.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func machine(t testing.TB, name string, o diagram.Options) *diagram.Diagram {
	t.Helper()
	r := lookup(t, name)
	d, err := diagram.New(r, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.AddCycle(cycleOf(t, r)...); err != nil {
		t.Fatal(err)
	}
	return d
}

var everything = diagram.Options{
	Isentropes: true,
	Qualities:  true,
	Atmosphere: quantity.StandardAtmosphere,
}

func TestSVG(t *testing.T) {
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		for _, atmosphere := range []quantity.Pressure{0,
			quantity.AtmosphereAt(quantity.Feet(6000))} {
			d := machine(
				t, "R-410A",
				diagram.Options{System: sys, Atmosphere: atmosphere, Title: "Mill <&> sons"},
			)
			for _, page := range []diagram.Page{diagram.Phone(), diagram.Letter()} {
				var b, again bytes.Buffer
				if err := d.SVG(&b, page); err != nil {
					t.Fatal(err)
				}
				if err := d.SVG(&again, page); err != nil ||
					!bytes.Equal(b.Bytes(), again.Bytes()) {
					t.Errorf("the same diagram twice differs, %v", err)
				}
				words, _ := picturetest.Texts(t, b.Bytes())
				want := []string{
					"Mill <&> sons", d.Describe(), "suction", "discharge", "liquid",
					"evaporator inlet", "bubble and dew lines",
				}
				switch {
				case sys == quantity.IP && atmosphere == 0:
					want = append(
						want, "R-410A, absolute pressures", "Absolute pressure, psia",
						"Enthalpy, Btu/lb, IIR datum", "temperature, °F",
					)
				case sys == quantity.IP:
					want = append(
						want, "R-410A, gauge pressures in an atmosphere of 11.8 psia",
						"Gauge pressure, psig",
					)
				case atmosphere == 0:
					want = append(
						want, "Absolute pressure, kPa", "Enthalpy, kJ/kg, IIR datum",
						"temperature, °C",
					)
				default:
					want = append(
						want, "R-410A, gauge pressures in an atmosphere of 81.2 kPa",
						"Gauge pressure, kPag",
					)
				}
				for _, w := range want {
					if !slices.Contains(words, w) {
						t.Errorf("%v %v: no %q among %q", sys, page, w, words)
					}
				}
			}
		}
	}
}

func TestLanguage(t *testing.T) {
	picturetest.Translated(t, func(tag string) []byte {
		r := lookup(t, "R-454B")
		d, err := diagram.New(r, diagram.Options{
			Language: tag, Atmosphere: quantity.StandardAtmosphere, Isentropes: true,
			Qualities: true,
		})
		if err != nil {
			t.Fatal(err)
		}
		marks := cycleOf(t, r)
		for i := range marks {
			marks[i].Label = ""
		}
		if err := d.AddCycle(marks...); err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := d.SVG(&b, diagram.Letter()); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	})
}

// A state is where its enthalpy and the logarithm of its pressure put it, and a cycle
// passes the middles between its states, on a diagram whose scales are fixed so that
// the places are known.
func TestPNG(t *testing.T) {
	r := lookup(t, "R-22")
	o := diagram.Options{
		MinPressure: quantity.Kilopascals(100), MaxPressure: quantity.Kilopascals(6000),
		MinEnthalpy: quantity.KilojoulesPerKilogram(150),
		MaxEnthalpy: quantity.KilojoulesPerKilogram(500),
	}
	render := func(d *diagram.Diagram) image.Image {
		var b bytes.Buffer
		if err := d.PNG(&b, diagram.Letter(), 72); err != nil {
			t.Fatal(err)
		}
		m, err := png.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	empty, err := diagram.New(r, o)
	if err != nil {
		t.Fatal(err)
	}
	full, err := diagram.New(r, o)
	if err != nil {
		t.Fatal(err)
	}
	marks := cycleOf(t, r)
	for i := range marks {
		marks[i].Label = ""
	}
	if err := full.AddCycle(marks...); err != nil {
		t.Fatal(err)
	}
	before, after := render(empty), render(full)
	if b := after.Bounds(); b.Dx() != 792 || b.Dy() != 612 {
		t.Errorf("%v", b)
	}
	// The frame of a letter page is from 46 to 780 points across at one pixel to the
	// point, and above the table of four rows, and beneath title and legend.
	bottom, top := 34+11.5*(4+2.2), 612-(12+12*1.35+8.5*2.1)-8.5*1.35
	place := func(s refrigerant.State) (x, y float64) {
		x = 46 + (780-46)*(s.Enthalpy.KilojoulesPerKilogram()-150)/350
		y = 612 - (bottom + (top-bottom)*math.Log(s.Pressure.Kilopascals()/100)/math.Log(60))
		return x, y
	}
	for i, m := range marks {
		x, y := place(m.State)
		if n := picturetest.Marked(before, x, y, 5); n != 0 {
			t.Errorf("%d pixels marked on a diagram without marks", n)
		}
		if n := picturetest.Marked(after, x, y, 5); n < 15 {
			t.Errorf("state %d: %d pixels marked at %.0f, %.0f", i, n, x, y)
		}
		nx, ny := place(marks[(i+1)%len(marks)].State)
		if n := picturetest.Marked(after, (x+nx)/2, (y+ny)/2, 5); n < 10 {
			t.Errorf("path from state %d: %d pixels marked", i, n)
		}
	}
	if after.At(2, 2) != after.At(790, 610) || after.At(2, 2) == (color.RGBA{}) {
		t.Error("the paper is not one color to the edges")
	}
}

// Every refrigerant of the roster is drawn, R-744 and water among them, and every
// fourth with all families of lines.
func TestEveryRefrigerant(t *testing.T) {
	for i, r := range refrigerant.All() {
		o := diagram.Options{Atmosphere: quantity.StandardAtmosphere}
		if i%4 == 0 || r.Designation() == "R-744" {
			o = everything
		}
		d, err := diagram.New(r, o)
		if err != nil {
			t.Errorf("%v: %v", r, err)
			continue
		}
		var b bytes.Buffer
		if err := d.SVG(&b, diagram.Page{Width: 792, Height: 612, Sparse: true}); err != nil {
			t.Errorf("%v: %v", r, err)
			continue
		}
		words, _ := picturetest.Texts(t, b.Bytes())
		if !slices.Contains(
			words, r.Designation()+", gauge pressures in an atmosphere of 14.7 psia",
		) ||
			len(words) < 35 {
			t.Errorf("%v: %q", r, words)
		}
	}
}

func TestRefusals(t *testing.T) {
	r := lookup(t, "R-22")
	other, err := lookup(t, "R-410A").State(quantity.Kilopascals(900), quantity.Celsius(20))
	if err != nil {
		t.Fatal(err)
	}
	d := machine(t, "R-22", diagram.Options{})
	refused := func(o diagram.Options) error { _, err := diagram.New(r, o); return err }
	nan := math.NaN()
	for name, err := range map[string]error{
		"a state of another refrigerant": d.AddState("x", other),
		"the zero state":                 d.AddState("x", refrigerant.State{}),
		"a state that is no number": d.AddPath("x",
			refrigerant.State{Pressure: 1e6, Enthalpy: quantity.SpecificEnthalpy(nan)}, other),
		"a cycle of another refrigerant": d.AddCycle(cycleOf(t, lookup(t, "R-410A"))...),
		"a tiny page":                    d.SVG(io.Discard, diagram.Page{Width: 10, Height: 10}),
		"a page without size":            d.PNG(io.Discard, diagram.Page{}, 96),
		"no resolution":                  d.PNG(io.Discard, diagram.Phone(), 0),
		"a huge image": d.PNG(io.Discard, diagram.Page{Width: 4000, Height: 4000},
			600),
		"an atmosphere of the moon": refused(diagram.Options{Atmosphere: 1}),
		"no atmosphere":             refused(diagram.Options{Atmosphere: quantity.Pressure(nan)}),
		"one end of the pressures":  refused(diagram.Options{MinPressure: quantity.Bar(1)}),
		"pressures upside down": refused(diagram.Options{MinPressure: quantity.Bar(10),
			MaxPressure: quantity.Bar(1)}),
		"one end of the enthalpies": refused(
			diagram.Options{MinEnthalpy: quantity.BtuPerPound(100)}),
		"endless enthalpy": refused(
			diagram.Options{MaxEnthalpy: quantity.SpecificEnthalpy(math.Inf(1))}),
	} {
		var re *quantity.RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := diagram.New(nil, diagram.Options{}); !errors.Is(
		err, refrigerant.ErrNoRefrigerant,
	) {
		t.Errorf("%v", err)
	}
	if d.AddPath("x", other) == nil || d.AddCycle() == nil {
		t.Error("a path of one state, a cycle of none")
	}
}

// Any diagram that New accepts is drawn, whatever is on it.
func TestDrawsAnything(t *testing.T) {
	var some []*refrigerant.Refrigerant
	for _, name := range []string{"R-22", "R-134a", "R-290", "R-600a", "R-718", "R-744", "R-407C",
		"R-410A", "R-454B", "R-513A"} {
		some = append(some, lookup(t, name))
	}
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(some).Draw(t, "refrigerant")
		limits := r.Limits()
		o := diagram.Options{
			System: rapid.SampledFrom([]quantity.System{quantity.IP, quantity.SI}).
				Draw(t, "system"),
			Title:      rapid.String().Draw(t, "title"),
			Isentropes: rapid.Bool().Draw(t, "isentropes"),
			Qualities:  rapid.Bool().Draw(t, "qualities"),
		}
		if rapid.Bool().Draw(t, "gauge") {
			o.Atmosphere = quantity.Kilopascals(rapid.Float64Range(20, 200).Draw(t, "atmosphere"))
		}
		if rapid.Bool().Draw(t, "pressures") {
			o.MinPressure = quantity.Kilopascals(
				math.Exp(rapid.Float64Range(-2, 10).Draw(t, "low")),
			)
			o.MaxPressure = o.MinPressure * quantity.Pressure(
				rapid.Float64Range(2, 500).Draw(t, "ratio"),
			)
		}
		if rapid.Bool().Draw(t, "enthalpies") {
			o.MinEnthalpy = quantity.KilojoulesPerKilogram(
				rapid.Float64Range(-300, 1000).Draw(t, "least"),
			)
			o.MaxEnthalpy = o.MinEnthalpy + quantity.KilojoulesPerKilogram(
				rapid.Float64Range(20, 3000).Draw(t, "width"),
			)
		}
		d, err := diagram.New(r, o)
		if err != nil {
			return
		}
		for range rapid.IntRange(0, 12).Draw(t, "states") {
			u := rapid.Float64Range(1e-6, 1-1e-6).Draw(t, "T")
			p := math.Exp(
				rapid.Float64Range(6, math.Log(float64(limits.MaxPressure))).Draw(t, "ln p"),
			)
			span := limits.MaxTemperature - limits.MinTemperature
			s, err := r.State(
				quantity.Pressure(p), limits.MinTemperature+span*quantity.Temperature(u),
			)
			if err != nil {
				continue
			}
			if err := d.AddState(rapid.StringN(0, 30, -1).Draw(t, "label"), s); err != nil {
				t.Fatalf("%v: %v", r, err)
			}
		}
		page := diagram.Page{
			Width:  rapid.Float64Range(200, 900).Draw(t, "width"),
			Height: rapid.Float64Range(200, 900).Draw(t, "height"),
			Sparse: rapid.Bool().Draw(t, "sparse"),
		}
		var b bytes.Buffer
		if err := d.SVG(&b, page); err != nil {
			t.Fatal(err)
		}
		picturetest.Texts(t, b.Bytes())
	})
}

func BenchmarkNew(b *testing.B) {
	r := lookup(b, "R-407C")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := diagram.New(r, diagram.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// A pure fluid and a blend, which costs a flash for each place in its dome.
func BenchmarkSVG(b *testing.B) {
	for _, name := range []string{"R-22", "R-410A", "R-407C", "R-448A"} {
		for _, lines := range []string{"plain", "everything"} {
			b.Run(name+"/"+lines, func(b *testing.B) {
				var o diagram.Options
				if lines == "everything" {
					o = everything
				}
				d := machine(b, name, o)
				b.ReportAllocs()
				for b.Loop() {
					if err := d.SVG(io.Discard, diagram.Letter()); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkPNGPhone(b *testing.B) {
	d := machine(b, "R-410A", diagram.Options{})
	b.ReportAllocs()
	for b.Loop() {
		if err := d.PNG(io.Discard, diagram.Phone(), 192); err != nil {
			b.Fatal(err)
		}
	}
}

// What New did not make says so instead of drawing.
func TestNoDiagram(t *testing.T) {
	s, err := lookup(t, "R-22").SaturatedVapor(280)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []*diagram.Diagram{nil, {}} {
		for name, err := range map[string]error{
			"state": d.AddState("x", s), "path": d.AddPath("x", s, s),
			"cycle": d.AddCycle(diagram.Mark{State: s}, diagram.Mark{State: s},
				diagram.Mark{State: s}),
			"SVG": d.SVG(io.Discard, diagram.Phone()),
			"PNG": d.PNG(io.Discard, diagram.Phone(), 96),
		} {
			if !errors.Is(err, refrigerant.ErrNoRefrigerant) {
				t.Errorf("%s: %v", name, err)
			}
		}
		if d.Describe() != "" {
			t.Errorf("%q", d.Describe())
		}
	}
}
