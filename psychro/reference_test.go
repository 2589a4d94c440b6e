package psychro_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// readTable reads a CSV of testdata: lines of comment, a heading, numbers. An
// empty field is left out of its row.
func readTable(t testing.TB, name string) []map[string]float64 {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]float64
	for _, record := range records[1:] {
		row := map[string]float64{}
		for i, field := range record {
			if field == "" {
				continue
			}
			if row[records[0][i]], err = strconv.ParseFloat(field, 64); err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// worst keeps the largest deviation of a group of rows and where it was.
type worst struct {
	deviation, reference, computed float64
}

func (w *worst) see(deviation, reference, computed float64) {
	if deviation < 0 {
		deviation = -deviation
	}
	if deviation >= w.deviation || deviation != deviation {
		*w = worst{deviation, reference, computed}
	}
}
