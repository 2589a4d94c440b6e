// Problems makes problem sets for a course on refrigeration and moist air, with
// worked solutions, the mistakes behind common wrong answers, and the charts and
// table excerpts a student needs. The same options give the same set.
//
//	go run ./examples/problems
//	go run ./examples/problems -list
//	go run ./examples/problems -seed 7 -topics superheat,target/judge -each 3 -key
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
	"math"
	"os"
	"slices"
	"strconv"
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
	seed := number{1, 0, math.MaxUint64}
	flags.Var(&seed, "seed", "`number` of the set; the same number gives the same set")
	topicList := flags.String(
		"topics", "all",
		"`names` separated by commas, of topics or of forms as target/judge, see -list",
	)
	each, difficulty := number{1, 1, mostEach}, number{1, 1, 3}
	flags.Var(&each, "each", "`count` of problems for each topic, 1 to 50")
	fluids := flags.String(
		"refrigerants", "R-410A,R-22,R-407C", "`designations` to draw from, separated by commas",
	)
	units := flags.String("units", "IP", "`system` of units, IP or SI")
	flags.Var(
		&difficulty,
		"difficulty",
		"`level`: 1 reads a row or fills in a formula; 2 reads between rows, among readings "+
			"that are not needed; 3 adds thin air, tables of absolute pressures and a step more",
	)
	formatName := flags.String("format", "markdown", "`form` of the set, see below")
	language := flags.String("language", "en", "`language`, en or es")
	pressure := flags.String(
		"pressure", "", "`unit` of pressures in SI, kPa or bar; kPa where empty",
	)
	choices := flags.Bool("choices", false, "give four answers to tick")
	key := flags.Bool(
		"key", false, "add answers, worked solutions and the mistakes behind wrong answers",
	)
	list := flags.Bool("list", false, "list the topics with their forms and stop")
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return help(flags), nil
	} else if err != nil {
		return "", fmt.Errorf("%w; see -help", err)
	}
	if flags.NArg() > 0 {
		return "", fmt.Errorf("%q is no option; see -help", flags.Arg(0))
	}
	if *list {
		return listTopics(Language(*language)), nil
	}
	o := Options{
		Seed:         seed.value,
		PerTopic:     int(each.value),
		Difficulty:   int(difficulty.value),
		Topics:       split(*topicList),
		Refrigerants: split(*fluids),
		Choices:      *choices,
		Language:     Language(*language),
	}
	if slices.Equal(o.Topics, []string{"all"}) {
		o.Topics = nil
	}
	if err := o.Units.UnmarshalText([]byte(*units)); err != nil {
		return "", err
	}
	switch strings.ToLower(*pressure) {
	case "", "kpa", "psi":
	case "bar":
		o.Bar = true
	default:
		return "", fmt.Errorf("pressure %q; choose kPa or bar", *pressure)
	}
	if *formatName == "schema" {
		return schemaJSON, nil
	}
	i := slices.IndexFunc(formats, func(f format) bool { return f.name == *formatName })
	if i < 0 {
		return "", fmt.Errorf("format %q; choose %s or schema", *formatName,
			strings.Join(formatNames(), ", "))
	}
	o.Choices = o.Choices || formats[i].quiz
	set, err := Generate(o)
	if err != nil {
		return "", err
	}
	return formats[i].write(set, *key)
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
	b.WriteString("Formats; those for quiz systems hold the answers, with choices and feedback:")
	b.WriteString("\n\n")
	for _, f := range formats {
		fmt.Fprintf(&b, "%-14s %s\n", f.name, f.about)
	}
	fmt.Fprintf(&b, "%-14s %s\n\n", "schema", "the JSON Schema of -format json")
	b.WriteString("Topics:\n\n" + listTopics(English))
	return b.String()
}

// A number is an option that is a whole number from low to high.
type number struct{ value, low, high uint64 }

func (n *number) String() string { return strconv.FormatUint(n.value, 10) }

func (n *number) Set(s string) error {
	v, err := strconv.ParseUint(s, 10, 64)
	if err != nil || v < n.low || v > n.high {
		return fmt.Errorf("give a whole number from %d to %d", n.low, n.high)
	}
	n.value = v
	return nil
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
