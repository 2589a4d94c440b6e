package satline

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

// What strangers write does not steer what shows an assessment: a terminal, a line of a
// log, the JSON of it.
func TestStrangersDoNotSteer(t *testing.T) {
	const bad = "a\x1b[2J\x00\u009b\u202e\nb"
	v := load(t, "sound-r410a-piston")
	v.Title, v.Notes = bad, bad
	v.Equipment.Accessories = []charge.Accessory{{Name: bad, Mass: quantity.Ounces(4)}}
	a, err := Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	for name, s := range map[string]string{"title": a.Title, "notes": a.Notes, "report": a.String(),
		"JSON": string(text)} {
		if strings.ContainsAny(s, "\x1b\x00\u009b\u202e") ||
			name == "title" && strings.Contains(s, "\n") {
			t.Errorf("%s: %q", name, s)
		}
	}
	_, err = DecodeVisit([]byte(`{"` + "\\u001b[31m\\u202e\\nx" + `": 1}`))
	if err == nil || strings.ContainsAny(err.Error(), "\x1b\u202e\n") {
		t.Errorf("%q", err)
	}
}
