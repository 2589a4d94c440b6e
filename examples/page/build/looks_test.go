package main

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// lookedAt: the look that would settle most is answered by one of two buttons, and
// the answer is assessed, listed, kept, saved and taken back.
func lookedAt(t *testing.T, b *browser, file, screen string, width int) {
	t.Helper()
	v := b.openVisit("../../../testdata/visits/water-leak.json")
	for i := range 3 {
		asked := v.settle(t)
		if asked.Look == "" {
			break
		}
		look := lookUp(t, asked.Look)
		if got, want := b.said(`[...document.querySelectorAll("#settle legend, #settle .answers button")].map((e) => e.textContent.toLowerCase()).join("|")`), lower(asked.Take.Text, look.Found.Text, look.NotFound.Text); got != want {
			t.Errorf("the page asks %q, want %q", got, want)
		}
		question(t, b, asked.Take.Text)
		if i == 0 {
			layout(t, b, width)
			contrast(t, b)
			b.eval(`document.getElementById("settle").scrollIntoView({behavior: "instant"})`)
			shoot(b, screen+"-look", false)
			b.press("#settle [data-found=false]")
		} else {
			// By the keyboard, past the other answer.
			b.eval(`document.querySelector("#settle [data-found=true]").focus(); delete document.documentElement.dataset.answered`)
			b.key("Tab", 9)
			b.key(" ", 32)
		}
		if got, want := b.said(`document.getElementById("saved").textContent.toLowerCase()`), lower(look.Name.Text+": "+look.NotFound.Text+", noted."); got != want {
			t.Errorf("a screen reader is told %q, want %q", got, want)
		}
		v.Checks = append(v.Checks, satline.Check{Look: asked.Look})
		b.settled()
		v.shownBy(t, b)
		if i == 0 {
			continue
		}
		if got := b.text(`document.activeElement.closest("section").id`); got != "settle" &&
			got != "looked" {
			t.Errorf("after an answer the focus is in %q", got)
		}
	}
	if len(v.Checks) == 0 {
		t.Fatal("no look was asked for")
	}
	b.eval(
		`document.getElementById("looked").scrollIntoView({behavior: "instant", block: "center"})`,
	)
	shoot(b, screen+"-looked", false)
	layout(t, b, width)
	contrast(t, b)
	b.navigate(file)
	v.shownBy(t, b)
	if diff := cmp.Diff(v.Checks, b.saved().Checks); diff != "" {
		t.Errorf("saved after it was opened again:\n%s", diff)
	}
	b.press(`#looked button`)
	v.Checks = v.Checks[1:]
	b.settled()
	v.shownBy(t, b)
	unknownLook(t, b)
	readingAskedFor(t, b)
	b.press("#example")
	b.settled()
	if len(b.saved().Checks) > 0 ||
		string(b.eval(`document.getElementById("looked").hidden`)) != "true" {
		t.Error("another visit has the answers of the one before")
	}
}

// question holds that the buttons are a group that is named by what is asked.
func question(t *testing.T, b *browser, take string) {
	t.Helper()
	tree := decode[struct {
		Nodes []struct{ Role, Name struct{ Value any } }
	}](b, b.call("Accessibility.getFullAXTree", nil))
	for _, n := range tree.Nodes {
		if name, _ := n.Name.Value.(string); n.Role.Value == "group" && lower(name) == lower(take) {
			return
		}
	}
	t.Errorf("no group is named %q", take)
}

// unknownLook: what only a later library knows is kept, and not used.
func unknownLook(t *testing.T, b *browser) {
	t.Helper()
	const checks = `[{"look": "of a later day", "found": true, "by": "hand"}, {"look": "gauge-zero", "found": false}]`
	b.openFile(
		`{"units": "SI", "checks": ` + checks + `, "equipment": {"refrigerant": "R-22", "metering": "TXV"}, "readings": {"liquidPressure": "1500 kPag", "liquidLine": "38 °C"}}`,
	)
	b.settled()
	if got := b.said(`document.querySelector("#looked li").textContent`); got != "Of a later dayNot known here: kept, and not usedRemove" {
		t.Errorf("the list says %q", got)
	}
	b.eval(`document.getElementById("export").click()`)
	var doc struct {
		Visit struct{ Checks json.RawMessage }
	}
	if err := json.Unmarshal([]byte(b.text(`window.saved`)), &doc); err != nil {
		t.Fatal(err)
	}
	var got, want any
	if err := json.Unmarshal(doc.Visit.Checks, &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(checks), &want); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("saved again:\n%s", diff)
	}
}

// readingAskedFor: a button leads to the field of a reading, out of what is folded.
func readingAskedFor(t *testing.T, b *browser) {
	t.Helper()
	v := b.openVisit("../../../testdata/visits/cool-night.json")
	asked := v.settle(t)
	if asked.Field == "" {
		t.Fatal("no reading is asked for")
	}
	want := "f-readings-" + asked.Field
	b.eval(
		`document.querySelectorAll("details").forEach((d) => d.open = false); document.querySelector("#settle .lead").click()`,
	)
	if got := b.text(`document.activeElement.checkVisibility() && document.activeElement.id`); got != want {
		t.Errorf("the button leads to %q, want %s", got, want)
	}
}

// A lookedVisit is what the page is held to show.
type lookedVisit struct{ satline.Visit }

func (b *browser) openVisit(file string) lookedVisit {
	b.t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		b.t.Fatal(err)
	}
	v, err := satline.DecodeVisit(text)
	if err != nil {
		b.t.Fatal(err)
	}
	b.openFile(string(text))
	b.settled()
	return lookedVisit{v}
}

// settle is what the library asks for.
func (v *lookedVisit) settle(t *testing.T) satline.Question {
	t.Helper()
	a, err := satline.Assess(v.Visit)
	if err != nil {
		t.Fatal(err)
	}
	if a.Ask == nil {
		return satline.Question{}
	}
	return *a.Ask
}

// shownBy holds that the page has the answers and what follows from them.
func (v *lookedVisit) shownBy(t *testing.T, b *browser) {
	t.Helper()
	a, err := satline.Assess(v.Visit)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.said(`document.getElementById("headline").textContent`); got != a.Headline.Text {
		t.Errorf("with %v the page says %q, want %q", v.Checks, got, a.Headline.Text)
	}
	if got, want := b.said(`document.querySelector("#settle legend")?.textContent.toLowerCase() ?? ""`), lower(v.settle(t).Take.Text); got != want {
		t.Errorf("with %v the page asks for %q, want %q", v.Checks, got, want)
	}
	var lines []string
	for _, c := range v.Checks {
		look := lookUp(t, c.Look)
		lines = append(lines, look.Name.Text, look.NotFound.Text)
	}
	if got, want := b.said(`[...document.querySelectorAll("#looked b, #looked .why")].map((e) => e.textContent.toLowerCase()).join("|")`), lower(lines...); got != want {
		t.Errorf("looked at: %q, want %q", got, want)
	}
}

// settled waits for the diagnosis.
func (b *browser) settled() {
	b.t.Helper()
	b.wait("the diagnosis", `document.documentElement.dataset.answered === "whole"`)
}

// said is a text of the page with plain spaces.
func (b *browser) said(expression string) string {
	b.t.Helper()
	return strings.ReplaceAll(b.text(expression), "\u00a0", " ")
}

func lower(texts ...string) string { return strings.ToLower(strings.Join(texts, "|")) }

func lookUp(t *testing.T, code string) satline.Look {
	t.Helper()
	all := satline.Looks(satline.English, quantity.IP)
	i := slices.IndexFunc(all, func(l satline.Look) bool { return l.Code == code })
	if i < 0 {
		t.Fatalf("%q is no look", code)
	}
	return all[i]
}

// saved is the visit as the page saves it.
func (b *browser) saved() satline.Visit {
	b.t.Helper()
	b.eval(catchFile + `; document.getElementById("export").click()`)
	var doc struct{ Visit json.RawMessage }
	if err := json.Unmarshal([]byte(b.text(`window.saved`)), &doc); err != nil {
		b.t.Fatal(err)
	}
	v, err := satline.DecodeVisit(doc.Visit)
	if err != nil {
		b.t.Fatal(err)
	}
	return v
}
