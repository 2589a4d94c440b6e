package span

import (
	"encoding/json"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestSpanReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Span(rapid.Int64().Draw(t, "nanoseconds"))
		text, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		var back Span
		if err := json.Unmarshal(text, &back); err != nil || back != s {
			t.Fatalf("%s reads back as %s, %v", text, time.Duration(back), err)
		}
	})
}

func TestWhatIsNoSpan(t *testing.T) {
	s := Span(time.Minute)
	for _, text := range []string{`15`, `"15"`, `"soon"`, `""`} {
		if err := json.Unmarshal([]byte(text), &s); err == nil || s != Span(time.Minute) {
			t.Errorf("%s: %v, %v", text, time.Duration(s), err)
		}
	}
}
