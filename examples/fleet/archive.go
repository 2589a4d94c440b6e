package main

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/fileio"
	"github.com/apache/beam/sdks/v2/go/pkg/beam/io/filesystem"
	"github.com/parquet-go/parquet-go"
	"github.com/satline/satline/work"
)

// A Line is an order of an archive, as it stands there.
type Line struct {
	File   string
	Number int64 // counted from 1; of Parquet the row
	Text   string
}

// A Dead is what could not be assessed, and why.
type Dead struct {
	File string `json:"file"`
	// Line is 0 where it is the file that cannot be read on.
	Line    int64  `json:"line,omitzero"`
	Field   string `json:"field,omitzero"`
	Problem string `json:"problem"`
	// Text is the line, to be mended and sent again.
	Text string `json:"text,omitzero"`
}

// A parquetOrder is a row of an archive in Parquet: one column, an order as JSON.
type parquetOrder struct {
	Order string `parquet:"order,zstd"`
}

// lineBytes is of lines what one batch has: about a second of judging.
const lineBytes = 1 << 20

// readFn reads an archive: orders as JSON, one a line, plain or packed with gzip, or a
// column of a Parquet file. A file that cannot be opened fails the bundle; one that is
// broken in the middle gives what stands before that, and a Dead. Lines leave it in batches
// that other workers can take, so that a large file is not one worker's work.
type readFn struct{ Shards int }

// ProcessElement implements the DoFn.
func (f *readFn) ProcessElement(
	ctx context.Context, file fileio.FileMetadata, emit func([]byte), dead func(int, []byte),
	count func(string, Tally),
) error {
	fs, err := filesystem.New(ctx, file.Path)
	if err != nil {
		return err
	}
	defer fs.Close()
	in, err := fs.OpenRead(ctx, file.Path)
	if err != nil {
		return err
	}
	defer in.Close()
	read, bad := batcher[Line]{most: lineBytes}, batcher[Dead]{most: lineBytes}
	toLines := func(_ int, lines []byte) { emit(lines) }
	n, shard := int64(0), shardOf(file.Path, f.Shards)
	each := func(at int64, text string) error {
		n++
		return read.add(0, len(text), Line{file.Path, at, text}, toLines)
	}
	long := func(at int64) error {
		problem := fmt.Sprintf("longer than the %d bytes of an order", work.MaxOrderBytes)
		return bad.add(shard, len(problem), Dead{File: file.Path, Line: at, Problem: problem}, dead)
	}
	var broken *brokenError
	if err := readFile(file.Path, in, each, long); errors.As(err, &broken) {
		problem := "cannot be read to its end: " + broken.Error()
		err = bad.add(shard, len(problem), Dead{File: file.Path, Problem: problem}, dead)
		if err != nil {
			return err
		}
	} else if err != nil {
		return err
	}
	count("lines"+between+"read", Tally{N: n})
	return errors.Join(read.flush(toLines), bad.flush(dead))
}

// A brokenError is what keeps a file from being read on.
type brokenError struct{ error }

// readFile reads by what the name of the file ends in. Its error is a brokenError, or one
// of each or long.
func readFile(
	path string, in io.Reader, each func(int64, string) error, long func(int64) error,
) error {
	switch {
	case strings.HasSuffix(path, ".parquet"):
		return readParquet(in, each)
	case strings.HasSuffix(path, ".gz"):
		unpacked, err := gzip.NewReader(in)
		if err != nil {
			return &brokenError{err}
		}
		return readLines(unpacked, each, long)
	default:
		return readLines(in, each, long)
	}
}

// readLines gives each line that is not blank; long ones are passed over.
func readLines(in io.Reader, each func(int64, string) error, long func(int64) error) error {
	r := bufio.NewReaderSize(in, 64<<10)
	var line []byte
	length := 0
	for n := int64(1); ; {
		part, err := r.ReadSlice('\n')
		if length += len(part); length <= work.MaxOrderBytes+1 {
			line = append(line, part...)
		}
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		var failed error
		switch text := string(bytes.TrimSpace(line)); {
		case err != nil && err != io.EOF:
			return &brokenError{err}
		case length > work.MaxOrderBytes+1:
			failed = long(n)
		case text != "":
			failed = each(n, text)
		}
		if err == io.EOF || failed != nil {
			return failed
		}
		n, line, length = n+1, line[:0], 0
	}
}

func readParquet(in io.Reader, each func(int64, string) error) (err error) {
	defer func() { // the library panics at some files that are none
		if cause := recover(); cause != nil {
			err = &brokenError{fmt.Errorf("is not Parquet: %v", cause)}
		}
	}()
	at, size, err := anywhere(in)
	if err != nil {
		return &brokenError{err}
	}
	file, err := parquet.OpenFile(at, size)
	if err != nil {
		return &brokenError{err}
	}
	if _, ok := file.Schema().Lookup("order"); !ok {
		return &brokenError{errors.New(`has no column "order" with orders as JSON`)}
	}
	rows := parquet.NewGenericReader[parquetOrder](file)
	defer rows.Close()
	for n := int64(1); ; {
		var some [64]parquetOrder
		got, err := rows.Read(some[:])
		for _, row := range some[:got] {
			if failed := each(n, row.Order); failed != nil {
				return failed
			}
			n++
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return &brokenError{err}
		}
	}
}

// anywhere reads at any place, as a reader of Parquet does, which begins at the end: the
// file where the file system can, else all of it from memory.
func anywhere(in io.Reader) (io.ReaderAt, int64, error) {
	if file, ok := in.(interface {
		io.ReaderAt
		io.Seeker
	}); ok {
		size, err := file.Seek(0, io.SeekEnd)
		return file, size, err
	}
	text, err := io.ReadAll(in)
	return bytes.NewReader(text), int64(len(text)), err
}
