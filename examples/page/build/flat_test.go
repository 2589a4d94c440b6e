package main

import (
	"bytes"
	"encoding/binary"
	"slices"
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
}
