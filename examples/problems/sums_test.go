package main

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// A sumReader works out a printed calculation, as a student with a calculator would: numbers
// with their units left aside, a percentage as a share.
type sumReader struct{ words []string }

var printedNumber = regexp.MustCompile(`^−?[0-9][0-9,]*(\.[0-9]+)?²?$`)

func (r *sumReader) next() string {
	for len(r.words) > 0 {
		switch w := r.words[0]; {
		case w == "+" || w == "−" || w == "×" || w == "/" || w == "(" || w == ")" || w == ")²",
			printedNumber.MatchString(w):
			return w
		}
		r.words = r.words[1:]
	}
	return ""
}

func (r *sumReader) take() string {
	w := r.next()
	if w != "" {
		r.words = r.words[1:]
	}
	return w
}

func (r *sumReader) factor() (float64, error) {
	w := r.take()
	switch {
	case w == "(":
		v, err := r.sum()
		switch r.take() {
		case ")":
			return v, err
		case ")²":
			return v * v, err
		}
		return 0, fmt.Errorf("no end of a parenthesis")
	case !printedNumber.MatchString(w):
		return 0, fmt.Errorf("%q is no number", w)
	}
	v := figure(strings.TrimSuffix(w, "²"))
	if len(r.words) > 0 && r.words[0] == "%" {
		v /= 100
	}
	return v, nil
}

func (r *sumReader) product() (float64, error) {
	v, err := r.factor()
	for err == nil && (r.next() == "×" || r.next() == "/") {
		op := r.take()
		var w float64
		if w, err = r.factor(); op == "×" {
			v *= w
		} else {
			v /= w
		}
	}
	return v, err
}

func (r *sumReader) sum() (float64, error) {
	v, err := r.product()
	for err == nil && (r.next() == "+" || r.next() == "−") {
		op := r.take()
		var w float64
		if w, err = r.product(); op == "+" {
			v += w
		} else {
			v -= w
		}
	}
	return v, err
}

// Every calculation of a worked solution comes to what it says, from its own print: to the
// rounding of the result, and four in a thousand for that of the numbers in it.
func TestSumsComeOut(t *testing.T) {
	read := 0
	eachSet(t, func(t *testing.T, s Set) {
		for _, p := range s.Problems {
			for _, step := range p.Steps {
				left, right, ok := strings.Cut(step.Sum, " = ")
				if !ok || strings.Contains(step.Sum, "→") {
					continue
				}
				r := sumReader{words: mathWords(left)}
				got, err := r.sum()
				if err != nil || r.next() != "" {
					t.Errorf("%s/%s: %s: %v", p.Topic, p.Form, step.Sum, err)
					continue
				}
				number, _, _ := strings.Cut(right, " ")
				_, places, _ := strings.Cut(number, ".")
				off := 0.51 * math.Pow10(-len(places))
				if places == "" { // rounded to tens or hundreds
					zeros := len(number) - len(strings.TrimRight(strings.ReplaceAll(number, ",",
						""), "0"))
					off = 0.51 * math.Pow10(max(0, zeros-strings.Count(number, ",")))
				}
				if want := figure(right); math.Abs(got-want) > off+0.004*math.Abs(want) {
					t.Errorf("%s/%s: %s comes to %s", p.Topic, p.Form, step.Sum,
						strconv.FormatFloat(got, 'g', 6, 64))
				}
				read++
			}
		}
	})
	t.Logf("%d calculations", read)
}
