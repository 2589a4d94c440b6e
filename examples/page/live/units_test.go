package live

import (
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

// A technician finds the units of the trade beside each field, the usual one first,
// and the same ones whichever system is chosen.
func TestUnits(t *testing.T) {
	offered := Units()
	for kind, want := range map[string][2]string{
		"gauge":       {"psig kPag barg", "kPag barg psig"},
		"temperature": {"°F °C", "°C °F"},
		"difference":  {"°F K", "K °F"},
		"static":      {"in. w.c. Pa", "Pa in. w.c."},
		"power":       {"kW W", "kW W"},
		"capacity":    {"ton kBtu/h kW", "kW ton kBtu/h"},
		"mass":        {"oz lb g kg", "g kg oz lb"},
		"charge":      {"lb oz kg g", "kg g lb oz"},
		"length":      {"ft m", "m ft"},
	} {
		for i, sys := range []quantity.System{quantity.IP, quantity.SI} {
			if got := strings.Join(offered[kind][sys], " "); got != want[i] {
				t.Errorf("%s in %s: %q, want %q", kind, sys, got, want[i])
			}
		}
	}
	for kind, systems := range offered {
		ip, si := slices.Sorted(
			slices.Values(systems[quantity.IP]),
		), slices.Sorted(
			slices.Values(systems[quantity.SI]),
		)
		if len(ip) == 0 || !slices.Equal(ip, si) {
			t.Errorf("%s: %q in IP and %q in SI", kind, ip, si)
		}
	}
}
