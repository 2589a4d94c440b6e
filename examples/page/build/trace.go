package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"slices"
)

// What a program knows of its own functions also serves a trace of calls: their names, and
// which line of which file they stand in. On a page nobody reads that, and it takes a tenth of
// the module. The form is that which debug/gosym reads, pcHeader and _func in the runtime; it
// begins with another number where it changes. What the runtime goes by is kept: the depth of
// the stack, where pointers are on it, the names of its own functions. Where anything is not
// where that form has it, the page is not built; with -trace it is, and larger.

// functionsBegin is the head of that table since Go 1.20, where pointers take eight bytes.
var functionsBegin = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Places in the head of the table, and in what it has of a function, in bytes.
const (
	countAt, namesAt, filesAt, valuesAt, functionsAt = 8, 32, 40, 56, 64

	nameAt, stackAt, fileAt, lineAt, tablesAt, unitAt, firstTableAt = 4, 16, 20, 24, 28, 32, 44

	// inlinedTable is the one of a function's tables that only traces read.
	inlinedTable = 2
)

// ownNames begin the names that the runtime itself goes by.
var ownNames = []string{"runtime.", "reflect.", "internal/"}

// A functionTable is what a program knows of its functions: the bytes, and where its parts begin.
type functionTable struct {
	bytes                           []byte
	names, files, values, functions int
	count                           int // of functions
}

func (t *functionTable) word(at int) int {
	return int(binary.LittleEndian.Uint32(t.bytes[at:]))
}

// functionsIn finds the table in a module's memory.
func functionsIn(memory []byte) (t functionTable, err error) {
	begin := bytes.Index(memory, functionsBegin)
	if begin < 0 {
		return t, fmt.Errorf("%w: it has no table of functions as Go 1.26 writes one", errModule)
	}
	t.bytes = memory[begin:]
	if len(t.bytes) < functionsAt+8 {
		return t, errModule
	}
	t.count, t.names, t.files = t.word(countAt), t.word(namesAt), t.word(filesAt)
	t.values, t.functions = t.word(valuesAt), t.word(functionsAt)
	if !(functionsAt < t.names && t.names < t.files && t.files < t.values &&
		t.values < t.functions && t.functions+8*t.count <= len(t.bytes)) {
		return t, fmt.Errorf("%w: its table of functions is at %d", errModule, t.functions)
	}
	return t, nil
}

// withoutTrace blanks names, files and lines in a module's memory.
func withoutTrace(memory []byte) error {
	t, err := functionsIn(memory)
	if err != nil {
		return err
	}
	inUse := make([]bool, t.functions-t.values)
	for i := range t.count {
		if err := t.blankFunction(i, inUse); err != nil {
			return err
		}
	}
	for n, used := range inUse {
		if !used {
			t.bytes[t.values+n] = 0
		}
	}
	clear(t.bytes[t.files:t.values])
	t.blankNames()
	return nil
}

// blankFunction blanks where function i stands in its file, and marks the values that the
// runtime goes by.
func (t *functionTable) blankFunction(i int, inUse []bool) error {
	f := t.functions + t.word(t.functions+8*i+4)
	if f+firstTableAt > len(t.bytes) || f+firstTableAt+4*t.word(f+tablesAt) > len(t.bytes) {
		return fmt.Errorf("%w: function %d is at %d", errModule, i, f)
	}
	if name := t.names + t.word(f+nameAt); name >= t.files ||
		name > t.names && t.bytes[name-1] != 0 {
		return fmt.Errorf("%w: no name begins at %d, that of function %d", errModule, name, i)
	}
	kept := []int{t.word(f + stackAt)}
	blank := []int{fileAt, lineAt, unitAt}
	for k := range t.word(f + tablesAt) {
		at := firstTableAt + 4*k
		if k == inlinedTable {
			blank = append(blank, at)
		} else {
			kept = append(kept, t.word(f+at))
		}
	}
	values := t.bytes[t.values:t.functions]
	for _, at := range kept {
		if at >= len(inUse) {
			return fmt.Errorf("%w: a table of function %d is at %d", errModule, i, at)
		}
		if at == 0 {
			continue
		}
		for n := range inUse[at:ends(values, at)] {
			inUse[at+n] = true
		}
	}
	for _, at := range blank {
		clear(t.bytes[f+at : f+at+4])
	}
	return nil
}

// blankNames blanks the names of functions but those that the runtime goes by.
func (t *functionTable) blankNames() {
	for rest := t.bytes[t.names:t.files]; len(rest) > 0; {
		name, _, _ := bytes.Cut(rest, []byte{0})
		own := func(begin string) bool { return bytes.HasPrefix(name, []byte(begin)) }
		if !slices.ContainsFunc(ownNames, own) {
			clear(name)
		}
		rest = rest[min(len(name)+1, len(rest)):]
	}
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
