package work

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/base/span"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
	"golang.org/x/text/language"
)

// MaxOrderBytes is the longest document that is read.
const MaxOrderBytes = 4 << 20

// Decode reads the JSON form of an order: UTF-8, at most MaxOrderBytes, every field known,
// none twice, every quantity with its unit. Where the language of the order writes a decimal
// comma, its quantities may too. The error says in one line where the document is wrong and
// what to write instead; its cause is a *strictjson.Error.
func Decode(data []byte) (Order, error) {
	type fields Order // without UnmarshalJSON
	var o fields
	err := strictly(data, &o)
	return Order(o), err
}

// DecodeHistory reads a list of orders of one machine as strictly as Decode.
func DecodeHistory(data []byte) ([]Order, error) {
	type fields Order
	var list struct {
		Orders []fields `json:"orders" strict:"required"`
	}
	if err := strictly(data, &list); err != nil {
		return nil, err
	}
	out := make([]Order, len(list.Orders))
	for i, o := range list.Orders {
		out[i] = Order(o)
	}
	return out, nil
}

// Read is Decode of all that r has; it stops reading one byte past MaxOrderBytes.
func Read(r io.Reader) (Order, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxOrderBytes+1))
	if err != nil {
		return Order{}, fmt.Errorf("order: cannot be read: %w", err)
	}
	return Decode(data)
}

func strictly(data []byte, into any) error {
	var named struct {
		Language satline.Language `json:"language"`
		Orders   []struct {
			Language satline.Language `json:"language"`
		} `json:"orders"`
	}
	style := quantity.Style{}
	if len(data) <= MaxOrderBytes && json.Unmarshal(data, &named) == nil {
		if len(named.Orders) > 0 {
			named.Language = named.Orders[0].Language
		}
		style.Comma = words.DecimalComma(tag(named.Language))
	}
	limits := strictjson.Limits{Bytes: MaxOrderBytes, Depth: 24, Items: 5000}
	err := strictjson.DecodeStyled(data, into, limits, style)
	if at, ok := errors.AsType[*strictjson.Error](err); ok {
		kind := satline.DocumentMalformed
		if _, word := errors.AsType[*quantity.NameError](at); word {
			kind = unknown
		}
		return &Problem{Field: at.Path, Kind: kind, Problem: at.Problem, Err: at}
	}
	return err
}

// tag of a language that was not checked is that of no language.
func tag(l satline.Language) language.Tag {
	t, err := language.Parse(string(l))
	if err != nil {
		return language.Und
	}
	return t
}

// UnmarshalJSON is Decode. What stood in o is not kept.
func (o *Order) UnmarshalJSON(text []byte) (err error) {
	*o, err = Decode(text)
	return err
}

type readingFields Reading

// MarshalJSON writes the reading as Decode reads it, with the time as "15m0s".
func (r Reading) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		At span.Span `json:"at"`
		readingFields
	}{span.Span(r.At), readingFields(r)})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as Decode.
func (r *Reading) UnmarshalJSON(text []byte) error {
	var f readingFields
	err := strictly(text, &f)
	*r = Reading(f)
	return err
}
