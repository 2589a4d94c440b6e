package satline

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

// MaxVisitBytes is the longest visit document that is read.
const MaxVisitBytes = 1 << 20

// DecodeVisit reads the JSON form of a visit: UTF-8, at most MaxVisitBytes,
// every field known, none twice, every quantity with its unit. Where the language of the
// visit writes a decimal comma, its quantities may too: "6,5 kg". The error
// is a *VisitError that says in one line where the document is wrong and what to write instead;
// its cause is a *strictjson.Error, with the path and the line apart, and the mistakes behind it.
func DecodeVisit(data []byte) (Visit, error) {
	type fields Visit // without UnmarshalJSON
	var v fields
	err := strictly(data, &v, quantity.Style{})
	if err != nil && words.DecimalComma(languageOf(data).tag()) {
		v = fields{}
		err = strictly(data, &v, quantity.Style{Comma: true})
	}
	if err != nil {
		return Visit{}, err
	}
	return Visit(v), nil
}

// UnmarshalJSON is DecodeVisit. What stood in v is not kept.
func (v *Visit) UnmarshalJSON(text []byte) (err error) {
	*v, err = DecodeVisit(text)
	return err
}

// languageOf is the language a document names, if it can be read that far.
func languageOf(data []byte) Language {
	var named struct {
		Language Language `json:"language"`
	}
	if len(data) > MaxVisitBytes || json.Unmarshal(data, &named) != nil {
		return ""
	}
	return named.Language
}

func strictly(data []byte, into any, style quantity.Style) error {
	limits := strictjson.Limits{Bytes: MaxVisitBytes, Depth: 16, Items: 5000}
	err := strictjson.DecodeStyled(data, into, limits, style)
	if at, ok := errors.AsType[*strictjson.Error](err); ok {
		kind := DocumentMalformed
		if _, unknown := errors.AsType[*quantity.NameError](at); unknown {
			kind = FieldUnknown
		}
		return &VisitError{Field: at.Path, Kind: kind, Problem: at.Problem, Err: at}
	}
	return err
}

// ReadVisit is DecodeVisit of all that r has; it stops reading one byte past
// MaxVisitBytes. The error is that of DecodeVisit, or wraps the reader's.
func ReadVisit(r io.Reader) (Visit, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxVisitBytes+1))
	if err != nil {
		return Visit{}, fmt.Errorf("visit: cannot be read: %w", err)
	}
	return DecodeVisit(data)
}
