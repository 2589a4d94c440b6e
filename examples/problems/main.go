// Problems makes problem sets for a course on refrigeration and moist air, with
// worked solutions, the mistakes behind common wrong answers, and the charts and
// table excerpts a student needs. The same options give the same set.
//
//	go run ./examples/problems
//	go run ./examples/problems -list
//	go run ./examples/problems -seed 7 -topics superheat,target -each 3 -key
//	go run ./examples/problems -refrigerants R-22,R-407C -units SI -format html > set.html
//
// The exit status is 0 when a set was written and 2 when an option has to be
// mended first; then one line on standard error says which and how, and nothing
// is on standard output.
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
	text, err := answer(args)
	if err != nil {
		fmt.Fprintln(problems, strings.ReplaceAll(err.Error(), "\n", " "))
		return 2
	}
	if _, err := io.WriteString(out, text); err != nil {
		fmt.Fprintln(problems, err)
		return 1
	}
	return 0
}

// answer is what the arguments ask for: help, the list of topics, or a set.
func answer(args []string) (string, error) {
	flags := flag.NewFlagSet("problems", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	seed := flags.Uint64("seed", 1, "`number` of the set; the same number gives the same set")
	topicList := flags.String(
		"topics",
		"",
		"`names` separated by commas, see -list; all where empty",
	)
	each := flags.Int("each", 1, "`count` of problems for each topic, 1 to 50")
	fluids := flags.String(
		"refrigerants",
		"R-410A,R-22,R-407C",
		"`designations` to draw from, separated by commas",
	)
	units := flags.String("units", "IP", "`system` of units, IP or SI")
	difficulty := flags.Int(
		"difficulty",
		1,
		"`level`: 1 reads a row; 2 reads between rows, among readings that are not needed; 3 adds thin air, tables of absolute pressures and traps",
	)
	format := flags.String(
		"format",
		"markdown",
		"`form`: markdown, or html, a page that prints with charts, an answer sheet and the key on pages of their own",
	)
	choices := flags.Bool("choices", false, "give four answers to tick")
	key := flags.Bool(
		"key",
		false,
		"add answers, worked solutions and the mistakes behind wrong answers",
	)
	list := flags.Bool("list", false, "list the topics and stop")
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return help(flags), nil
	} else if err != nil {
		return "", fmt.Errorf("%w; see -help", err)
	}
	if flags.NArg() > 0 {
		return "", fmt.Errorf("%q is no option; see -help", flags.Arg(0))
	}
	if *list {
		return listTopics(), nil
	}
	o := Options{
		Seed:         *seed,
		PerTopic:     *each,
		Difficulty:   *difficulty,
		Topics:       split(*topicList),
		Refrigerants: split(*fluids),
		Choices:      *choices,
	}
	if err := o.Units.UnmarshalText([]byte(*units)); err != nil {
		return "", err
	}
	if *format != "markdown" && *format != "html" {
		return "", fmt.Errorf("format %q; choose markdown or html", *format)
	}
	set, err := Generate(o)
	if err != nil {
		return "", err
	}
	if *format == "html" {
		return set.html(*key)
	}
	return set.markdown(*key), nil
}

func help(flags *flag.FlagSet) string {
	var b strings.Builder
	b.WriteString("Problems makes problem sets on refrigeration and moist air.\n\n")
	b.WriteString("Usage: problems [options] > set\n\nOptions:\n")
	flags.SetOutput(&b)
	flags.PrintDefaults()
	b.WriteString("\nFor the students and for the teacher, from one number:\n\n")
	b.WriteString("  problems -seed 7 -format html -choices > set-7.html\n")
	b.WriteString("  problems -seed 7 -format html -choices -key > set-7-key.html\n\n")
	b.WriteString("Topics:\n\n" + listTopics())
	return b.String()
}

func listTopics() string {
	var b strings.Builder
	for _, t := range topics {
		fmt.Fprintf(&b, "%-12s %s\n", t.name, t.about)
	}
	return b.String()
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
