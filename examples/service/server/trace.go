package server

import (
	"crypto/rand"
	"encoding/hex"
	"regexp"
	"strings"
)

// traceparent is the header of W3C Trace Context, section 3.2: version, trace, parent
// and flags; a version after 00 may have more behind them.
var traceparent = regexp.MustCompile(
	`^([0-9a-f]{2})-([0-9a-f]{32})-([0-9a-f]{16})-[0-9a-f]{2}(-.*)?$`)

// traceOf is the trace that a request belongs to and the span that asked; a new trace
// where the header is missing or wrong, as the standard has it.
func traceOf(header string) (trace, parent string) {
	if m := traceparent.FindStringSubmatch(header); m != nil && m[1] != "ff" &&
		(m[1] != "00" || m[4] == "") && strings.Trim(m[2], "0") != "" &&
		strings.Trim(m[3], "0") != "" {
		return m[2], m[3]
	}
	var id [16]byte
	rand.Read(id[:])
	return hex.EncodeToString(id[:]), ""
}
