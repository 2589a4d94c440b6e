package main

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"
)

//go:embed data
var data embed.FS

// A Language is one that a set is written in.
type Language string

const (
	English Language = "en"
	Spanish Language = "es"
)

// ofCharts is the language of the pictures of a set, whose numbers have a decimal point in Spanish
// too, as Mexico and Central America write them.
func (l Language) ofCharts() string {
	if l == Spanish {
		return "es-419"
	}
	return string(l)
}

// both are the words of one thing in English and in Spanish.
type both [2]string

func (b both) in(l Language) string {
	if l == Spanish {
		return b[1]
	}
	return b[0]
}

// A stepText is a step of a solution: its source by name, its words, and the
// calculation, which is the same in every language.
type stepText struct {
	source string
	words  both
	sum    string
}

// A formText is how one form of a question is put. Names in braces stand for
// values; a step with a value that a problem does not have is left out.
type formText struct {
	say, ask, note both
	steps          []stepText
	words          map[string]both // mistakes, choices and phrases by name
	caution        string
}

// A topicText is the file of a topic.
type topicText struct {
	title, about both
	formulas     []formula
	words        map[string]both // shared by the forms
	caution      string
	forms        map[string]*formText
	order        []string
}

// A formula is a relation with factors that nobody knows by heart; a unit system
// limits it to sets in that.
type formula struct {
	system string
	words  both
	sum    string
}

// texts are all files of data by name: the topics, and what they share.
var texts = mustReadTexts()

// common are the words that all topics share.
var common = texts["common"]

func mustReadTexts() map[string]*topicText {
	out := map[string]*topicText{}
	files, err := fs.Glob(data, "data/*.txt")
	if err != nil {
		panic(err)
	}
	for _, f := range files {
		b, err := data.ReadFile(f)
		if err != nil {
			panic(err)
		}
		name := strings.TrimSuffix(strings.TrimPrefix(f, "data/"), ".txt")
		if out[name], err = readText(string(b)); err != nil {
			panic(f + ": " + err.Error())
		}
	}
	return out
}

// readText reads the file of a topic: entries of a key and a body, which goes on
// in lines that begin with a blank. English and Spanish are parted by "||".
func readText(file string) (*topicText, error) {
	t := &topicText{words: map[string]both{}, forms: map[string]*formText{}}
	var form *formText
	for _, e := range entries(file) {
		key, body, _ := strings.Cut(e, " ")
		parts := strings.Split(body, " | ")
		words := parted(body)
		switch key {
		case "topic":
			t.title, t.about = parted(parts[0]), parted(parts[1])
		case "formula":
			t.formulas = append(t.formulas, formula{parts[0], parted(parts[1]), parts[2]})
		case "form":
			form = &formText{words: map[string]both{}, caution: t.caution}
			t.forms[body] = form
			t.order = append(t.order, body)
		case "say":
			form.say = words
		case "ask":
			form.ask = words
		case "note":
			form.note = words
		case "step":
			s := stepText{source: parts[0], words: parted(parts[1])}
			if len(parts) > 2 {
				s.sum = parts[2]
			}
			form.steps = append(form.steps, s)
		case "caution":
			if form == nil {
				t.caution = body
			} else {
				form.caution = body
			}
		case "word":
			name, body, _ := strings.Cut(body, " | ")
			into := t.words
			if form != nil {
				into = form.words
			}
			if _, twice := into[name]; twice {
				return nil, fmt.Errorf("%s stands twice", name)
			}
			into[name] = parted(body)
		default:
			return nil, fmt.Errorf("no entry begins with %q", key)
		}
	}
	return t, nil
}

func entries(file string) []string {
	var out []string
	for line := range strings.Lines(file) {
		line = strings.TrimRight(line, "\n")
		switch {
		case strings.TrimSpace(line) == "" || line[0] == '#':
		case line[0] == ' ':
			out[len(out)-1] += " " + strings.TrimSpace(line)
		default:
			out = append(out, line)
		}
	}
	return out
}

// parted are the two languages of a body; what has one is the same in both.
func parted(body string) both {
	en, es, ok := strings.Cut(body, " || ")
	if !ok {
		es = en
	}
	return both{strings.TrimSpace(en), strings.TrimSpace(es)}
}

// say is a shared word or phrase in the language, with its values filled in.
func say(l Language, key string, pairs ...string) string {
	words, ok := common.words[key]
	if !ok {
		return "{" + key + "}"
	}
	out := words.in(l)
	for i := 0; i+1 < len(pairs); i += 2 {
		out = strings.ReplaceAll(out, "{"+pairs[i]+"}", pairs[i+1])
	}
	return out
}
