package main

import "time"

// A promise is a speed figure and the benchmark that measures it.
type promise struct {
	what   string
	pkg    string
	bench  string // without "Benchmark"
	within time.Duration
}

var promises = []promise{
	{"one assessment of a visit", ".", "Assess", 5 * time.Millisecond},
}
