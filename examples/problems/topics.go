package main

import (
	"fmt"
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

func listTopics(l Language) string {
	var b strings.Builder
	for _, t := range topics {
		fmt.Fprintf(&b, "%-14s %s\n", t.name, texts[t.name].about.in(l))
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
