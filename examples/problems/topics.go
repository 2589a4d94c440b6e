package main

import (
	"fmt"
	"slices"
	"strings"
)

// topics in the order a course takes them.
var topics = []topic{
	saturationTopic, glideTopic, superheatTopic, subcoolingTopic, altitudeTopic, cycleTopic,
	targetTopic, airTopic, capacityTopic, airflowTopic, dosingTopic, diagnosisTopic, recoveryTopic,
	cylinderTopic, evacuationTopic, nitrogenTopic, weighinTopic, rulesTopic, compressionTopic,
	efficiencyTopic, mixingTopic, coilTopic, condensateTopic, staticTopic, splitTopic,
	standingTopic, blendleakTopic, safetyTopic, heatingTopic, refrigerationTopic, capacitorTopic,
	wireTopic, phasesTopic,
}

func topicNames() []string {
	var out []string
	for _, t := range topics {
		out = append(out, t.name)
	}
	return out
}

// chosenForms are the forms of each topic that the names ask for: a topic with all of
// its forms, or one form of it as target/judge.
func chosenForms(names []string) (map[string][]form, error) {
	out := map[string][]form{}
	if len(names) == 0 {
		names = topicNames()
	}
	for _, name := range names {
		topicName, formName, one := strings.Cut(name, "/")
		i := slices.IndexFunc(topics, func(t topic) bool { return t.name == topicName })
		if i < 0 {
			return nil, fmt.Errorf("no topic %q; there are %s", name,
				strings.Join(topicNames(), ", "))
		}
		found := false
		for _, f := range topics[i].forms {
			if one && f.name != formName {
				continue
			}
			found = true
			if !slices.ContainsFunc(out[topicName], func(o form) bool { return o.name == f.name }) {
				out[topicName] = append(out[topicName], f)
			}
		}
		if !found {
			return nil, fmt.Errorf("topic %s has no form %q; there are %s", topicName, formName,
				strings.Join(topics[i].formNames(), ", "))
		}
	}
	return out, nil
}

func (t topic) formNames() []string {
	var out []string
	for _, f := range t.forms {
		out = append(out, f.name)
	}
	return out
}

func listTopics(l Language) string {
	var b strings.Builder
	for _, t := range topics {
		fmt.Fprintf(&b, "%-14s %s (%s)\n", t.name, texts[t.name].about.in(l),
			strings.Join(t.formNames(), ", "))
	}
	return b.String()
}

// formulas are the relations with factors that nobody knows by heart, for the
// topics of the set. What a word means, as superheat, is left to the student.
func (s Set) formulas() []formula {
	var out []formula
	told := map[string]bool{}
	for _, p := range s.Problems {
		for _, f := range texts[p.Topic].formulas {
			name := f.words[0] + f.sum
			if told[name] || f.system != "both" && f.system != fmt.Sprint(s.Options.Units) {
				continue
			}
			told[name] = true
			out = append(out, f)
		}
	}
	return out
}
