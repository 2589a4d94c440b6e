package server

import (
	"crypto/rand"
	"net/http"
	"strings"
)

// idHeader names a request, in its answer and in the log.
const idHeader = "X-Request-Id"

// requestID is the name that a proxy has given the request, or a new one.
func requestID(r *http.Request) string {
	given := r.Header.Get(idHeader)
	if given != "" && len(given) <= 64 && strings.Trim(given, idLetters) == "" {
		return given
	}
	return rand.Text()
}

const idLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._"
