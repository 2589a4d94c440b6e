package report_test

import (
	"flag"
	"fmt"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/report"
)

// Whom a report is for is a flag of a program that writes one.
func ExampleAudience() {
	flags := flag.NewFlagSet("report", flag.ContinueOnError)
	var reader report.Audience
	flags.TextVar(&reader, "for", report.Technician, "technician, file or owner")
	err := flags.Parse([]string{"-for", "owner"})
	fmt.Println(reader, err)
	// Output: owner <nil>
}

func ExampleText() {
	a, err := satline.Assess(satline.Visit{
		Title: "Workshop (invented)",
		Scope: satline.VerdictOnly,
		Equipment: satline.Equipment{
			Refrigerant: "R-410A",
			Metering:    satline.TXV,
			Label:       satline.Label{Subcooling: new(quantity.FahrenheitDelta(10).PlusMinus(0))},
		},
		Readings: satline.Readings{
			LiquidPressure:  satline.Measured(quantity.PSIG(340)),
			LiquidLine:      satline.Measured(quantity.Fahrenheit(95)),
			SuctionPressure: satline.Measured(quantity.PSIG(125)),
			SuctionLine:     satline.Measured(quantity.Fahrenheit(55)),
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var sheet strings.Builder
	if err := report.Text(&sheet, a, report.Owner); err != nil {
		fmt.Println(err)
		return
	}
	found, _, _ := strings.Cut(sheet.String(), "\nWHAT COMES NEXT")
	fmt.Print(found)
	// Output:
	// Workshop (invented)
	//
	// WHAT WAS FOUND
	// The machine works as it should; the amount of refrigerant is right.
}

// The page of the owner, for a browser or a printer.
func ExampleHTML() {
	visit, err := satline.ReadVisit(strings.NewReader(`{
	  "title": "Invented",
	  "equipment": {"refrigerant": "R-134a", "metering": "TXV"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	var page strings.Builder
	drawing := report.Picture{
		Caption: "The unit",
		SVG: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 1">` +
			`<rect width="2" height="1"/></svg>`),
	}
	if err := report.HTML(&page, assessment, report.Owner, drawing); err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(page.String()) {
		if strings.Contains(line, "<h1>") ||
			strings.Contains(line, "caption") && strings.Contains(line, "unit") {
			fmt.Print(line)
		}
	}
	// Output:
	// <h1>Invented</h1>
	// <figure><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 1"><rect width="2" height="1"/></svg><figcaption>The unit</figcaption></figure>
}

func ExampleMarkdown() {
	visit, err := satline.ReadVisit(strings.NewReader(`{
	  "title": "Invented",
	  "equipment": {"refrigerant": "R-134a", "metering": "TXV"}
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	assessment, err := satline.Assess(visit)
	if err != nil {
		fmt.Println(err)
		return
	}
	var sheet strings.Builder
	if err := report.Markdown(&sheet, assessment, report.Owner); err != nil {
		fmt.Println(err)
	}
	found, _, _ := strings.Cut(sheet.String(), "\n## What comes next")
	fmt.Println(found)
	// Output:
	// # Invented
	//
	// ## What was found
	//
	// The machine could not be judged under today's conditions yet.
}
