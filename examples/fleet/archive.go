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

// readFn reads an archive: orders as JSON, one a line, plain or packed with gzip, or a
// column of a Parquet file. A file that cannot be opened fails the bundle; one that is
// broken in the middle gives what stands before that, and a Dead.
type readFn struct{}

// ProcessElement implements the DoFn.
func (*readFn) ProcessElement(
	ctx context.Context, file fileio.FileMetadata, emit func(Line), dead func(Dead),
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
	each := func(n int64, text string) { emit(Line{file.Path, n, text}) }
	long := func(n int64) {
		dead(Dead{File: file.Path, Line: n,
			Problem: fmt.Sprintf("longer than the %d bytes of an order", work.MaxOrderBytes)})
	}
	switch {
	case strings.HasSuffix(file.Path, ".parquet"):
		err = readParquet(in, each)
	case strings.HasSuffix(file.Path, ".gz"):
		var unpacked *gzip.Reader
		if unpacked, err = gzip.NewReader(in); err == nil {
			err = readLines(unpacked, each, long)
		}
	default:
		err = readLines(in, each, long)
	}
	if err != nil {
		dead(Dead{File: file.Path, Problem: "cannot be read to its end: " + err.Error()})
	}
	return nil
}

// readLines gives each line that is not blank; long ones are passed over.
func readLines(in io.Reader, each func(int64, string), long func(int64)) error {
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
		switch text := string(bytes.TrimSpace(line)); {
		case err != nil && err != io.EOF:
			return err
		case length > work.MaxOrderBytes+1:
			long(n)
		case text != "":
			each(n, text)
		}
		if err == io.EOF {
			return nil
		}
		n, line, length = n+1, line[:0], 0
	}
}

func readParquet(in io.Reader, each func(int64, string)) (err error) {
	text, err := io.ReadAll(in) // a reader of Parquet begins at the end
	if err != nil {
		return err
	}
	defer func() { // the library panics at some files that are none
		if cause := recover(); cause != nil {
			err = fmt.Errorf("is not Parquet: %v", cause)
		}
	}()
	file, err := parquet.OpenFile(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		return err
	}
	if _, ok := file.Schema().Lookup("order"); !ok {
		return errors.New(`has no column "order" with orders as JSON`)
	}
	rows := parquet.NewGenericReader[parquetOrder](file)
	defer rows.Close()
	for n := int64(1); ; {
		var some [64]parquetOrder
		got, err := rows.Read(some[:])
		for _, row := range some[:got] {
			each(n, row.Order)
			n++
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}
