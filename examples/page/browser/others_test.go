package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/gobwas/ws"
	"github.com/gobwas/ws/wsutil"

	"github.com/satline/satline"
)

// A browser beside Chromium opens an address and runs a script that returns a text.
type browser interface {
	open(address string) error
	run(script string) (string, error)
}

// Firefox and WebKit open the page from a file, answer as the library does, convert units,
// and have the visit again when it is opened anew.
func TestOtherBrowsers(t *testing.T) {
	t.Parallel()
	address := fileURL(pageFile(t))
	for name, start := range map[string]func(*testing.T) browser{
		"Firefox": firefox, "WebKit": webkit,
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			b := start(t)
			if err := b.open(address); err != nil {
				t.Fatal(err)
			}
			until := func(what, script string) {
				t.Helper()
				var got string
				var err error
				for range 150 {
					got, err = b.run("return String(" + script + ")")
					if err == nil && got == "true" {
						return
					}
					time.Sleep(200 * time.Millisecond)
				}
				headline, _ := b.run(`return document.getElementById("headline").textContent`)
				t.Fatalf("not within 30 s: %s: %s %v; the page says %q", what, got, err, headline)
			}
			const answered = `document.documentElement.dataset.answered === "whole"`
			until("the first answer", answered)
			press := `document.getElementById("example").click(); return ""`
			if _, err := b.run(press); err != nil {
				t.Fatal(err)
			}
			until("the example's answer",
				answered+` && document.getElementById("figures").children.length === 4`)
			a, err := satline.Assess(visitOf(t, demo))
			if err != nil {
				t.Fatal(err)
			}
			says := fmt.Sprintf(`document.getElementById("headline").textContent.
				replaceAll("\u00a0", " ") === %q`, a.Headline.Text)
			until("the library's headline", says)
			celsius := `const s = document.querySelector('[data-unit="readings.suctionLine"]');
				s.value = "°C"; s.dispatchEvent(new Event("change", {bubbles: true})); return ""`
			if _, err := b.run(celsius); err != nil {
				t.Fatal(err)
			}
			until("a converted number",
				`parseFloat(document.getElementById("f-readings-suctionLine").value) < 30`)
			if err := b.open(address); err != nil {
				t.Fatal(err)
			}
			until("the same headline after opening it again", answered+" && "+says)
		})
	}
}

// begin starts a program and ends it with the test.
func begin(t *testing.T, env []string, name string, args ...string) *bytes.Buffer {
	t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), env...)
	out := new(bytes.Buffer)
	cmd.Stderr = out
	if err := cmd.Start(); err != nil {
		t.Fatalf("no %s to test the page in: %v", name, err)
	}
	t.Cleanup(func() {
		cmd.Process.Kill()
		cmd.Wait()
	})
	return out
}

// A bidi speaks WebDriver BiDi, which Firefox has built in.
type bidi struct {
	call    func(method string, params any) (json.RawMessage, error)
	context string
}

func firefox(t *testing.T) browser {
	const port = "29229"
	begin(t, []string{"HOME=" + t.TempDir()}, "firefox-esr", "--headless", "--no-remote",
		"--profile", t.TempDir(), "--remote-debugging-port", port, "about:blank")
	b := new(bidi)
	for range 100 {
		conn, _, _, err := ws.Dial(t.Context(), "ws://127.0.0.1:"+port+"/session")
		if err != nil {
			time.Sleep(100 * time.Millisecond)
			continue
		}
		t.Cleanup(func() { conn.Close() })
		id := 0
		b.call = func(method string, params any) (json.RawMessage, error) {
			id++
			call := map[string]any{"id": id, "method": method, "params": params}
			request, err := json.Marshal(call)
			if err != nil {
				return nil, err
			}
			// A browser starts slowly where a machine has other work.
			if err := conn.SetDeadline(time.Now().Add(2 * time.Minute)); err != nil {
				return nil, err
			}
			if err := wsutil.WriteClientText(conn, request); err != nil {
				return nil, err
			}
			for {
				text, err := wsutil.ReadServerText(conn)
				if err != nil {
					return nil, err
				}
				var m struct {
					ID             int
					Error, Message string
					Result         json.RawMessage
				}
				if err := json.Unmarshal(text, &m); err != nil {
					return nil, err
				}
				if m.ID == id && m.Error != "" {
					return nil, fmt.Errorf("%s: %s: %s", method, m.Error, m.Message)
				} else if m.ID == id {
					return m.Result, nil
				}
			}
		}
		break
	}
	if b.call == nil {
		t.Fatal("Firefox does not answer")
	}
	none := map[string]any{"capabilities": map[string]any{}}
	if _, err := b.call("session.new", none); err != nil {
		t.Fatal(err)
	}
	text, err := b.call("browsingContext.getTree", map[string]any{})
	var tree struct{ Contexts []struct{ Context string } }
	if err == nil {
		err = json.Unmarshal(text, &tree)
	}
	if err != nil || len(tree.Contexts) == 0 {
		t.Fatalf("Firefox has no window: %v", err)
	}
	b.context = tree.Contexts[0].Context
	return b
}

func (b *bidi) open(address string) error {
	_, err := b.call("browsingContext.navigate",
		map[string]any{"context": b.context, "url": address, "wait": "complete"})
	return err
}

func (b *bidi) run(script string) (string, error) {
	text, err := b.call("script.evaluate", map[string]any{
		"expression": "(() => {" + script + "})()", "awaitPromise": true,
		"target": map[string]string{"context": b.context},
	})
	if err != nil {
		return "", err
	}
	var m struct {
		Result           struct{ Value any }
		ExceptionDetails struct{ Text string }
	}
	if err := json.Unmarshal(text, &m); err != nil {
		return "", err
	}
	if m.ExceptionDetails.Text != "" {
		return "", fmt.Errorf("%s", m.ExceptionDetails.Text)
	}
	return fmt.Sprint(m.Result.Value), nil
}

// A driver speaks WebDriver over HTTP, as WebKit's does.
type driver struct{ session string }

func webkit(t *testing.T) browser {
	const display, port = ":97", "29230"
	begin(t, nil, "Xvfb", display, "-screen", "0", "800x1000x24")
	log := begin(t, []string{"DISPLAY=" + display, "HOME=" + t.TempDir(),
		"WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS=1"}, "WebKitWebDriver", "--port="+port)
	found, err := filepath.Glob("/usr/lib/*/webkit2gtk-4.1/MiniBrowser")
	if err != nil || len(found) == 0 {
		t.Fatal("no MiniBrowser of webkit2gtk-driver to test the page in")
	}
	var session struct{ SessionID string }
	for range 50 {
		err = call("POST", "http://127.0.0.1:"+port+"/session", map[string]any{
			"capabilities": map[string]any{"alwaysMatch": map[string]any{
				"webkitgtk:browserOptions": map[string]any{
					"binary": found[0], "args": []string{"--automation"},
				},
			}},
		}, &session)
		if err == nil {
			break
		}
		time.Sleep(200 * time.Millisecond)
	}
	if err != nil {
		t.Fatalf("WebKit does not answer: %v\n%s", err, log)
	}
	d := driver{"http://127.0.0.1:" + port + "/session/" + session.SessionID}
	t.Cleanup(func() { call("DELETE", d.session, nil, new(any)) })
	return d
}

func (d driver) open(address string) error {
	return call("POST", d.session+"/url", map[string]any{"url": address}, new(any))
}

func (d driver) run(script string) (text string, err error) {
	err = call("POST", d.session+"/execute/sync",
		map[string]any{"script": script, "args": []any{}}, &text)
	return text, err
}

func call(method, address string, body, into any) error {
	text, err := json.Marshal(body)
	if err != nil {
		return err
	}
	request, err := http.NewRequest(method, address, bytes.NewReader(text))
	if err != nil {
		return err
	}
	answer, err := http.DefaultClient.Do(request)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	var m struct{ Value json.RawMessage }
	if err := json.NewDecoder(answer.Body).Decode(&m); err != nil {
		return err
	}
	if answer.StatusCode != http.StatusOK {
		return fmt.Errorf("%s: %s", answer.Status, strings.TrimSpace(string(m.Value)))
	}
	return json.Unmarshal(m.Value, into)
}
