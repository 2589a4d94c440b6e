package picture

import (
	"image/color"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Families of lines are told apart by hue, weight and dash together, so that a
// chart can be read in grey and by people who see few colors.
var (
	Paper     = color.NRGBA{0xf6, 0xf3, 0xec, 0xff}
	Field     = color.NRGBA{0xff, 0xff, 0xff, 0xff}
	Ink       = color.NRGBA{0x26, 0x2a, 0x2e, 0xff}
	Quiet     = color.NRGBA{0x6b, 0x70, 0x74, 0xff}
	GridMinor = color.NRGBA{0xee, 0xeb, 0xe4, 0xff}
	GridMajor = color.NRGBA{0xd8, 0xd3, 0xc8, 0xff}
	Teal      = color.NRGBA{0x0e, 0x5a, 0x63, 0xff} // saturation, and shares of it
	TealLight = color.NRGBA{0x4f, 0x95, 0x9c, 0xff}
	TealTint  = color.NRGBA{0xf0, 0xf6, 0xf6, 0xff}
	Blue      = color.NRGBA{0x4a, 0x6f, 0xb5, 0xff} // temperature
	BlueLight = color.NRGBA{0xc3, 0xd0, 0xea, 0xff}
	Ochre     = color.NRGBA{0x9a, 0x6a, 0x1c, 0xff} // a third property
	Vermilion = color.NRGBA{0xbf, 0x36, 0x0c, 0xff} // what is marked
	FieldHalo = color.NRGBA{0xff, 0xff, 0xff, 0xd8}
	TintHalo  = color.NRGBA{0xf0, 0xf6, 0xf6, 0xd8}
	PaperHalo = color.NRGBA{0xf6, 0xf3, 0xec, 0xd8}
)

// Stroke is a style of line, width and dashes in points.
func Stroke(c color.Color, width float64, dashes ...float64) draw.LineStyle {
	s := draw.LineStyle{Color: c, Width: vg.Points(width)}
	for _, d := range dashes {
		s.Dashes = append(s.Dashes, vg.Points(d))
	}
	return s
}

// Sizes of text in points; the smallest is 10 CSS pixels.
const (
	Small  = 7.5
	Normal = 8.5
	Title  = 12
)

// Writing is a style of text, its size in points.
func Writing(size float64, c color.Color, bold bool) text.Style {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: vg.Points(size)}
	if bold {
		f.Weight = xfont.WeightBold
	}
	return text.Style{Color: c, Font: f, Handler: plot.DefaultTextHandler}
}
