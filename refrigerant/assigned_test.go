package refrigerant

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// A designation that exists and is not carried is never answered with another.
func TestAssignedElsewhere(t *testing.T) {
	for name := range strings.FieldsSeq(assignedElsewhere) {
		r, err := Lookup(name)
		var unknown *UnknownError
		if r != nil || !errors.As(err, &unknown) || unknown.Assigned != name ||
			unknown.Suggestions != nil {
			t.Errorf("Lookup(%q) = %v, %v", name, r, err)
		}
	}
	for text, want := range map[string]string{
		"r514a": "R-514A", "CFC-13": "R-13", "R-480A": "R-480A", "HFC-134": "R-134",
		"r-1234ze(z)": "R-1234ze(Z)", "43-10mee": "R-43-10mee",
		"R-499C": "R-499C", "R-520a": "R-520A",
	} {
		_, err := Lookup(text)
		var unknown *UnknownError
		if !errors.As(err, &unknown) || unknown.Assigned != want {
			t.Errorf("Lookup(%q): %v, want %s", text, err, want)
		}
	}
	for _, text := range []string{"R-145A", "R-410", "R-1", "R-600b", "R-4100", "R-500x"} {
		_, err := Lookup(text)
		var unknown *UnknownError
		if !errors.As(err, &unknown) || unknown.Assigned != "" {
			t.Errorf("Lookup(%q): %v", text, err)
		}
	}
}

// R-400 has two ratios, and which of them is asked for.
func TestTwoRatios(t *testing.T) {
	_, err := Lookup("R-400")
	var unknown *UnknownError
	want := []string{"R-400(50/50)", "R-400(60/40)"}
	if !errors.As(err, &unknown) || !slices.Equal(unknown.Suggestions, want) {
		t.Errorf("%v, want %v", err, want)
	}
	for text, first := range map[string]float64{"R-400 (50/50)": 0.5, "r400(60/40)": 0.6} {
		r, err := Lookup(text)
		if err != nil || r.Composition()[0] != (Component{"R-12", first}) {
			t.Errorf("Lookup(%q) = %v, %v", text, r, err)
		}
	}
}
