package main

import (
	"bufio"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// browser drives a headless Chromium by the DevTools protocol over a pipe.
type browser struct {
	t       testing.TB
	send    io.Writer
	session string

	mu      sync.Mutex
	next    int
	waiting map[int]chan message
	asked   []string // addresses of every request that a page made
	gone    chan struct{}
}

type message struct {
	ID     int
	Method string
	Params json.RawMessage
	Result json.RawMessage
	Error  *struct{ Message string }
}

// startBrowser skips the test, loudly, where there is no Chromium.
func startBrowser(t testing.TB) *browser {
	t.Helper()
	var path string
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Skip("SKIPPED: no chromium is on the PATH; THE PAGE WAS NOT TESTED IN A BROWSER")
	}
	toBrowser, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r, fromBrowser, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(
		path,
		"--headless",
		"--no-sandbox",
		"--disable-gpu",
		"--disable-quic",
		"--no-first-run",
		"--disable-background-networking",
		"--disable-component-update",
		"--disable-sync",
		"--hide-scrollbars",
		"--user-data-dir="+t.TempDir(),
		"--remote-debugging-pipe",
		"about:blank",
	)
	cmd.ExtraFiles = []*os.File{toBrowser, fromBrowser}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	toBrowser.Close()
	fromBrowser.Close()
	b := &browser{t: t, send: w, waiting: make(map[int]chan message), gone: make(chan struct{})}
	go b.listen(r)
	t.Cleanup(func() {
		b.session = ""
		b.call("Browser.close", nil)
		w.Close()
		done := make(chan struct{})
		go func() { cmd.Wait(); close(done) }()
		select {
		case <-done:
		case <-time.After(5 * time.Second):
			cmd.Process.Kill()
			<-done
		}
	})
	return b
}

func (b *browser) listen(r io.Reader) {
	defer close(b.gone)
	in := bufio.NewReaderSize(r, 1<<20)
	for {
		text, err := in.ReadBytes(0)
		if err != nil {
			return
		}
		var m message
		if json.Unmarshal(text[:len(text)-1], &m) != nil {
			continue
		}
		b.mu.Lock()
		if answer := b.waiting[m.ID]; m.ID != 0 && answer != nil {
			delete(b.waiting, m.ID)
			answer <- m
		}
		if m.Method == "Network.requestWillBeSent" {
			var p struct{ Request struct{ URL string } }
			if json.Unmarshal(m.Params, &p) == nil {
				b.asked = append(b.asked, p.Request.URL)
			}
		}
		b.mu.Unlock()
	}
}

func (b *browser) call(method string, params any) json.RawMessage {
	b.t.Helper()
	b.mu.Lock()
	b.next++
	id := b.next
	answer := make(chan message, 1)
	b.waiting[id] = answer
	b.mu.Unlock()
	request := map[string]any{"id": id, "method": method}
	if params != nil {
		request["params"] = params
	}
	if b.session != "" {
		request["sessionId"] = b.session
	}
	text, err := json.Marshal(request)
	if err != nil {
		b.t.Fatal(err)
	}
	if _, err := b.send.Write(append(text, 0)); err != nil {
		b.t.Errorf("%s: %v", method, err)
		return nil
	}
	select {
	case m := <-answer:
		if m.Error != nil {
			b.t.Errorf("%s: %s", method, m.Error.Message)
		}
		return m.Result
	case <-b.gone:
		if method != "Browser.close" {
			b.t.Errorf("%s: the browser is gone", method)
		}
	case <-time.After(30 * time.Second):
		b.t.Errorf("%s: no answer within 30 s", method)
	}
	return nil
}

func decode[T any](b *browser, text json.RawMessage) (v T) {
	b.t.Helper()
	if err := json.Unmarshal(text, &v); err != nil {
		b.t.Fatalf("%v: %.200s", err, text)
	}
	return v
}

// open shows a file in a new tab of the given size, in CSS pixels.
func (b *browser) open(file string, width, height int, phone bool) {
	b.t.Helper()
	b.session = ""
	target := decode[struct{ TargetID string }](
		b,
		b.call("Target.createTarget", map[string]any{"url": "about:blank"}),
	)
	b.session = decode[struct{ SessionID string }](
		b,
		b.call(
			"Target.attachToTarget",
			map[string]any{"targetId": target.TargetID, "flatten": true},
		),
	).SessionID
	for _, domain := range []string{"Page", "Runtime", "Network", "Accessibility"} {
		b.call(domain+".enable", nil)
	}
	scale := 1
	if phone {
		scale = 2
	}
	b.call(
		"Emulation.setDeviceMetricsOverride",
		map[string]any{
			"width":             width,
			"height":            height,
			"deviceScaleFactor": scale,
			"mobile":            phone,
		},
	)
	b.navigate(file)
}

func (b *browser) navigate(file string) {
	b.t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		b.t.Fatal(err)
	}
	b.eval(`delete document.documentElement.dataset.answered`)
	b.call("Page.navigate", map[string]any{"url": "file://" + filepath.ToSlash(path)})
	b.wait("the first answer", `document.documentElement?.dataset.answered === "whole"`)
}

// eval runs an expression in the page and returns its value as JSON.
func (b *browser) eval(expression string) json.RawMessage {
	b.t.Helper()
	r := decode[struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails *struct {
			Text      string
			Exception struct{ Description string }
		}
	}](b, b.call("Runtime.evaluate", map[string]any{"expression": expression, "returnByValue": true, "awaitPromise": true}))
	if r.ExceptionDetails != nil {
		b.t.Fatalf(
			"%s: %s %s",
			expression,
			r.ExceptionDetails.Text,
			r.ExceptionDetails.Exception.Description,
		)
	}
	return r.Result.Value
}

func (b *browser) text(expression string) string {
	b.t.Helper()
	return decode[string](b, b.eval(expression))
}

func (b *browser) wait(what, condition string) {
	b.t.Helper()
	for range 1000 {
		if string(b.eval("!!("+condition+")")) == "true" {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	b.t.Fatalf("not within 10 s: %s", what)
}

// write types text into a field as a keyboard does and waits for the answer.
func (b *browser) write(id, text string) {
	b.t.Helper()
	b.eval(
		fmt.Sprintf(
			`(() => { const e = document.getElementById(%q); for (let d = e.closest("details"); d; d = null) d.open = true; e.focus(); e.select(); delete document.documentElement.dataset.answered; })()`,
			id,
		),
	)
	b.call("Input.insertText", map[string]any{"text": text})
	b.wait("an answer to "+id, `document.documentElement.dataset.answered`)
}

// fill writes into several fields.
func (b *browser) fill(fields map[string]string) {
	b.t.Helper()
	for id, text := range fields {
		b.write(id, text)
	}
}

func (b *browser) press(selector string) {
	b.t.Helper()
	b.eval(
		fmt.Sprintf(
			`(() => { delete document.documentElement.dataset.answered; document.querySelector(%q).click(); })()`,
			selector,
		),
	)
}

func (b *browser) key(name string, code int) {
	b.t.Helper()
	for _, kind := range []string{"keyDown", "keyUp"} {
		b.call(
			"Input.dispatchKeyEvent",
			map[string]any{"type": kind, "key": name, "code": name, "windowsVirtualKeyCode": code},
		)
	}
}

// picture writes what is shown to a file, the whole page where full is set.
func (b *browser) picture(file string, full bool) {
	b.t.Helper()
	shot := decode[struct{ Data string }](
		b,
		b.call(
			"Page.captureScreenshot",
			map[string]any{"format": "png", "captureBeyondViewport": full},
		),
	)
	data, err := base64.StdEncoding.DecodeString(shot.Data)
	if err == nil {
		err = os.WriteFile(file, data, 0o644)
	}
	if err != nil {
		b.t.Error(err)
	}
}

func (b *browser) requests() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	var out []string
	for _, u := range b.asked {
		if !strings.HasPrefix(u, "file://") && !strings.HasPrefix(u, "data:") &&
			!strings.HasPrefix(u, "blob:") {
			out = append(out, u)
		}
	}
	return out
}
