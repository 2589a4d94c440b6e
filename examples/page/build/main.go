// Build makes the page: one HTML file that holds the library as WebAssembly and
// needs nothing else. Beside it stand three small files with which a phone keeps
// the page that is served over https: a manifest, a service worker, an icon.
//
//	go run ./examples/page/build             writes dist/satline.html
//	go run ./examples/page/build -o FILE
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"text/template"
)

//go:embed src
var src embed.FS

const (
	command = "github.com/satline/satline/examples/page/wasm"
	visits  = "github.com/satline/satline/examples/visit"
	fluids  = "github.com/satline/satline/refrigerant"
)

func main() {
	out := flag.String("o", "dist/satline.html", "file to write")
	flag.Parse()
	if err := build(*out, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func build(out string, report io.Writer) error {
	module, err := compile()
	if err != nil {
		return err
	}
	at, err := shuffle(module)
	if err != nil {
		return err
	}
	packed, err := pack(module)
	if err != nil {
		return err
	}
	page, err := assemble(packed, at)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return err
	}
	fmt.Fprintf(
		report, "%s: module %.2f MB, compressed %.2f MB, page %.2f MB\n", out, mega(module),
		mega(packed), mega(page),
	)
	if err := os.WriteFile(out, page, 0o644); err != nil {
		return err
	}
	return installable(filepath.Dir(out), page)
}

func mega(b []byte) float64 { return float64(len(b)) / 1e6 }

// compile returns the library as WebAssembly, without symbols.
func compile() ([]byte, error) {
	dir, err := os.MkdirTemp("", "satline-page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	to := filepath.Join(dir, "satline.wasm")
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", to, command)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, text)
	}
	return os.ReadFile(to)
}

// shuffle regroups the table of saturation within the module, first bytes of its numbers
// first: so it packs into two thirds. The worker puts it back. It returns where that is.
func shuffle(module []byte) (at [2]int, err error) {
	dir, err := exec.Command("go", "list", "-f", "{{.Dir}}", fluids).Output()
	if err != nil {
		return at, err
	}
	table, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), "saturation.bin"))
	if err != nil {
		return at, err
	}
	table = table[:len(table)/8*8]
	from := bytes.Index(module, table)
	if from < 0 {
		return at, errors.New("the table of saturation is not in the module")
	}
	for i, b := range table {
		module[from+i%8*(len(table)/8)+i/8] = b
	}
	return [2]int{from, len(table)}, nil
}

func pack(module []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(module); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// assemble puts everything into one document, whose policy admits its own
// script and style and nothing else, and no connection at all.
func assemble(packed []byte, shuffled [2]int) ([]byte, error) {
	read := func(name string) (string, error) {
		b, err := src.ReadFile("src/" + name)
		return string(b), err
	}
	var parts [3]string
	for i, name := range []string{"page.html", "page.css", "worker.js"} {
		var err error
		if parts[i], err = read(name); err != nil {
			return nil, err
		}
	}
	script, err := pageScript(read)
	if err != nil {
		return nil, err
	}
	support, err := toolFile("GOROOT", "lib/wasm/wasm_exec.js")
	if err != nil {
		return nil, err
	}
	sample, err := sampleVisit()
	if err != nil {
		return nil, err
	}
	t, err := template.New("page").Parse(parts[0])
	if err != nil {
		return nil, err
	}
	data := map[string]string{
		"Style": parts[1], "StyleHash": hash(parts[1]),
		"Script": script, "ScriptHash": hash(script),
		"Worker": support + "\n" + parts[2],
		"Sample": sample, "Shuffled": fmt.Sprint(shuffled[0], " ", shuffled[1]),
		"Module": base64.StdEncoding.EncodeToString(packed),
	}
	for name, text := range data {
		if strings.Contains(strings.ToLower(text), "</script") {
			return nil, fmt.Errorf("%s would end its own element", name)
		}
	}
	var page bytes.Buffer
	err = t.Execute(&page, data)
	return page.Bytes(), err
}

// scripts are the parts of the page's script in their order. It sends what is
// typed to the library as a visit, and shows what it answers; it knows no physics,
// and no units but those that the library offers it for each field.
var scripts = []string{
	"state", "units", "visit", "engine", "form", "loop", "draw", "keep", "tasks", "events",
}

// pageScript joins the parts in one scope.
func pageScript(read func(string) (string, error)) (string, error) {
	var b strings.Builder
	b.WriteString("\"use strict\";\n(() => {\n")
	for _, name := range scripts {
		text, err := read("page/" + name + ".js")
		if err != nil {
			return "", err
		}
		b.WriteString(text)
	}
	b.WriteString("})();\n")
	return b.String(), nil
}

func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// toolFile reads a file under a directory that the go command names.
func toolFile(variable, path string) (string, error) {
	dir, err := exec.Command("go", "env", variable).Output()
	if err != nil {
		return "", err
	}
	b, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), filepath.FromSlash(path)))
	return string(b), err
}

// sampleVisit is an invented one of the visit example.
func sampleVisit() (string, error) {
	dir, err := exec.Command("go", "list", "-f", "{{.Dir}}", visits).Output()
	if err != nil {
		return "", err
	}
	b, err := os.ReadFile(
		filepath.Join(strings.TrimSpace(string(dir)), "demo", "mountain-library.json"),
	)
	return string(b), err
}
