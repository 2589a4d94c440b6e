package report

import "testing"

func TestAudienceReadsBack(t *testing.T) {
	for _, a := range []Audience{Technician, File, Owner} {
		var back Audience
		text, err := a.MarshalText()
		if err == nil {
			err = back.UnmarshalText(text)
		}
		if err != nil || back != a {
			t.Errorf("%v reads back as %v, %v", a, back, err)
		}
	}
}
