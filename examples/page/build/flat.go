package main

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// The linker writes what a module holds in memory as a hundred thousand pieces, to leave out
// zeros. Their addresses do not pack, and zeros do, so that one piece takes less room.
// The form of a module is that of the WebAssembly Core Specification 1.0, section 5.5.

var errModule = errors.New("the module is not as the linker writes one")

const (
	dataSection = 11
	maxMemory   = 64 << 20
)

// flat returns the module with its memory in one piece; without what only a trace of calls
// reads, where that is not wanted.
func flat(module []byte, trace bool) ([]byte, error) {
	const header = 8
	if len(module) < header {
		return nil, errModule
	}
	out := append([]byte(nil), module[:header]...)
	r := &moduleReader{rest: module[header:]}
	for len(r.rest) > 0 && !r.failed {
		section := r.byte()
		body := r.take(r.number())
		if section == dataSection {
			first, memory, err := onePiece(body)
			if err == nil && !trace {
				err = withoutTrace(memory)
			}
			if err != nil {
				return nil, err
			}
			body = dataOf(first, memory)
		}
		out = append(out, section)
		out = binary.AppendUvarint(out, uint64(len(body)))
		out = append(out, body...)
	}
	if r.failed {
		return nil, errModule
	}
	return out, nil
}

// How a piece of memory begins: number of the memory, instruction that gives the address, its
// end.
const memoryZero, constant, end = 0, 0x41, 0x0b

// onePiece joins the pieces of a data section, each put at a constant address, to one that
// begins at the first.
func onePiece(body []byte) (first int, whole []byte, err error) {
	r := &moduleReader{rest: body}
	first, last := math.MaxInt32, 0
	pieces := map[int][]byte{} // by their address
	for i := range r.number() {
		if r.byte() != memoryZero || r.byte() != constant {
			return 0, nil, fmt.Errorf("%w: piece %d has no constant address", errModule, i)
		}
		at := r.number()
		if r.byte() != end {
			return 0, nil, fmt.Errorf("%w: the address of piece %d does not end", errModule, i)
		}
		pieces[at] = r.take(r.number())
		first, last = min(first, at), max(last, at+len(pieces[at]))
	}
	if r.failed || len(pieces) == 0 || last > maxMemory {
		return 0, nil, fmt.Errorf("%w: its memory is from %d to %d", errModule, first, last)
	}
	whole = make([]byte, last-first)
	for at, piece := range pieces {
		copy(whole[at-first:], piece)
	}
	return first, whole, nil
}

// dataOf is a data section of one piece.
func dataOf(first int, memory []byte) []byte {
	out := append(appendSigned([]byte{1, memoryZero, constant}, first), end)
	out = binary.AppendUvarint(out, uint64(len(memory)))
	return append(out, memory...)
}

// appendSigned writes a number from zero as the format writes signed ones: the highest of
// seven bits is the sign.
func appendSigned(b []byte, n int) []byte {
	for ; n > 0x3f; n >>= 7 {
		b = append(b, byte(n&0x7f|0x80))
	}
	return append(b, byte(n))
}

// A moduleReader takes the parts of a module off its front. Past the end it yields zeros and
// remembers.
type moduleReader struct {
	rest   []byte
	failed bool
}

func (r *moduleReader) take(n int) []byte {
	if n < 0 || n > len(r.rest) {
		r.failed, r.rest = true, nil
		return nil
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b
}

func (r *moduleReader) byte() byte {
	if b := r.take(1); b != nil {
		return b[0]
	}
	return 0
}

// number reads one that is not below zero.
func (r *moduleReader) number() int {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > 1<<31 {
		r.failed, r.rest = true, nil
		return 0
	}
	r.rest = r.rest[n:]
	return int(v)
}
