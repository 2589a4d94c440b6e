package main

import (
	_ "embed"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
)

// A format is a form of a set. That of a quiz system holds the answers, with what
// to say to who ticks each choice.
type format struct {
	name, about string
	quiz        bool
	write       func(s Set, key bool) (string, error)
}

func formatNames() []string {
	var out []string
	for _, f := range formats {
		out = append(out, f.name)
	}
	return out
}

// schemaJSON is the schema of -format json.
//
//go:embed schema.json
var schemaJSON string

// formats in the order of the help.
var formats = []format{
	{"markdown", "to read", false,
		func(s Set, key bool) (string, error) { return s.markdown(key), nil }},
	{
		"html", "a page that prints, with charts, an answer sheet and a key of its own", false,
		Set.html,
	},
	{"json", "everything, by the schema of -format schema", true, Set.json},
	{"csv", "a line for each problem", true, Set.csv},
	{"gift", "GIFT, text for quiz systems", true, Set.gift},
	{"aiken", "Aiken, plain text for quiz systems, which has no feedback", true, Set.aiken},
	{"moodle", "Moodle XML", true, Set.moodle},
	{"qti21", "IMS QTI 2.1, a package (zip)", true, Set.qti21},
	{"qti30", "IMS QTI 3.0, a package (zip)", true, Set.qti30},
}

// Document is a set as JSON.
type Document struct {
	// Name is the version of the program and the options, as one line.
	Name string `json:"name"`
	// Program, Version, Seed and the options that make the set again.
	Program      string   `json:"program"`
	Version      string   `json:"version"`
	Seed         string   `json:"seed"`
	Topics       []string `json:"topics"`
	PerTopic     int      `json:"perTopic"`
	Refrigerants []string `json:"refrigerants"`
	// Units are IP or SI, and Pressure the unit of pressures: psi, kPa or bar.
	Units    string `json:"units"`
	Pressure string `json:"pressure"`
	// Language is en or es, Difficulty 1 to 3.
	Language   string `json:"language"`
	Difficulty int    `json:"difficulty"`
	Title      string `json:"title"`
	// Cautions stand on every set.
	Cautions []string      `json:"cautions"`
	Formulas []SumDocument `json:"formulas,omitempty"`
	// Glossary are words of the trade with their meaning.
	Glossary []WordDocument    `json:"glossary"`
	Problems []ProblemDocument `json:"problems"`
}

// WordDocument is a word of the trade.
type WordDocument struct {
	Word  string `json:"word"`
	Means string `json:"means"`
}

// SumDocument is a calculation with its words and its source.
type SumDocument struct {
	Text string `json:"text"`
	// Sum is the calculation in plain text, with / for a fraction.
	Sum    string `json:"sum,omitempty"`
	Source string `json:"source,omitempty"`
}

// ProblemDocument is one problem.
type ProblemDocument struct {
	Number int `json:"number"`
	// Topic and Form name it in the program, Title is the topic in words.
	Topic     string          `json:"topic"`
	Form      string          `json:"form"`
	Title     string          `json:"title"`
	Statement string          `json:"statement"`
	Given     []GivenDocument `json:"given"`
	Ask       string          `json:"ask"`
	Tables    []TableDocument `json:"tables,omitempty"`
	Caution   string          `json:"caution,omitempty"`
	// Choices are four, one of them right.
	Choices []ChoiceDocument `json:"choices"`
	Answer  AnswerDocument   `json:"answer"`
	Steps   []SumDocument    `json:"steps"`
	// Wrong are all wrong answers that are known, with the mistake behind each.
	Wrong []WrongDocument `json:"wrong"`
}

// GivenDocument is a fact of the statement.
type GivenDocument struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// TableDocument is an excerpt; the first cell of a row heads it.
type TableDocument struct {
	Caption string     `json:"caption"`
	Head    []string   `json:"head"`
	Rows    [][]string `json:"rows"`
}

// ChoiceDocument is an answer to tick.
type ChoiceDocument struct {
	Letter   string `json:"letter"`
	Text     string `json:"text"`
	Right    bool   `json:"right"`
	Feedback string `json:"feedback"`
}

// AnswerDocument is the right answer.
type AnswerDocument struct {
	Letter string `json:"letter"`
	Text   string `json:"text"`
	// Value is absent for an answer in words; it is in Unit.
	Value *float64 `json:"value,omitempty"`
	Unit  string   `json:"unit,omitempty"`
	// Within is how far a number may be off, WithinByChart the same where the chart was
	// read instead of the table.
	Within        float64 `json:"within,omitempty"`
	WithinByChart float64 `json:"withinByChart,omitempty"`
	// Note is what a full answer says besides.
	Note string `json:"note,omitempty"`
}

// WrongDocument is a wrong answer.
type WrongDocument struct {
	// Code names the mistake in the program.
	Code string `json:"code"`
	Text string `json:"text"`
	// Value is absent for an answer in words.
	Value   *float64 `json:"value,omitempty"`
	Mistake string   `json:"mistake"`
	// Letter is present where it is among the choices.
	Letter string `json:"letter,omitempty"`
}

func (s Set) document() Document {
	o := s.Options
	d := Document{
		Name: s.Name(), Program: "problems", Version: Version,
		Seed: strconv.FormatUint(o.Seed, 10), Topics: o.Topics,
		PerTopic: o.PerTopic, Refrigerants: o.Refrigerants, Units: fmt.Sprint(o.Units),
		Pressure: unitsOf(o).drop.symbol, Language: string(o.Language), Difficulty: o.Difficulty,
		Title: s.title(), Cautions: s.cautions(),
	}
	if len(d.Topics) == 0 {
		d.Topics = topicNames()
	}
	for _, f := range s.formulas() {
		d.Formulas = append(d.Formulas, SumDocument{Text: f.words.in(o.Language), Sum: f.sum})
	}
	for _, t := range s.glossary() {
		d.Glossary = append(d.Glossary, WordDocument(t))
	}
	for _, p := range s.Problems {
		d.Problems = append(d.Problems, p.document())
	}
	return d
}

func (p Problem) document() ProblemDocument {
	out := ProblemDocument{
		Number: p.Number, Topic: p.Topic, Form: p.Form, Title: p.Title, Statement: p.Statement,
		Ask: p.Ask, Caution: p.Caution,
		Answer: AnswerDocument{Letter: p.Letter(), Text: p.Answer.Text, Unit: p.Answer.Unit,
			Note: p.Answer.Note},
	}
	if !p.Answer.Words {
		out.Answer.Value = &p.Answer.Value
		out.Answer.Within = rounded(p.Answer.Margin(), max(p.Answer.Places, 0))
		out.Answer.WithinByChart = rounded(p.Answer.ChartMargin(), max(p.Answer.Places, 0))
	}
	for _, g := range p.Given {
		out.Given = append(out.Given, GivenDocument(g))
	}
	for _, t := range p.Tables {
		out.Tables = append(out.Tables, TableDocument(t))
	}
	for _, c := range p.Choices {
		out.Choices = append(out.Choices, ChoiceDocument{c.Letter, c.Text, c.Right, c.Feedback})
	}
	for _, s := range p.Steps {
		out.Steps = append(out.Steps, SumDocument(s))
	}
	for _, w := range p.Wrong {
		wrong := WrongDocument{Code: w.Code, Text: w.Text, Mistake: w.Mistake, Letter: w.Letter}
		if !p.Answer.Words {
			wrong.Value = new(w.Value)
		}
		out.Wrong = append(out.Wrong, wrong)
	}
	return out
}

func (s Set) json(bool) (string, error) {
	b, err := json.MarshalIndent(s.document(), "", "\t")
	return string(b) + "\n", err
}

// csv has a line for each problem, with its choices and their feedback.
func (s Set) csv(bool) (string, error) {
	var b strings.Builder
	w := csv.NewWriter(&b)
	head := []string{"set", "number", "topic", "form", "title", "question", "answer", "letter",
		"value", "unit", "within", "within by chart"}
	for _, l := range []string{"A", "B", "C", "D"} {
		head = append(head, l, "feedback "+l)
	}
	rows := [][]string{head}
	for _, p := range s.Problems {
		d := p.document()
		row := []string{s.Name(), strconv.Itoa(p.Number), p.Topic, p.Form, p.Title, p.plain(),
			p.Answer.Text, p.Letter(), "", p.Answer.Unit, "", ""}
		if !p.Answer.Words {
			row[8] = strconv.FormatFloat(rounded(p.Answer.Value, p.Answer.Places), 'f', -1, 64)
			row[10] = strconv.FormatFloat(d.Answer.Within, 'f', -1, 64)
			row[11] = strconv.FormatFloat(d.Answer.WithinByChart, 'f', -1, 64)
		}
		for _, c := range p.Choices {
			row = append(row, c.Text, c.Feedback)
		}
		rows = append(rows, row)
	}
	err := w.WriteAll(rows)
	return b.String(), err
}

// plain is the whole question on one line.
func (p Problem) plain() string {
	parts := []string{p.Statement}
	var facts []string
	for _, g := range p.Given {
		facts = append(facts, g.Name+": "+g.Value)
	}
	parts = append(parts, say(p.language, "givens")+": "+strings.Join(facts, "; ")+".")
	for _, t := range p.Tables {
		rows := []string{strings.Join(t.Head, " | ")}
		for _, r := range t.Rows {
			rows = append(rows, strings.Join(r, " | "))
		}
		parts = append(parts, "["+t.Caption+": "+strings.Join(rows, "; ")+"]")
	}
	if p.Caution != "" {
		parts = append(parts, say(p.language, "caution")+": "+p.Caution)
	}
	return strings.Join(append(parts, p.Ask), " ")
}

// aiken is a question, its choices and the letter of the right one.
func (s Set) aiken(bool) (string, error) {
	var b strings.Builder
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "%s [%s, %s %d]\n", p.plain(), s.Name(), s.say("number"), p.Number)
		for _, c := range p.Choices {
			fmt.Fprintf(&b, "%s. %s\n", c.Letter, c.Text)
		}
		fmt.Fprintf(&b, "ANSWER: %s\n\n", p.Letter())
	}
	return b.String(), nil
}

var giftEscaper = strings.NewReplacer(`\`, `\\`, "~", `\~`, "=", `\=`, "#", `\#`, "{", `\{`,
	"}", `\}`, ":", `\:`, "\n", " ")

// gift puts what is asked in HTML, with the feedback of each choice behind it.
func (s Set) gift(bool) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "// %s\n\n$CATEGORY: %s\n\n", s.Name(), strings.ReplaceAll(s.title(), "/", "-"))
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "::%s::[html]%s {\n", giftEscaper.Replace(s.problemTitle(p)),
			giftEscaper.Replace(p.questionHTML()))
		for _, c := range p.Choices {
			mark := "~"
			if c.Right {
				mark = "="
			}
			fmt.Fprintf(&b, "\t%s[html]%s#[html]%s\n", mark, giftEscaper.Replace(escaped(c.Text)),
				giftEscaper.Replace(escaped(c.Feedback)))
		}
		fmt.Fprintf(&b, "\t####[html]%s\n}\n\n", giftEscaper.Replace(s.solutionHTML(p)))
	}
	return b.String(), nil
}

func (s Set) problemTitle(p Problem) string {
	return fmt.Sprintf("%s, %s %d: %s", s.title(), s.say("number"), p.Number, p.Title)
}
