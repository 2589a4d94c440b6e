// Build makes the page: one HTML file that holds the library as WebAssembly and
// needs nothing else. Beside it stand three small files with which a phone keeps
// the page that is served over https: a manifest, a service worker, an icon.
//
//	go run ./examples/page/build             writes dist/satline.html
//	go run ./examples/page/build -o FILE
//	go run ./examples/page/build -trace      larger; a crash names its functions and lines
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/base64"
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
	library = "github.com/satline/satline/"
	command = library + "examples/page/wasm"
	visits  = library + "examples/visit"
)

func main() {
	out := flag.String("o", "dist/satline.html", "file to write")
	trace := flag.Bool("trace", false, "keep what a trace of calls says in the browser's console")
	flag.Parse()
	if err := build(*out, *trace, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func build(out string, trace bool, report io.Writer) error {
	module, err := compile()
	if err != nil {
		return err
	}
	if module, err = flat(module, trace); err != nil {
		return err
	}
	packed, err := pack(module)
	if err != nil {
		return err
	}
	page, err := assemble(packed)
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

// spacious are the packages whose small functions the compiler inlines, which takes more room:
// those that compute. The others of the library are as fast without.
var spacious = []string{
	"internal/physics/...", "internal/judge/diagnose/...", "internal/base/...", "refrigerant",
	"refrigerant/cycle", "psychro", "quantity",
}

// compact are packages of others that take less room without inlining; a call of the library
// spends little in them.
var compact = []string{
	"encoding/json", "fmt", "golang.org/x/text/...", "gonum.org/v1/gonum/...", "reflect", "strings",
	"time",
}

// compile returns the library as WebAssembly, without symbols.
func compile() ([]byte, error) {
	dir, err := os.MkdirTemp("", "satline-page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	to := filepath.Join(dir, "satline.wasm")
	args := []string{
		"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=" + library + "...=-l",
	}
	for _, name := range compact {
		args = append(args, "-gcflags="+name+"=-l")
	}
	for _, name := range spacious {
		args = append(args, "-gcflags="+library+name+"=")
	}
	cmd := exec.Command("go", append(args, "-o", to, command)...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, text)
	}
	return os.ReadFile(to)
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
func assemble(packed []byte) ([]byte, error) {
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
		"Sample": sample,
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
	"state", "units", "visit", "engine", "ahead", "form", "loop", "draw", "keep", "tasks", "events",
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
