package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"slices"
)

// What a program knows of its own functions also serves a trace of calls: their names, and
// which line of which file they stand in. On a page nobody reads that, and it takes a tenth of
// the module. The form is that which debug/gosym reads; it begins with another number where it
// changes.

// functionsBegin is the head of that table since Go 1.20, where pointers take eight bytes.
var functionsBegin = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Places in the head of the table, and in what it has of a function, in bytes.
const (
	countAt, namesAt, filesAt, valuesAt, functionsAt = 8, 32, 40, 56, 64

	stackAt, fileAt, lineAt, tablesAt, unitAt, firstTableAt = 16, 20, 24, 28, 32, 44

	// inlinedTable is the one of a function's tables that only traces read.
	inlinedTable = 2
)

// ownNames begin the names that the runtime itself goes by.
var ownNames = []string{"runtime.", "reflect.", "internal/"}

// withoutTrace blanks names, files and lines in a module's memory.
func withoutTrace(memory []byte) error {
	begin := bytes.Index(memory, functionsBegin)
	if begin < 0 {
		return fmt.Errorf("%w: it has no table of functions as Go 1.20 to 1.27 write one", errModule)
	}
	table := memory[begin:]
	word := func(at int) int { return int(binary.LittleEndian.Uint32(table[at:])) }
	blank := func(at int) { copy(table[at:at+4], make([]byte, 4)) }
	values, functions := word(valuesAt), word(functionsAt)
	if !(0 < values && values < functions && functions < len(table)) {
		return fmt.Errorf("%w: its table of functions is at %d", errModule, functions)
	}
	inUse := make([]bool, functions-values)
	use := func(at int) {
		for n := values + at; at != 0 && n < values+ends(table[values:], at); n++ {
			inUse[n-values] = true
		}
	}
	for i := range word(countAt) {
		f := functions + word(functions+8*i+4)
		for _, at := range []int{fileAt, lineAt, unitAt} {
			blank(f + at)
		}
		use(word(f + stackAt))
		for k := range word(f + tablesAt) {
			at := f + firstTableAt + 4*k
			if k == inlinedTable {
				blank(at)
			}
			use(word(at))
		}
	}
	for n, used := range inUse {
		if !used {
			table[values+n] = 0
		}
	}
	clear(table[word(filesAt):values])
	for rest := table[word(namesAt):word(filesAt)]; len(rest) > 0; {
		end := bytes.IndexByte(rest, 0) + 1
		own := func(begin string) bool { return bytes.HasPrefix(rest, []byte(begin)) }
		if end == 0 {
			end = len(rest)
		}
		if !slices.ContainsFunc(ownNames, own) {
			clear(rest[:end])
		}
		rest = rest[end:]
	}
	return nil
}

// ends is where a table of values by place in the code ends that begins at a place: pairs of
// a change of the value and a way in the code, until a change of nothing.
func ends(tables []byte, at int) int {
	for first := true; ; first = false {
		change, n := binary.Uvarint(tables[at:])
		at += n
		if change == 0 && !first {
			return at
		}
		_, n = binary.Uvarint(tables[at:])
		at += n
	}
}
