package testbench

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/refrigerant"
)

// A shortTube holds the coefficients of the flow through a short tube orifice: the form of
// Kim and O'Neal 1994, ASHRAE Transactions 100(1):323-334, and 100(2):582-591
// (R-134a), taken on by Payne and O'Neal 1998, 104(1A):197-209 (R-407C), and 1999,
// 105(2):66-74 (R-410A); the figures as reprinted in the public source of a heat pump
// simulation of Oklahoma State University. The correction for a two-phase inlet is that of
// R-410A for all, as there.
type shortTube struct {
	reference float64 // m
	b         [11]float64
}

var shortTubes = map[string]shortTube{
	"R-22": {1.35e-3, [11]float64{
		1.005, 5.7367, -0.485, -0.179, 0.9948, 0.268, 2.716, -0.226, -0.021, 2.0, -0.092,
	}},
	"R-134a": {1.35e-3, [11]float64{
		1.0156, 10.0612, -0.3296, -0.1758, 1.0831, 0, 0, -0.1802, -0.00214, 2.9596, -0.0745,
	}},
	"R-407C": {
		1.524e-3,
		[11]float64{0.963034325, 4.286408416, -0.278235435, -0.043090943, 0.916226528,
			0.071794702, 0.499098698, -0.208417565, -0.034680678, 1.844061084, -0.091235910},
	},
	"R-410A": {
		1.524e-3,
		[11]float64{0.874805831, 3.131470913, -0.214726407, 0.083394737, 0.901559277,
			-0.020574536, 0.944446846, -0.418400083, -0.025322802, 2.33507746, 0.068890172},
	},
}

// shortTubeOf takes the law of R-410A, which is in reduced terms, for what nobody measured.
func shortTubeOf(designation string) shortTube {
	if s, ok := shortTubes[designation]; ok {
		return s
	}
	return shortTubes["R-410A"]
}

const tubeLength = 12.7e-3 // m; the usual length of a short tube

// flow through a short tube of a bore in kg/s.
func (s *shortTube) flow(f *fluid, bore, up, h, down float64) float64 {
	in := entering(f, up, h)
	ld := tubeLength / bore
	cold := math.Pow(max(in.subcooling, 0)/f.tc, s.b[4])
	flashing := in.saturation * (s.b[0] +
		s.b[1]*math.Pow(up/f.pc, s.b[2])*math.Pow(ld, s.b[3])*cold +
		s.b[5]*math.Pow(up/f.pc, s.b[6]) +
		s.b[7]*math.Exp(s.b[8]*bore/s.reference*math.Pow(ld, s.b[9])) +
		s.b[10]*(f.pc-down)/f.pc)
	drives := max(up-max(flashing, down), 0.002*up)
	flow := math.Pi / 4 * bore * bore * math.Sqrt(2*in.rhoL*drives)
	if in.quality > 0 {
		y := in.quality / (1 - in.quality) * math.Sqrt(in.rhoL/in.rhoV)
		ways := math.Pow(ld, 0.194241638) * math.Pow(y, 0.022577667*math.Log(ld))
		two := (1 + 0.120175996*ways) / (1 + 3.693038038*in.quality)
		flow *= min(1, two*math.Sqrt(in.rho/in.rhoL))
	}
	return flow
}

// inlet is what meets an expansion device.
type inlet struct {
	subcooling, saturation, quality, rho, rhoL, rhoV float64
}

func entering(f *fluid, p, h float64) inlet {
	var b cyclefluid.Isobar
	f.Set(&b, p)
	if h < b.Bubble.H {
		l := b.LiquidAtEnthalpy(h)
		return inlet{
			subcooling: b.Bubble.T - l.T, saturation: f.BubblePressure(l.T),
			rho: 1 / l.V, rhoL: 1 / l.V, rhoV: 1 / b.Dew.V,
		}
	}
	x := min((h-b.Bubble.H)/(b.Dew.H-b.Bubble.H), 0.95)
	return inlet{
		saturation: p, quality: x, rho: 1 / (x*b.Dew.V + (1-x)*b.Bubble.V),
		rhoL: 1 / b.Bubble.V, rhoV: 1 / b.Dew.V,
	}
}

// A device meters the liquid. A fixed one has a bore. A valve has an area at its rated
// opening and opens with the superheat it feels, from nothing at its static superheat to
// one at the rated one, within its stroke.
type device struct {
	kind         refrigerant.Metering
	bore         float64 // m
	area         float64 // m², discharge coefficient within
	static, span float64 // K
	least, most  float64 // opening
}

// flow through the device. felt is the superheat it feels; feed is what is the matter.
func (d *device) flow(f *fluid, up, h, down, felt float64, feed *feedFault) float64 {
	if d.kind == refrigerant.FixedRestrictor {
		return f.tube.flow(f, d.bore*math.Sqrt(feed.area), up, h, down)
	}
	opening := within((felt-d.static)/d.span, d.least, d.most*feed.area)
	opening += feed.stick * (feed.stuck - opening)
	in := entering(f, up, h)
	return opening * d.area * math.Sqrt(2*in.rho*max(up-down, 0.01*up))
}

// within holds x between two ends, with rounded corners.
func within(x, low, high float64) float64 {
	const corner = 0.02
	soft := func(x float64) float64 {
		if x > 30*corner {
			return x
		}
		return corner * math.Log1p(math.Exp(x/corner))
	}
	return low + soft(x-low) - soft(x-high)
}

// A feedFault is what is wrong with a device: its area over the right one, the opening it
// sticks at and whether it does (0 or 1), and how far its bulb feels the room in place of
// the pipe.
type feedFault struct{ area, stuck, stick, bulb float64 }
