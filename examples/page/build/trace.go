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

// withoutTrace blanks names, files and lines in a module's memory.
func withoutTrace(memory []byte) error {
	begin := bytes.Index(memory, functionsBegin)
	if begin < 0 {
		return fmt.Errorf("%w: it has no table of functions as Go 1.26 writes one", errModule)
	}
	table := memory[begin:]
	word := func(at int) int { return int(binary.LittleEndian.Uint32(table[at:])) }
	if len(table) < functionsAt+8 {
		return errModule
	}
	count, names, files := word(countAt), word(namesAt), word(filesAt)
	values, functions := word(valuesAt), word(functionsAt)
	if !(functionsAt < names && names < files && files < values && values < functions &&
		functions+8*count <= len(table)) {
		return fmt.Errorf("%w: its table of functions is at %d", errModule, functions)
	}
	inUse := make([]bool, functions-values)
	use := func(at int) {
		for n := values + at; at != 0 && n < values+ends(table[values:functions], at); n++ {
			inUse[n-values] = true
		}
	}
	for i := range count {
		f := functions + word(functions+8*i+4)
		if f+firstTableAt > len(table) || f+firstTableAt+4*word(f+tablesAt) > len(table) {
			return fmt.Errorf("%w: function %d is at %d", errModule, i, f)
		}
		if name := names + word(f+nameAt); name >= files || name > names && table[name-1] != 0 {
			return fmt.Errorf("%w: no name begins at %d, that of function %d", errModule, name, i)
		}
		kept := []int{word(f + stackAt)}
		blank := []int{fileAt, lineAt, unitAt}
		for k := range word(f + tablesAt) {
			at := firstTableAt + 4*k
			if k == inlinedTable {
				blank = append(blank, at)
			} else {
				kept = append(kept, word(f+at))
			}
		}
		for _, at := range kept {
			if at >= len(inUse) {
				return fmt.Errorf("%w: a table of function %d is at %d", errModule, i, at)
			}
			use(at)
		}
		for _, at := range blank {
			clear(table[f+at : f+at+4])
		}
	}
	for n, used := range inUse {
		if !used {
			table[values+n] = 0
		}
	}
	clear(table[files:values])
	for rest := table[names:files]; len(rest) > 0; {
		name, _, _ := bytes.Cut(rest, []byte{0})
		own := func(begin string) bool { return bytes.HasPrefix(name, []byte(begin)) }
		if !slices.ContainsFunc(ownNames, own) {
			clear(name)
		}
		rest = rest[min(len(name)+1, len(rest)):]
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
