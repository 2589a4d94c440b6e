package satline

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
)

// What a program writes of a visit, the reader of visits reads back.
func TestVisitJSONReadsBack(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	v.Units = quantity.SI
	v.Scope = VerdictOnly
	v.Conditions = Conditions{Running: 40 * time.Minute, CoilWet: true}
	v.Log = []LogEntry{{At: 0, Readings: v.Readings}, {At: 90 * time.Second, Readings: v.Readings}}
	v.Moves = []Move{
		{At: 30 * time.Second, Added: quantity.Ounces(4)},
		{At: time.Minute, Recovered: quantity.Ounces(1)},
	}
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	strict, err := DecodeVisit(text)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if d := cmp.Diff(v, strict); d != "" {
		t.Errorf("DecodeVisit: %s", d)
	}
	var plain Visit
	if err := json.Unmarshal(text, &plain); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(v, plain); d != "" {
		t.Errorf("json.Unmarshal: %s", d)
	}
}
