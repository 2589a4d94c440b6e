package strictjson_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

type question struct {
	Pressure quantity.GaugePressure `json:"pressure" strict:"required"`
	Line     *quantity.Temperature  `json:"line"`
}

var small = strictjson.Limits{Bytes: 16 << 10, Depth: 4, Items: 50}

// A mistake is answered with its place and what to mend.
func ExampleDecode() {
	var q question
	err := strictjson.Decode([]byte(`{"pressure": "118 psig", "lime": "52 °F"}`), &q, small)
	fmt.Println(err)
	var at *strictjson.Error
	fmt.Println(errors.As(err, &at), at.Path, at.Line)
	// Output:
	// lime (line 1): unknown field; did you mean "line"?
	// true lime 1
}

func ExampleDecodeStyled() {
	var q question
	err := strictjson.DecodeStyled([]byte(`{"pressure": "8,1 barg"}`), &q, small,
		quantity.Style{Comma: true})
	fmt.Println(q.Pressure, err)
	// Output: 810.0 kPag <nil>
}
