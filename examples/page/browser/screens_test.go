package browser

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

const visits = "../../../testdata/visits/"

// pictured are the states of which pictures are kept where they are wanted.
var pictured = map[string]string{
	"outdoor-fan-stopped": "danger", "coil-iced-unexplained": "freeze", "valve-hunting": "hunting",
	"just-moved": "dose", "nearly-empty": "leak", "water-leak": "look",
}

// The loop of every visit fits the screen of a phone: whole, beside the bars of a browser, and held
// across. Pictured ones do in both languages and systems of units; three share the visits.
func TestScreensOfVisits(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob(visits + "*.json")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d visits, %v", len(files), err)
	}
	const shares = 3
	for share := range shares {
		t.Run(fmt.Sprint(share), func(t *testing.T) {
			t.Parallel()
			b := open(t, fileURL(pageFile(t)), 390, 844)
			for i := share; i < len(files); i += shares {
				b.screensOf(files[i])
			}
		})
	}
}

func (b tab) screensOf(file string) {
	b.Helper()
	name := strings.TrimSuffix(filepath.Base(file), ".json")
	b.openVisit(file)
	b.press("#tab-loop")
	for _, size := range [][2]int64{{390, 664}, {844, 390}, {390, 844}} {
		b.run(emulation.SetDeviceMetricsOverride(size[0], size[1], 1, true))
		b.fits(fmt.Sprintf("%s on %d x %d", name, size[0], size[1]))
	}
	if picture, ok := pictured[name]; ok {
		b.shoot(picture)
		b.settings("es", "SI")
		b.fits(name + " in Spanish, SI")
		b.shoot(picture + "-es")
		b.settings("en", "IP")
	}
}

// An empty page, every tab of a visit in both languages, and the dark; nothing leaves the page
// meanwhile.
func TestScreens(t *testing.T) {
	t.Parallel()
	b := open(t, fileURL(pageFile(t)), 390, 844)
	b.shoot("empty-setup")
	b.narrow("empty set-up")
	b.press("#tab-loop")
	b.shoot("empty-loop")
	b.fits("empty loop")
	b.openVisit(visits + "water-leak.json")
	for _, language := range []string{"en", "es"} {
		b.settings(language, "IP")
		for _, name := range []string{"keep", "setup", "tasks"} {
			b.press("#tab-" + name)
			b.narrow(name + " in " + language)
			b.shoot(name + "-" + language)
		}
	}
	for _, theme := range []string{"dark", "bright"} {
		b.choose("#s-theme", theme)
		b.settled()
		b.press("#tab-loop")
		b.shoot("theme-" + theme)
	}
	for _, address := range *b.asked {
		if !strings.HasPrefix(address, "file:") && !strings.HasPrefix(address, "data:") &&
			!strings.HasPrefix(address, "blob:") {
			t.Errorf("asked for %s", address)
		}
	}
}

// settings sets language and units.
func (b tab) settings(language, system string) {
	b.Helper()
	b.choose("#s-system", system)
	b.settled()
	b.choose("#s-language", language)
	b.settled()
}
