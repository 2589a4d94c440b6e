// Command importer reads visits, one line of JSON each, assesses them on all cores, and
// counts what was found. A line that is wrong is named with every field to mend.
package main

import (
	"bufio"
	"errors"
	"fmt"
	"maps"
	"os"
	"runtime"
	"slices"
	"sync"

	"github.com/satline/satline"
)

type answer struct {
	line     int
	outcome  satline.ChargeOutcome
	problems []error
}

func main() {
	type job struct {
		line int
		text []byte
	}
	jobs, answers := make(chan job, 100), make(chan answer, 100)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for j := range jobs {
				answers <- assess(j.line, j.text)
			}
		})
	}
	go func() {
		lines := bufio.NewScanner(os.Stdin)
		lines.Buffer(nil, satline.MaxVisitBytes)
		for n := 1; lines.Scan(); n++ {
			jobs <- job{n, slices.Clone(lines.Bytes())}
		}
		close(jobs)
		workers.Wait()
		close(answers)
	}()
	count := map[satline.ChargeOutcome]int{}
	var wrong []answer
	for a := range answers {
		if len(a.problems) > 0 {
			wrong = append(wrong, a)
			continue
		}
		count[a.outcome]++
	}
	for _, outcome := range slices.Sorted(maps.Keys(count)) {
		fmt.Printf("%6d %s\n", count[outcome], outcome)
	}
	slices.SortFunc(wrong, func(a, b answer) int { return a.line - b.line })
	for _, a := range wrong {
		fmt.Printf("line %d: %v\n", a.line, errors.Join(a.problems...))
	}
}

func assess(line int, text []byte) answer {
	v, err := satline.DecodeVisit(text)
	if err != nil {
		return answer{line: line, problems: []error{err}}
	}
	v.Scope = satline.VerdictOnly
	a, err := satline.Assess(v)
	if err == nil {
		return answer{line: line, outcome: a.Charge.Outcome}
	}
	out := answer{line: line}
	for _, problem := range v.Validate() {
		out.problems = append(out.problems, problem)
	}
	return out
}
