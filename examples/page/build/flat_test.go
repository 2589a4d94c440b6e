package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A memory cut into pieces is joined again, in whatever order they come.
func TestOnePiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		memory := rapid.SliceOfN(rapid.ByteRange(1, 255), 2, 300).Draw(t, "memory")
		begins := rapid.IntRange(0, 1<<20).Draw(t, "begins")
		cut := rapid.IntRange(1, len(memory)-1).Draw(t, "cut")
		type piece struct {
			at   int
			what []byte
		}
		pieces := []piece{{begins, memory[:cut]}, {begins + cut, memory[cut:]}}
		if rapid.Bool().Draw(t, "turned") {
			slices.Reverse(pieces)
		}
		section := []byte{2}
		for _, p := range pieces {
			section = append(appendSigned(append(section, memoryZero, constant), p.at), end)
			section = binary.AppendUvarint(section, uint64(len(p.what)))
			section = append(section, p.what...)
		}
		check := func(section []byte) {
			first, whole, err := onePiece(section)
			if err != nil || first != begins || !bytes.Equal(whole, memory) {
				t.Fatalf("%v: at %d, want %d: %v, want %v", err, first, begins, whole, memory)
			}
		}
		check(section)
		check(dataOf(begins, memory))
		if _, _, err := onePiece(section[:len(section)-1]); err == nil {
			t.Error("a section cut short is taken")
		}
	})
}

// The table of functions that a program of today carries is found and read to its end.
func TestFlatModule(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles the library")
	}
	module, err := compile()
	if err != nil {
		t.Fatal(err)
	}
	out, err := flat(module, false)
	if err != nil {
		t.Fatal(err)
	}
	was, err := pack(module)
	if err != nil {
		t.Fatal(err)
	}
	now, err := pack(out)
	if err != nil {
		t.Fatal(err)
	}
	if len(now) > len(was)*19/20 {
		t.Errorf("%d bytes compressed, %d before", len(now), len(was))
	}
	if _, err := flat(module[:len(module)/2], false); err == nil {
		t.Error("half a module is taken")
	}
	t.Run("in Node", func(t *testing.T) { answersAsBefore(t, module, out) })
}

// answersAsBefore holds that a module, run by Node, says the same of a visit as another.
func answersAsBefore(t *testing.T, was, now []byte) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("SKIPPED: no node is on the PATH; WHETHER THE MODULE RUNS WAS NOT TESTED")
	}
	support, err := toolFile("GOROOT", "lib/wasm/wasm_exec.js")
	if err != nil {
		t.Fatal(err)
	}
	visit, err := sampleVisit()
	if err != nil {
		t.Fatal(err)
	}
	script := filepath.Join(t.TempDir(), "run.js")
	text := support + `
		globalThis.satlineReady = () => {
			process.stdout.write(satlineCall("assess", process.argv[3]), () => process.exit(0));
		};
		const go = new Go();
		WebAssembly.instantiate(require("fs").readFileSync(process.argv[2]), go.importObject)
			.then(({ instance }) => go.run(instance));`
	if err := os.WriteFile(script, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	answer := func(module []byte) string {
		file := filepath.Join(t.TempDir(), "satline.wasm")
		if err := os.WriteFile(file, module, 0o644); err != nil {
			t.Fatal(err)
		}
		out, err := exec.CommandContext(t.Context(), node, script, file, visit).Output()
		if err != nil {
			t.Fatal(err)
		}
		return string(out)
	}
	before, after := answer(was), answer(now)
	if before != after || !strings.Contains(after, `"headline"`) {
		t.Errorf("the module answers %.300s, and said before %.300s", after, before)
	}
}

// A memory whose table of functions is not as this Go writes one is refused.
func TestTableOfFunctionsIsHeldToItsForm(t *testing.T) {
	head := func(names, files, values, functions, count uint32) []byte {
		b := make([]byte, 400)
		copy(b, functionsBegin)
		for at, v := range map[int]uint32{
			namesAt: names, filesAt: files, valuesAt: values, functionsAt: functions,
			countAt: count,
		} {
			binary.LittleEndian.PutUint32(b[at:], v)
		}
		return b
	}
	for name, memory := range map[string][]byte{
		"another number":      make([]byte, 400),
		"cut short":           functionsBegin,
		"out of order":        head(200, 100, 250, 300, 1),
		"more than there are": head(80, 100, 200, 300, 1000),
		"a function elsewhere": func() []byte {
			b := head(80, 100, 200, 300, 1)
			b[306] = 1
			return b
		}(),
		"a table elsewhere": func() []byte {
			b := head(80, 100, 200, 300, 1)
			b[304], b[325] = 8, 1
			return b
		}(),
		"no name where it says": func() []byte {
			b := head(80, 100, 200, 300, 1)
			b[304], b[312] = 8, 30
			return b
		}(),
	} {
		if err := withoutTrace(memory); !errors.Is(err, errModule) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
