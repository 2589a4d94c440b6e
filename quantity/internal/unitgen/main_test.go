package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// The types are those of the table as it is; go generate ./quantity writes them.
func TestTypesAreFresh(t *testing.T) {
	files, err := generate()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		got, err := os.ReadFile(filepath.Join("..", "..", name))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not that of the table; run go generate ./quantity (%v)", name, err)
		}
	}
}
