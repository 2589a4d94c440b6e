// Problems makes problem sets for a course on refrigeration and moist air, with
// worked solutions, the mistakes behind common wrong answers, and the table
// excerpts a student needs. The same options give the same set.
//
//	go run ./examples/problems
//	go run ./examples/problems -seed 7 -topics superheat,target -each 3 -key
//	go run ./examples/problems -refrigerants R-22,R-407C -units SI -format html > set.html
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, problems io.Writer) int {
	flags := flag.NewFlagSet("problems", flag.ContinueOnError)
	flags.SetOutput(problems)
	seed := flags.Uint64("seed", 1, "the same seed gives the same set")
	topicList := flags.String("topics", "", "of "+strings.Join(topicNames(), ", ")+"; all where empty")
	each := flags.Int("each", 1, "problems a topic")
	fluids := flags.String("refrigerants", "R-410A,R-22,R-407C", "to draw from")
	units := flags.String("units", "IP", "IP or SI")
	difficulty := flags.Int("difficulty", 1, "1 reads a row, 2 interpolates, 3 adds altitude and traps")
	format := flags.String("format", "markdown", "markdown or html; the html prints with the answers on pages of their own")
	key := flags.Bool("key", false, "add worked solutions and the mistakes behind wrong answers")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return 0
		}
		return 2
	}
	text, err := build(*seed, *topicList, *each, *fluids, *units, *difficulty, *format, *key)
	if err != nil {
		fmt.Fprintln(problems, err)
		return 2
	}
	if _, err := io.WriteString(out, text); err != nil {
		fmt.Fprintln(problems, err)
		return 1
	}
	return 0
}

func build(seed uint64, topicList string, each int, fluids, units string, difficulty int, format string, key bool) (string, error) {
	o := Options{Seed: seed, PerTopic: each, Difficulty: difficulty, Topics: split(topicList), Refrigerants: split(fluids)}
	if err := o.Units.UnmarshalText([]byte(units)); err != nil {
		return "", err
	}
	set, err := Generate(o)
	if err != nil {
		return "", err
	}
	switch format {
	case "markdown":
		return set.markdown(key), nil
	case "html":
		return set.html(key)
	}
	return "", fmt.Errorf("format %q; choose markdown or html", format)
}

func split(list string) []string {
	var out []string
	for _, s := range strings.Split(list, ",") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}
