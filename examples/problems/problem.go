package main

// A Problem is one exercise with everything a teacher needs to set and mark it.
type Problem struct {
	Topic     string
	Number    int
	Statement string
	Given     []Given
	Ask       string
	// Tables are the excerpts of printed tables that a student needs; with them
	// the answer comes out by hand.
	Tables []Table
	Steps  []Step
	Answer Answer
	Wrong  []Wrong
	// again works the answer out a second way, by other functions or another
	// direction than the solution took; the tests compare the two.
	again func() (float64, error)
}

// Given is a reading or fact of the statement.
type Given struct{ Name, Value string }

// A Step of the worked solution, and the source of the relation it uses.
type Step struct{ Text, Source string }

// An Answer is a number with its unit, or a word where Unit is empty.
type Answer struct {
	Text  string
	Value float64
	// Within is how far a correct answer may be off, from the rounding of the
	// printed tables.
	Within float64
	Unit   string
}

// Wrong is an answer that a known mistake leads to.
type Wrong struct{ Text, Mistake string }

// A Table is an excerpt.
type Table struct {
	Caption string
	Head    []string
	Rows    [][]string
}
