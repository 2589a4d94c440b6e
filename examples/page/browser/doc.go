// Package browser holds the tests of the page in real browsers: Chromium, Firefox and WebKit.
// It is a module of its own, so that what drives browsers is no dependency of the library.
//
//	npm ci && go test ./...                          all three
//	go test -run '^$' -bench . ./...                 the speed of the page
//	go test -run TestScreens -pictures DIR ./...     a picture of every state
package browser
