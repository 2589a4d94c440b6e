package charge

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// A median is that of the sorted values, and what is less than nth stands before it.
func TestMedian(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SliceOfN(rapid.Float64Range(-3, 3), 1, 40).Draw(t, "values")
		sorted := slices.Sorted(slices.Values(v))
		want := sorted[len(v)/2]
		if len(v)%2 == 0 {
			want = (sorted[len(v)/2-1] + want) / 2
		}
		if got := median(slices.Clone(v)); got != want {
			t.Fatalf("median of %v is %v, want %v", v, got, want)
		}
		k := rapid.IntRange(0, len(v)-1).Draw(t, "k")
		if got := nth(v, k); got != sorted[k] || k > 0 && slices.Max(v[:k]) > got {
			t.Fatalf("value %d of %v is %v, want %v", k, v, got, sorted[k])
		}
	})
}
