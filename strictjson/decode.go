package strictjson

import (
	"bytes"
	"encoding"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/satline/satline/internal/base/visible"
	"github.com/satline/satline/quantity"
)

// Limits bound what Decode looks at. All three have to be set: a limit of zero lets
// nothing through.
type Limits struct {
	Bytes int // of the whole document
	Depth int // of nested objects and lists
	Items int // of one list, or keys of one object
}

// Decode reads one JSON document into the struct that into points to, by its json
// tags; a field with the tag strict:"required" has to be there, and that of a gauge pressure with
// strict:"uncertainty" may be "0.6 psi", as behind "±". It reads strings,
// booleans, numbers, structs and lists of them, pointers to them, durations
// ("15m", "15 min"), dates ("2026-07-14", "2026-07-14 09:30", RFC 3339), and
// whatever reads itself from text, as the quantities do. The error is an *Error, that of the
// first mistake. On error, into may be partly filled.
func Decode(data []byte, into any, lim Limits) error {
	return DecodeStyled(data, into, lim, quantity.Style{})
}

// DecodeStyled is Decode of a document whose quantities may also be written as a
// style has them: with Comma, "6,5 kg". What programs write, with a point, is read
// the same in every style.
func DecodeStyled(data []byte, into any, lim Limits, style quantity.Style) error {
	if len(data) > lim.Bytes {
		return &Error{Line: 1, Problem: fmt.Sprintf("the document has %d bytes; at most %d are "+
			"read", len(data), lim.Bytes)}
	}
	if !utf8.Valid(data) {
		return &Error{Line: 1, Problem: "the document is not UTF-8 text"}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // some editors put a byte order mark
	if len(bytes.TrimSpace(data)) == 0 {
		return &Error{Line: 1, Problem: "the document is empty"}
	}
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		return errors.New("strictjson: into is not a pointer to a value")
	}
	d := decoder{data: data, lim: lim, style: style, dec: tokensOf(data)}
	err := d.value(target.Elem(), nil, 0)
	if err == nil {
		if _, end := d.dec.Token(); end != io.EOF {
			err = d.fail(nil, "there is more after the end of the document", nil)
		}
	}
	if last, ok := err.(*Error); ok {
		d.wrong = append(d.wrong, last)
	} else if err != nil || len(d.wrong) == 0 {
		return err
	}
	first := d.wrong[0]
	first.Also = d.wrong[1:]
	return first
}

type decoder struct {
	data  []byte
	lim   Limits
	style quantity.Style
	dec   tokens
	wrong []*Error // that did not keep what stands behind them from being read
}

func (d *decoder) fail(at *place, problem string, cause error) error {
	return &Error{Path: at.String(), Line: lineAt(d.data, d.dec.InputOffset()), Problem: problem,
		Err: cause}
}

// token says in words of its own what is no JSON, those of encoding/json change from one
// release to the next.
func (d *decoder) token(in *place) (token, error) {
	before := d.dec.InputOffset()
	t, err := d.dec.Token()
	if err == nil {
		return t, nil
	}
	rest := bytes.TrimLeft(d.data[min(before, int64(len(d.data))):], " \t\r\n,:")
	at := int64(len(d.data) - len(rest))
	problem := fmt.Sprintf("not JSON from %q on", clip(string(rest)))
	if len(rest) == 0 || opensText(rest) {
		problem = "the document ends too early; a bracket, brace or quote is not closed"
	}
	return t, &Error{Path: in.String(), Line: lineAt(d.data, at), Problem: problem, Err: err}
}

// opensText reports whether a text begins here that has no end.
func opensText(rest []byte) bool {
	if rest[0] != '"' {
		return false
	}
	for i := 1; i < len(rest); i++ {
		switch rest[i] {
		case '"':
			return false
		case '\\':
			i++
		}
	}
	return true
}

// value reads on behind a text or a number that is wrong by itself, up to mostWrong of them.
func (d *decoder) value(v reflect.Value, at *place, depth int) error {
	t, err := d.token(at)
	if err != nil {
		return err
	}
	err = d.fill(v, t, at, depth)
	wrong, ok := err.(*Error)
	if !ok || t.kind == '{' || t.kind == '[' || len(d.wrong) == mostWrong {
		return err
	}
	d.wrong = append(d.wrong, wrong)
	return nil
}

const mostWrong = 50

var durationType, timeType = reflect.TypeFor[time.Duration](), reflect.TypeFor[time.Time]()

func (d *decoder) fill(v reflect.Value, t token, at *place, depth int) error {
	if depth > d.lim.Depth {
		return d.fail(at, fmt.Sprintf("nested more than %d deep", d.lim.Depth), nil)
	}
	if t.kind == null {
		return d.fail(at, "null is not a value; leave out what is not known", nil)
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		return d.fill(v.Elem(), t, at, depth)
	}
	if v.Type() == durationType {
		return d.duration(v, t, at)
	}
	if v.Type() == timeType {
		return d.time(v, t, at)
	}
	if into, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		return d.text(into, t, at)
	}
	switch v.Kind() {
	case reflect.Struct:
		return d.object(v, t, at, depth)
	case reflect.Slice:
		return d.list(v, t, at, depth)
	case reflect.String:
		if t.kind != text {
			return d.unlike(at, "a text in quotes", t)
		}
		v.SetString(string(t.text))
	case reflect.Bool:
		if t.kind != boolean {
			return d.unlike(at, "true or false", t)
		}
		v.SetBool(t.text[0] == 't')
	case reflect.Float64:
		if t.kind != number {
			return d.unlike(at, "a number", t)
		}
		f, err := strconv.ParseFloat(string(t.text), 64)
		if err != nil || math.IsInf(f, 0) {
			return d.fail(at, "the number is beyond what a number can hold", err)
		}
		v.SetFloat(f)
	case reflect.Int, reflect.Int64:
		if t.kind != number {
			return d.unlike(at, "a whole number", t)
		}
		i, err := strconv.ParseInt(string(t.text), 10, v.Type().Bits())
		if err != nil {
			return d.fail(at, "want a whole number, got "+clip(string(t.text)), err)
		}
		v.SetInt(i)
	default:
		return fmt.Errorf("strictjson: %s cannot be read into a %s", at, v.Type())
	}
	return nil
}

func (d *decoder) text(into encoding.TextUnmarshaler, t token, at *place) error {
	if t.kind != text {
		if t.kind == number {
			if err := into.UnmarshalText(t.text); err != nil {
				return d.fail(at, err.Error()+", in quotes", err)
			}
		}
		return d.unlike(at, "a text in quotes", t)
	}
	err := into.UnmarshalText(t.text)
	if styled, ok := into.(styledUnmarshaler); err != nil && ok && d.style.Comma {
		err = styled.UnmarshalStyled(t.text, d.style)
	}
	if g, ok := into.(*quantity.GaugePressure); err != nil && ok && at != nil && at.spread {
		err = g.UnmarshalUncertainty(t.text, d.style)
	}
	if err != nil {
		return d.fail(at, err.Error(), err)
	}
	return nil
}

// A styledUnmarshaler is a quantity, or one with its uncertainty.
type styledUnmarshaler interface {
	UnmarshalStyled(text []byte, style quantity.Style) error
}

func (d *decoder) duration(v reflect.Value, t token, at *place) error {
	if t.kind != text {
		return d.unlike(at, `a duration in quotes, as in "15m" or "1h30m"`, t)
	}
	s := string(t.text)
	span, err := time.ParseDuration(strings.ReplaceAll(strings.ReplaceAll(s, " ", ""), "min", "m"))
	if err != nil {
		return d.fail(at, fmt.Sprintf("%q is not a duration; write one as in \"15m\", \"90s\" "+
			"or \"1h30m\"", clip(s)), err)
	}
	v.SetInt(int64(span))
	return nil
}

// moments are how a moment may be written: with its offset, as programs do, or as a wall
// shows it.
var moments = []string{time.RFC3339Nano, "2006-01-02T15:04Z07:00", "2006-01-02T15:04:05",
	"2006-01-02T15:04", "2006-01-02 15:04", time.DateOnly, "2006-01"}

func (d *decoder) time(v reflect.Value, t token, at *place) error {
	if t.kind != text {
		return d.unlike(at, `a date in quotes, as in "2026-07-14" or "2026-07-14 09:30"`, t)
	}
	s := string(t.text)
	for _, layout := range moments {
		if moment, err := time.Parse(layout, s); err == nil {
			v.Set(reflect.ValueOf(moment))
			return nil
		}
	}
	return d.fail(at, fmt.Sprintf("%q is no date; write one as in \"2026-07-14\", "+
		"\"2026-07-14 09:30\" or \"2026-07-14T09:30:00-06:00\"", clip(s)), nil)
}

func (d *decoder) object(v reflect.Value, t token, in *place, depth int) error {
	if t.kind != '{' {
		return d.unlike(in, "an object in braces", t)
	}
	fields := fieldsOf(v.Type())
	seen := make([]string, 0, 16) // of the fields that there are
	for d.dec.More() {
		t, err := d.token(in)
		if err != nil {
			return err
		}
		if t.kind != text {
			return d.unlike(in, "a field name in quotes", t)
		}
		if len(seen) >= d.lim.Items {
			return d.fail(in, fmt.Sprintf("more than %d fields", d.lim.Items), nil)
		}
		known, ok := fields.byName[string(t.text)]
		if !ok {
			key := string(t.text)
			return d.fail(&place{in: in, key: key}, unknownField(key, fields.byName), nil)
		}
		at := &place{in: in, key: known.name, spread: known.spread}
		if slices.Contains(seen, known.name) {
			return d.fail(at, "the field is given twice", nil)
		}
		seen = append(seen, known.name)
		field, err := v.FieldByIndexErr(known.index)
		if err != nil {
			return fmt.Errorf("strictjson: %s: %w", at, err)
		}
		if err := d.value(field, at, depth+1); err != nil {
			return err
		}
	}
	if _, err := d.token(in); err != nil {
		return err
	}
	for _, name := range fields.required {
		if !slices.Contains(seen, name) {
			return d.fail(
				&place{in: in, key: name}, "the field is missing, and has to be given here", nil,
			)
		}
	}
	return nil
}

func (d *decoder) list(v reflect.Value, t token, in *place, depth int) error {
	if t.kind != '[' {
		return d.unlike(in, "a list in brackets", t)
	}
	v.SetLen(0)
	for d.dec.More() {
		if v.Len() >= d.lim.Items {
			return d.fail(in, fmt.Sprintf("more than %d items", d.lim.Items), nil)
		}
		item := reflect.New(v.Type().Elem()).Elem()
		if err := d.value(item, &place{in: in, item: true, index: v.Len()}, depth+1); err != nil {
			return err
		}
		v.Set(reflect.Append(v, item))
	}
	_, err := d.token(in)
	return err
}

func (d *decoder) unlike(at *place, want string, t token) error {
	got := "a value"
	switch t.kind {
	case '{':
		got = "an object"
	case '[':
		got = "a list"
	case text:
		got = fmt.Sprintf("the text %q", clip(string(t.text)))
	case number:
		got = "the number " + clip(string(t.text))
	case boolean:
		got = string(t.text)
	}
	return d.fail(at, "want "+want+", got "+got, nil)
}

// A place is where in a document a value stands: a field, or an item of a list; nil is the top.
type place struct {
	in     *place
	key    string
	spread bool
	item   bool // at index, not at key
	index  int
}

// String is the path from the top: "log[3].time".
func (p *place) String() string {
	switch {
	case p == nil:
		return ""
	case p.item:
		return fmt.Sprintf("%s[%d]", p.in, p.index)
	case p.in == nil:
		return clip(p.key)
	}
	return p.in.String() + "." + clip(p.key)
}

// clip keeps a text of the document short, and to one line that no terminal obeys.
func clip(s string) string {
	const most = 40
	if len(s) <= most {
		return visible.Line(s)
	}
	return visible.Line(strings.ToValidUTF8(s[:most], "")) + "…"
}
