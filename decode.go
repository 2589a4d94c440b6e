package satline

import (
	"fmt"
	"io"

	"github.com/satline/satline/strictjson"
)

// MaxVisitBytes is the longest visit document that is read.
const MaxVisitBytes = 1 << 20

// DecodeVisit reads the JSON form of a visit: UTF-8, at most MaxVisitBytes,
// every field known, none twice, every quantity with its unit. The error says
// in one line where the document is wrong and what to write instead; its cause is a
// *strictjson.Error, with the path and the line apart.
func DecodeVisit(data []byte) (Visit, error) {
	type fields Visit // without UnmarshalJSON
	var v fields
	if err := strictly(data, &v); err != nil {
		return Visit{}, err
	}
	return Visit(v), nil
}

// UnmarshalJSON is DecodeVisit. What stood in v is not kept.
func (v *Visit) UnmarshalJSON(text []byte) (err error) {
	*v, err = DecodeVisit(text)
	return err
}

func strictly(data []byte, into any) error {
	err := strictjson.Decode(data, into, strictjson.Limits{Bytes: MaxVisitBytes, Depth: 16, Items: 5000})
	if err != nil {
		return &VisitError{Kind: DocumentMalformed, Problem: err.Error(), Err: err}
	}
	return nil
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
