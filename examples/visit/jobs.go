package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/report"
	"github.com/satline/satline/work"
)

// A kind is what a document holds.
type kind int

const (
	aVisit kind = iota
	anOrder
	aHistory
)

// kindOf tells it by the fields that only one has; what is wrong in a document is told by who
// reads it.
func kindOf(data []byte) kind {
	var top map[string]json.RawMessage
	if json.Unmarshal(data, &top) != nil {
		return aVisit
	}
	switch {
	case top["orders"] != nil:
		return aHistory
	case top["tasks"] != nil || top["machine"] != nil:
		return anOrder
	}
	return aVisit
}

// A form is how an answer is written.
type form struct {
	json, html, markdown bool
	audience             report.Audience
	units, language      string
}

// A written is what can be written for each audience.
type written interface {
	WriteText(io.Writer, report.Audience) error
	WriteMarkdown(io.Writer, report.Audience) error
	WriteHTML(io.Writer, report.Audience) error
}

// job judges an order or a history and writes what comes of it.
func job(data []byte, k kind, f form) (string, error) {
	var orders []work.Order
	if k == aHistory {
		list, err := work.DecodeHistory(data)
		if err != nil {
			return "", err
		}
		orders = list
	} else {
		o, err := work.Decode(data)
		if err != nil {
			return "", err
		}
		orders = []work.Order{o}
	}
	for i := range orders {
		if f.units != "" {
			if err := orders[i].Units.UnmarshalText([]byte(f.units)); err != nil {
				return "", fmt.Errorf("-units: %w", err)
			}
		}
		if f.language != "" {
			orders[i].Language = satline.Language(f.language)
		}
	}
	var of written
	var err error
	if k == aHistory {
		of, err = work.Compare(orders)
	} else {
		of, err = work.Judge(orders[0])
	}
	if err != nil {
		return "", err
	}
	var out strings.Builder
	switch {
	case f.json:
		err = writeJSON(&out, of)
	case f.html:
		err = of.WriteHTML(&out, f.audience)
	case f.markdown:
		err = of.WriteMarkdown(&out, f.audience)
	default:
		err = of.WriteText(&out, f.audience)
	}
	return out.String(), err
}
