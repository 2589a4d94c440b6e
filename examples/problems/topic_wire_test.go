package main

import (
	"fmt"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
)

// The table is of annealed copper: 1/58 Ω mm²/m at 20 °C, 0.393 % more for each kelvin
// (International Annealed Copper Standard, from memory). A gauge is a diameter, of 0.46 in at
// 4/0 and 0.005 in at 36 with 39 equal steps between; strands are 2 % longer than their wire. A
// metric conductor may be up to 8 % over its nominal resistance.
func TestWiresAreOfCopper(t *testing.T) {
	const resistivity, perKelvin = 1 / 58.0, 0.00393
	for _, units := range []quantity.System{quantity.IP, quantity.SI} {
		g := &generator{options: Options{Units: units}}
		for _, w := range g.wires() {
			var gauge, area float64
			per, least, most := 1.0, 0.995, 1.025
			if _, err := fmt.Sscanf(w.name, "%f AWG", &gauge); err == nil {
				d := 25.4 * 0.005 * math.Pow(92, (36-gauge)/39)
				area = math.Pi / 4 * d * d
				per = 0.3048 * (1 + perKelvin*(75-20))
			} else if _, err := fmt.Sscanf(w.name, "%f mm²", &area); err == nil {
				least, most = 1, 1.08
			} else {
				t.Fatal(w.name)
			}
			if of := w.ohms / (1000 * per * resistivity / area); of < least || of > most {
				t.Errorf("%s: %.3f times the resistance of copper", w.name, of)
			}
		}
	}
}
