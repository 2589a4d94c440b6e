package server

import (
	"encoding/binary"
	"hash/crc32"
	"math/bits"
	"sync"
)

// A deflater packs a whole answer with gzip (RFC 1952) in a third of the time that
// compress/gzip takes over one so short, most of which it spends on working out codes that fit
// best: those here are the fixed ones (RFC 1951, 3.2.6), and the answer a fifth longer.
type deflater struct {
	out  []byte
	held uint64 // bits that have not filled a byte of out yet, the first lowest
	n    uint   // how many

	// seen is where four bytes of that hash stood last, counted from 1.
	seen [1 << hashBits]int32
}

const (
	hashBits   = 12
	shortest   = 4 // of a match; a shorter one saves nothing that is worth a look
	longest    = 258
	farthest   = 1 << 15
	endOfBlock = 256
)

var deflaters = sync.Pool{New: func() any { return new(deflater) }}

// appendGzip appends a text packed with gzip.
func appendGzip(to, text []byte) []byte {
	d := deflaters.Get().(*deflater)
	defer deflaters.Put(d)
	// Header: deflate, no flags, no time, quickest, of no system.
	d.out = append(to, 0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 4, 0xff)
	d.deflate(text)
	out := d.out
	d.out = nil
	out = binary.LittleEndian.AppendUint32(out, crc32.ChecksumIEEE(text))
	return binary.LittleEndian.AppendUint32(out, uint32(len(text)))
}

// deflate appends one block, the last, of literals and of matches with what stood before.
func (d *deflater) deflate(text []byte) {
	clear(d.seen[:])
	d.put(bitCode{0b011, 3})
	at, literal := 0, 0
	for at+shortest <= len(text) {
		four := binary.LittleEndian.Uint32(text[at:])
		slot := d.last(four)
		before := int(*slot) - 1
		*slot = int32(at + 1)
		if before < 0 || at-before > farthest ||
			binary.LittleEndian.Uint32(text[before:]) != four {
			at++
			continue
		}
		d.literals(text[literal:at])
		length := shortest + sameAs(text[before+shortest:], text[at+shortest:])
		d.match(length, at-before)
		for next := at + 1; next < at+length && next+shortest <= len(text); next++ {
			*d.last(binary.LittleEndian.Uint32(text[next:])) = int32(next + 1)
		}
		at += length
		literal = at
	}
	d.literals(text[literal:])
	d.put(literalCodes[endOfBlock])
	d.put(bitCode{0, -d.n & 7})
	for ; d.n > 0; d.n -= 8 {
		d.out = append(d.out, byte(d.held))
		d.held >>= 8
	}
}

// last is where such four bytes stood last, or others of the same hash.
func (d *deflater) last(four uint32) *int32 {
	const golden = 0x9e3779b1 // of 32 bits
	return &d.seen[four*golden>>(32-hashBits)]
}

// sameAs is how far b goes on as a does, as far as a match goes.
func sameAs(a, b []byte) int {
	most := min(len(b), longest-shortest)
	n := 0
	for ; n+8 <= most; n += 8 {
		if differ := binary.LittleEndian.Uint64(a[n:]) ^
			binary.LittleEndian.Uint64(b[n:]); differ != 0 {
			return n + bits.TrailingZeros64(differ)/8
		}
	}
	for n < most && a[n] == b[n] {
		n++
	}
	return n
}

func (d *deflater) literals(text []byte) {
	for _, c := range text {
		d.put(literalCodes[c])
	}
}

func (d *deflater) match(length, distance int) {
	d.put(lengthCodes[length])
	// The distances of a code share their two highest bits (RFC 1951, 3.2.5).
	back := uint(distance - 1)
	code, extra := back, uint(0)
	if back >= 4 {
		extra = uint(bits.Len(back)) - 2
		code = 2*extra + back>>extra
	}
	reversed := uint32(bits.Reverse8(uint8(code))) >> 3
	d.put(bitCode{reversed | uint32(back&(1<<extra-1))<<5, 5 + extra})
}

// A bitCode is bits to write, the lowest first.
type bitCode struct {
	bits uint32
	n    uint
}

// put holds bits until there are four bytes of them. Held are at most 31, and 18 come.
func (d *deflater) put(c bitCode) {
	d.held |= uint64(c.bits) << d.n
	if d.n += c.n; d.n >= 32 {
		d.out = binary.LittleEndian.AppendUint32(d.out, uint32(d.held))
		d.held >>= 32
		d.n -= 32
	}
}

// literalCodes are the fixed codes of bytes, of the end of a block and of lengths (RFC 1951,
// 3.2.6).
var literalCodes = func() (codes [286]bitCode) {
	for symbol := range codes {
		var code, n uint
		switch s := uint(symbol); {
		case s < 144:
			code, n = 0b00110000+s, 8
		case s < 256:
			code, n = 0b110010000+s-144, 9
		case s < 280:
			code, n = s-256, 7
		default:
			code, n = 0b11000000+s-280, 8
		}
		codes[symbol] = bitCode{bits.Reverse32(uint32(code)) >> (32 - n), n}
	}
	return codes
}()

// lengthCodes are the codes of the lengths of matches, with their extra bits (RFC 1951, 3.2.5).
var lengthCodes = func() (codes [longest + 1]bitCode) {
	for length := 3; length < longest; length++ {
		over := uint(length - 3)
		symbol, extra := over, uint(0)
		if over >= 8 {
			extra = uint(bits.Len(over)) - 3
			symbol = 4*extra + over>>extra
		}
		code := literalCodes[257+symbol]
		codes[length] = bitCode{code.bits | uint32(over&(1<<extra-1))<<code.n, code.n + extra}
	}
	codes[longest] = literalCodes[285]
	return codes
}()
