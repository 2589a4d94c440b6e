package main

import (
	"bytes"
	"compress/flate"
	"encoding/gob"
	"errors"
	"io"
)

// A runner keeps some hundred bytes of its own beside each element that waits at a shuffle,
// and several copies of what is in it. So what waits there are batches: many things as one
// element, packed.

// A batcher gathers things by key and emits them in batches, once they have about as many
// bytes, all keys together, as are the most.
type batcher[T any] struct {
	most  int
	byKey map[int][]T
	bytes int
}

// add gathers one thing of about so many bytes.
func (b *batcher[T]) add(key, bytes int, one T, emit func(int, []byte)) error {
	if b.byKey == nil {
		b.byKey = map[int][]T{}
	}
	b.byKey[key] = append(b.byKey[key], one)
	if b.bytes += bytes; b.bytes < b.most {
		return nil
	}
	return b.flush(emit)
}

// flush emits what is gathered.
func (b *batcher[T]) flush(emit func(int, []byte)) error {
	for key, things := range b.byKey {
		packed, err := pack(things)
		if err != nil {
			return err
		}
		emit(key, packed)
	}
	*b = batcher[T]{most: b.most}
	return nil
}

func pack[T any](things []T) ([]byte, error) {
	var out bytes.Buffer
	z, err := flate.NewWriter(&out, flate.BestSpeed)
	if err != nil {
		return nil, err
	}
	if err := errors.Join(gob.NewEncoder(z).Encode(things), z.Close()); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func unpack[T any](packed []byte) (things []T, err error) {
	z := flate.NewReader(bytes.NewReader(packed))
	defer z.Close()
	err = gob.NewDecoder(io.Reader(z)).Decode(&things)
	return things, err
}

// unpackAll is unpack of all that a key has.
func unpackAll[T any](next func(*[]byte) bool) (all []T, err error) {
	for packed := []byte(nil); next(&packed); packed = nil {
		things, err := unpack[T](packed)
		if err != nil {
			return nil, err
		}
		all = append(all, things...)
	}
	return all, nil
}
