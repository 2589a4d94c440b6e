package server

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every request that guides/integrator.md shows is answered as it stands there.
func TestRequestsOfTheReadme(t *testing.T) {
	text, err := os.ReadFile("../../../guides/integrator.md")
	if errors.Is(err, fs.ErrNotExist) {
		t.Skip("SKIPPED: a copy of the service stands beside no guides/integrator.md of satline")
	}
	if err != nil {
		t.Fatal(err)
	}
	c := newClient(t)
	asked := 0
	for line := range strings.Lines(string(text)) {
		_, command, shown := strings.Cut(line, "curl -s ")
		if !shown {
			continue
		}
		asked++
		method, media, body, path := "GET", "", "", ""
		for args := words(command); len(args) > 0; args = args[1:] {
			switch arg := args[0]; arg {
			case "-H", "-d", "--data-binary", "-X", "-T":
				if len(args) < 2 {
					t.Fatalf("%s: nothing after %s", line, arg)
				}
				args = args[1:]
				switch value := args[0]; {
				case arg == "-H":
					media = strings.TrimPrefix(value, "Content-Type: ")
				case arg == "-X":
					method = value
				case arg == "-T":
					body = demoBatch(t)
				case strings.HasPrefix(value, "@"):
					file, err := os.ReadFile(filepath.Join("../../..", value[1:]))
					if err != nil {
						t.Error(err)
					}
					method, body = "POST", string(file)
				default:
					method, body = "POST", value
				}
			default:
				u, err := url.Parse(arg)
				if err != nil || u.Host != "127.0.0.1:8080" {
					t.Fatalf("%s: %q is not understood", line, arg)
				}
				path = u.Path
			}
		}
		if status, answer := c.do(method, path, media, body); status != http.StatusOK ||
			bytes.Contains(answer, []byte(`"problem":`)) {
			t.Errorf("%s: %d %.300s", line, status, answer)
		}
	}
	if asked < 6 {
		t.Errorf("guides/integrator.md shows %d requests", asked)
	}
}

// demoBatch is the demonstration visits, one a line.
func demoBatch(t *testing.T) string {
	t.Helper()
	files, err := filepath.Glob("../../visit/demo/*.json")
	if err != nil || len(files) < 2 {
		t.Fatalf("%v %v", files, err)
	}
	var out bytes.Buffer
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err == nil {
			err = json.Compact(&out, text)
		}
		if err != nil {
			t.Fatal(err)
		}
		out.WriteByte('\n')
	}
	return out.String()
}

// words are those of a shell command with single quotes.
func words(command string) []string {
	var out []string
	for i, part := range strings.Split(command, "'") {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}
