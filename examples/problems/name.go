package main

import (
	"fmt"
	"slices"
	"strings"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"

	"github.com/satline/satline/quantity"
)

// Command is the line that makes the set again: the seed and every option.
func (o Options) Command() string {
	topics := "all"
	if len(o.Topics) > 0 {
		topics = strings.Join(o.Topics, ",")
	}
	out := fmt.Sprintf("-seed %d -topics %s -each %d -refrigerants %s -units %s",
		o.Seed, topics, o.PerTopic, strings.Join(o.Refrigerants, ","), o.Units)
	if o.Bar {
		out += " -pressure bar"
	} else if o.Units == quantity.SI {
		out += " -pressure kPa"
	}
	out += fmt.Sprintf(" -difficulty %d -language %s", o.Difficulty, o.Language)
	if o.Choices {
		out += " -choices"
	}
	return out
}

// Name is how the set names itself: the version of the program and the options.
func (s Set) Name() string { return "problems " + Version + ": " + s.Options.Command() }

func (s Set) say(key string, pairs ...string) string {
	return say(s.Options.Language, key, pairs...)
}

func (s Set) title() string {
	return s.say("title", "seed", fmt.Sprint(s.Options.Seed),
		"units", fmt.Sprint(s.Options.Units), "level", fmt.Sprint(s.Options.Difficulty))
}

// cautions stand on every set: what is learned here is done on real machines.
func (s Set) cautions() []string {
	out := []string{s.say("caution-invented"), s.say("caution-work")}
	if len(s.Flammable) > 0 {
		out = append(out, s.say("caution-burns", "which", strings.Join(s.Flammable, ", ")))
	}
	if len(s.Toxic) > 0 {
		out = append(out, s.say("caution-toxic", "which", strings.Join(s.Toxic, ", ")))
	}
	return out
}

// A term is a word of the trade with its plain meaning.
type term struct{ Word, Means string }

// glossary are the words of the trade that a set may use, by the alphabet of its
// language.
func (s Set) glossary() []term {
	var out []term
	for _, e := range texts["glossary"].forms["terms"].steps {
		word, means, _ := strings.Cut(e.words.in(s.Options.Language), ": ")
		out = append(out, term{word, means})
	}
	order := collate.New(language.Make(string(s.Options.Language)), collate.IgnoreCase)
	slices.SortStableFunc(out, func(a, b term) int { return order.CompareString(a.Word, b.Word) })
	return out
}

// tolerance says on the sheet how near an answer has to be.
func (p Problem) tolerance() string {
	if p.Answer.Words || len(p.Choices) > 0 {
		return ""
	}
	return strings.ReplaceAll(say(p.language, "tolerance", "margin", p.Accept()), "..", ".")
}
