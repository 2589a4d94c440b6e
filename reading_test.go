package satline

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// drawReadings draws readings, each of them taken or not.
func drawReadings(t *rapid.T) (r Readings) {
	v := reflect.ValueOf(&r).Elem()
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		if !rapid.Bool().Draw(t, name) {
			continue
		}
		text := texts[v.Field(i).Type()][rapid.IntRange(0, 1).Draw(t, name)]
		if err := json.Unmarshal([]byte(text), v.Field(i).Addr().Interface()); err != nil {
			t.Fatal(err)
		}
	}
	return r
}

// texts are two readings of each kind.
var texts = map[reflect.Type][2]string{
	reflect.TypeFor[Reading[quantity.Temperature]]():    {`"71 °F ± 0.6 °F"`, `"52 °F"`},
	reflect.TypeFor[Reading[quantity.GaugePressure]]():  {`"118 psig ± 0.5 psi"`, `"0 psig"`},
	reflect.TypeFor[Reading[quantity.VolumeFlow]]():     {`"1200 cfm ± 50 cfm"`, `"800 cfm"`},
	reflect.TypeFor[Reading[quantity.StaticPressure]](): {`"0.5 inH2O"`, `"0 inH2O"`},
	reflect.TypeFor[Reading[quantity.Power]]():          {`"2500 W ± 60 W"`, `"3 kW"`},
	reflect.TypeFor[Reading[quantity.Current]]():        {`"12 A ± 0.3 A"`, `"0 A"`},
}

// Whatever is done to any reading of a copy, the first is as it was.
func TestCopiedReadingIsACopy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first := LogEntry{At: time.Minute, Readings: drawReadings(t)}
		before, err := json.Marshal(first)
		if err != nil {
			t.Fatal(err)
		}
		second := first
		other := drawReadings(t)
		v := reflect.ValueOf(&second.Readings).Elem()
		for i := range v.NumField() {
			if p := v.Field(i).MethodByName("Get").Call(nil)[0]; !p.IsNil() {
				p.Elem().FieldByName("Std").SetFloat(7)
			}
		}
		if got, err := json.Marshal(second); err != nil || string(got) != string(before) {
			t.Fatalf("what Get returns is the reading itself: %s, %v", got, err)
		}
		for i := range readingFields {
			f := &readingFields[i]
			f.state(&second.Readings, DefaultInstruments())
			f.copy(&second.Readings, &other)
		}
		for i := range v.NumField() {
			if text := texts[v.Field(i).Type()][1]; rapid.Bool().Draw(t, "by its text") {
				err = json.Unmarshal([]byte(text), v.Field(i).Addr().Interface())
			} else {
				v.Field(i).SetZero()
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		if got, err := json.Marshal(first); err != nil || string(got) != string(before) {
			t.Fatalf("the first was\n%s\nand is\n%s, %v", before, got, err)
		}
	})
}

// A reading not taken has no text, null takes none, and what cannot be read leaves what stood.
func TestReadingText(t *testing.T) {
	for typ, two := range texts {
		p := reflect.New(typ)
		if text, err := json.Marshal(p.Interface()); err == nil {
			t.Errorf("%v not taken is written as %s", typ, text)
		}
		for _, text := range append(two[:], "null", `""`, `"soon"`, `7`) {
			was := p.Elem().Interface()
			err := json.Unmarshal([]byte(text), p.Interface())
			is := p.Elem().Interface()
			if taken := strings.HasSuffix(text, `"`) && strings.ContainsAny(text, "0123456789"); taken {
				if again, _ := json.Marshal(is); err != nil || is == was || len(again) < 3 {
					t.Errorf("%v %s: %v %v", typ, text, is, err)
				}
			} else if is != was || (err == nil) != (text == "null") {
				t.Errorf("%v %s: %v after %v, %v", typ, text, is, was, err)
			}
		}
	}
	if _, err := DecodeVisit([]byte(`{"readings": {"suctionLine": null}}`)); err == nil {
		t.Error("a visit with null is read")
	}
	if s := (Reading[quantity.Temperature]{}).String(); s != "" {
		t.Errorf("a reading not taken prints as %q", s)
	}
}
