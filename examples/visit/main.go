// Visit assesses a service visit, a whole job or the history of a machine, and prints what to
// do; or looks one thing up.
//
//	go run ./examples/visit                 a demonstration visit, invented
//	go run ./examples/visit FILE.json       a file of a visit, of a work order, or of the orders
//	                                        of one machine; "-" reads standard input
//	go run ./examples/visit -demo NAME      another demonstration visit
//	go run ./examples/visit -json ...       the assessment as JSON
//	go run ./examples/visit -units SI ...   in metric units
//	go run ./examples/visit -tonight "60 °F"  what it will do when it is 60 °F outdoors
//	go run ./examples/visit -for owner ...  for the owner, or "file" for the record
//	go run ./examples/visit -html ...       as a page to print, with pictures
//	go run ./examples/visit -markdown ...   as Markdown
//	go run ./examples/visit -language es ... in Spanish
//	go run ./examples/visit superheat R-410A "118 psig" "52 °F"
//	                                        a look-up: saturation, superheat, subcooling, target,
//	                                        air; without values it says what it takes
//
// The exit status is 0 when an assessment was made, whatever it says of the
// machine, and 2 when the input has to be mended first; then one line on
// standard error says where and how, and nothing is on standard output.
package main

import (
	"embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
	"github.com/satline/satline/work"
)

//go:embed demo/*.json jobs/*.json
var demos embed.FS

const firstDemo = "mountain-library"

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

func run(args []string, in io.Reader, out, problems io.Writer) int {
	text, err := assess(args, in, problems)
	if errors.Is(err, flag.ErrHelp) {
		return 0
	}
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

func assess(args []string, in io.Reader, help io.Writer) (string, error) {
	if len(args) > 0 && lookups[args[0]].answer != nil {
		return lookUp(args[0], args[1:])
	}
	flags := flag.NewFlagSet("visit", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	asJSON := flags.Bool("json", false, "write the assessment as JSON")
	asHTML := flags.Bool("html", false, "write the report as a page to print, with pictures")
	asMarkdown := flags.Bool("markdown", false, "write the report as Markdown")
	tonight := flags.String(
		"tonight", "",
		"an outdoor temperature to forecast, as in \"60 °F\", "+
			"with the house cooled to 70 °F and 58 °F wet bulb",
	)
	var audience report.Audience
	flags.TextVar(
		&audience, "for", report.Technician, "`who` the report is for: technician, file or owner",
	)
	units := flags.String("units", "", "IP or SI; the visit's own where not given")
	spoken := flags.String(
		"language", "", "`language` of the report, as en or es-MX; the visit's own where not given",
	)
	demo := flags.String("demo", firstDemo, "demonstration visit: "+strings.Join(demoNames(), ", "))
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(
				help,
				"visit [-json | -html | -markdown | -tonight TEMPERATURE] "+
					"[-for technician|file|owner] [-units IP|SI] [-language TAG] "+
					"[-demo NAME | FILE.json | -]",
			)
			flags.SetOutput(help)
			flags.PrintDefaults()
		}
		return "", err
	}
	data, err := load(flags.Args(), *demo, in)
	if err != nil {
		return "", err
	}
	if kind := kindOf(data); kind != aVisit {
		if *tonight != "" {
			return "", errors.New("-tonight: a forecast is of a visit, not of a job")
		}
		return job(data, kind, form{*asJSON, *asHTML, *asMarkdown, audience, *units, *spoken})
	}
	visit, err := satline.DecodeVisit(data)
	if err != nil {
		return "", err
	}
	if *units != "" {
		if err := visit.Units.UnmarshalText([]byte(*units)); err != nil {
			return "", fmt.Errorf("-units: %w", err)
		}
	}
	if *spoken != "" {
		visit.Language = satline.Language(*spoken)
	}
	if *tonight != "" {
		if *asHTML || *asMarkdown {
			return "", errors.New(
				"-tonight: a forecast is written as text or as -json, not as a page",
			)
		}
		return forecast(visit, *tonight, *asJSON)
	}
	a, err := satline.Assess(visit)
	if err != nil {
		return "", err
	}
	var out strings.Builder
	switch {
	case *asJSON:
		err = writeJSON(&out, a)
	case *asHTML:
		var drawn []report.Picture
		if audience != report.Owner {
			drawn = pictures(visit, a)
		}
		err = report.HTML(&out, a, audience, drawn...)
	case *asMarkdown:
		err = report.Markdown(&out, a, audience)
	default:
		err = report.Text(&out, a, audience)
	}
	return out.String(), err
}

func writeJSON(out io.Writer, v any) error {
	encoder := json.NewEncoder(out)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(v)
}

func forecast(v satline.Visit, outdoor string, asJSON bool) (string, error) {
	t, err := quantity.ParseTemperature(outdoor)
	if err != nil {
		return "", fmt.Errorf("-tonight: %w", err)
	}
	now, night := satline.Scenario{Name: "As it is now"}, satline.CoolNight()
	night.OutdoorDryBulb = t
	night.Name = fmt.Sprintf(
		"At %s outdoors, with the rooms at %s and %s wet bulb", t.Format(v.Units),
		night.ReturnDryBulb.Format(v.Units), night.ReturnWetBulb.Format(v.Units),
	)
	a, err := satline.Assess(v)
	if err != nil {
		return "", err
	}
	if a.Mode.Mode != satline.Cooling { // the rooms of a cool night are of cooling
		night = satline.Scenario{
			Name: fmt.Sprintf("At %s outdoors", t.Format(v.Units)), OutdoorDryBulb: t,
		}
	}
	outlooks, err := satline.Forecast(v, now, night)
	if problem := (*satline.VisitError)(nil); errors.As(err, &problem) &&
		problem.Field == "scenario 2" {
		return "", fmt.Errorf("-tonight: %s", problem.Problem)
	}
	if err != nil {
		return "", err
	}
	var out strings.Builder
	if asJSON {
		err := writeJSON(&out, outlooks)
		return out.String(), err
	}
	section := func(heading string, facts []fact.Fact) {
		fmt.Fprintln(&out, heading)
		for _, f := range facts {
			fmt.Fprintln(&out, "- "+f.Text)
		}
	}
	for _, o := range outlooks {
		section(o.Scenario.Name, o.Says)
	}
	section("How far to believe this", outlooks[0].Believe)
	return out.String(), nil
}

// load reads the document of a file, of standard input, or of a demonstration.
func load(files []string, demo string, in io.Reader) ([]byte, error) {
	switch {
	case len(files) > 1:
		return nil, fmt.Errorf("one visit at a time: %d files were named", len(files))
	case len(files) == 1 && files[0] == "-":
		return io.ReadAll(io.LimitReader(in, work.MaxOrderBytes+1))
	case len(files) == 1:
		f, err := os.Open(files[0])
		if err != nil {
			return nil, unreadable(err)
		}
		defer f.Close()
		data, err := io.ReadAll(io.LimitReader(f, work.MaxOrderBytes+1))
		if err != nil {
			return nil, unreadable(err)
		}
		return data, nil
	}
	for _, folder := range folders {
		if data, err := demos.ReadFile(path.Join(folder, demo+".json")); err == nil {
			return data, nil
		}
	}
	return nil, fmt.Errorf(
		"no demonstration %q; there are %s", demo, strings.Join(demoNames(), ", "),
	)
}

func unreadable(err error) error {
	return fmt.Errorf(
		"the file cannot be read: %w; name a JSON file, as in examples/visit/demo and jobs", err,
	)
}

// folders of demonstrations: visits, and jobs with histories.
var folders = []string{"demo", "jobs"}

func demoNames() []string {
	var names []string
	for _, folder := range folders {
		entries, err := demos.ReadDir(folder)
		if err != nil {
			return nil
		}
		for _, e := range entries {
			names = append(names, strings.TrimSuffix(e.Name(), ".json"))
		}
	}
	return names
}
