package main

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
)

var update = flag.Bool("update", false, "write the schema and the sets that are kept")

// exported are sets over the styles and languages, in a form of quiz systems.
func exported(t *testing.T, name string, check func(*testing.T, Set, string)) {
	var format format
	for _, f := range formats {
		if f.name == name {
			format = f
		}
	}
	for i, o := range styles {
		o.Seed, o.PerTopic, o.Difficulty, o.Choices = uint64(20+i), 2, 1+i, true
		o.Language = [...]Language{English, Spanish, English}[i]
		t.Run(fmt.Sprint(o.Units, o.Bar, o.Language), func(t *testing.T) {
			s := mustGenerate(t, o)
			text, err := format.write(s, false)
			if err != nil {
				t.Fatal(err)
			}
			check(t, s, text)
		})
	}
}

func TestCSV(t *testing.T) {
	exported(t, "csv", func(t *testing.T, s Set, text string) {
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil || len(rows) != len(s.Problems)+1 {
			t.Fatalf("%d rows: %v", len(rows), err)
		}
		for i, row := range rows[1:] {
			p := s.Problems[i]
			if row[0] != s.Name() || row[6] != p.Answer.Text || row[7] != p.Letter() ||
				len(row) != 20 {
				t.Errorf("line %d: %q", i+2, row)
			}
		}
	})
}

// An Aiken file is a question on a line, lines of a letter, a full stop or a
// parenthesis and a blank, and a line of the answer, in that order and no other.
func TestAiken(t *testing.T) {
	choice, answer := regexp.MustCompile(`^([A-Z])[.)] \S`), regexp.MustCompile(`^ANSWER: ([A-Z])$`)
	exported(t, "aiken", func(t *testing.T, s Set, text string) {
		blocks := strings.Split(strings.TrimSpace(text), "\n\n")
		if len(blocks) != len(s.Problems) {
			t.Fatalf("%d questions for %d problems", len(blocks), len(s.Problems))
		}
		for i, block := range blocks {
			lines := strings.Split(block, "\n")
			if len(lines) != 6 || choice.MatchString(lines[0]) ||
				!strings.Contains(lines[0], s.Name()) {
				t.Fatalf("question %d: %q", i+1, block)
			}
			for j, l := range lines[1:5] {
				if m := choice.FindStringSubmatch(l); m == nil || m[1] != string(rune('A'+j)) {
					t.Errorf("question %d: %q", i+1, l)
				}
			}
			if m := answer.FindStringSubmatch(lines[5]); m == nil ||
				m[1] != s.Problems[i].Letter() {
				t.Errorf("question %d: %q", i+1, lines[5])
			}
		}
	})
}

// readGIFT reads questions of choices by the rules of the format: \ before a sign
// that has a meaning, :: around a title, braces around the choices, = and ~ before
// them, # before feedback and #### before the solution.
func readGIFT(t *testing.T, text string) (questions [][]string) {
	const sign = "\x00"
	hide := regexp.MustCompile(`\\([~=#{}:\\])`)
	hidden := hide.ReplaceAllStringFunc(text, func(s string) string {
		return sign + string(rune('a'+strings.Index(`~=#{}:\`, s[1:])))
	})
	show := func(s string) string {
		for i, c := range `~=#{}:\` {
			s = strings.ReplaceAll(s, sign+string(rune('a'+i)), string(c))
		}
		return strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(s), "[html]"))
	}
	for block := range strings.SplitSeq(hidden, "\n\n") {
		if strings.HasPrefix(block, "//") || strings.HasPrefix(block, "$CATEGORY: ") ||
			strings.TrimSpace(block) == "" {
			continue
		}
		rest, ok := strings.CutPrefix(block, "::")
		title, rest, ok2 := strings.Cut(rest, "::")
		question, rest, ok3 := strings.Cut(rest, "{")
		rest, ok4 := strings.CutSuffix(strings.TrimSpace(rest), "}")
		if !ok || !ok2 || !ok3 || !ok4 {
			t.Fatalf("no question: %q", block)
		}
		choices, general, ok := strings.Cut(rest, "####")
		if !ok {
			t.Fatalf("no solution: %q", block)
		}
		out := []string{show(title), show(question), show(general)}
		for c := range strings.SplitSeq(strings.TrimSpace(choices), "\n") {
			c = strings.TrimSpace(c)
			text, feedback, ok := strings.Cut(c[1:], "#")
			if !ok || c[0] != '=' && c[0] != '~' || strings.ContainsAny(text+feedback, "~={}#") {
				t.Fatalf("no choice: %q", c)
			}
			out = append(out, c[:1]+show(text), show(feedback))
		}
		questions = append(questions, out)
	}
	return questions
}

func TestGIFT(t *testing.T) {
	exported(t, "gift", func(t *testing.T, s Set, text string) {
		if !strings.HasPrefix(text, "// "+s.Name()) {
			t.Error("the file does not name its set")
		}
		questions := readGIFT(t, text)
		if len(questions) != len(s.Problems) {
			t.Fatalf("%d questions for %d problems", len(questions), len(s.Problems))
		}
		for i, q := range questions {
			p := s.Problems[i]
			if q[1] != p.questionHTML() || len(q) != 3+8 ||
				!strings.HasSuffix(q[2], s.cautionsHTML()) {
				t.Errorf("question %d reads %q", i+1, q)
			}
			for j, c := range p.Choices {
				mark := "~"
				if c.Right {
					mark = "="
				}
				if q[3+2*j] != mark+escaped(c.Text) || q[4+2*j] != escaped(c.Feedback) {
					t.Errorf("question %d: %q for %q", i+1, q[3+2*j:], c.Text)
				}
			}
		}
	})
}

// What a reader of Moodle XML takes from a question of one choice.
type moodleRead struct {
	Type   string `xml:"type,attr"`
	Name   string `xml:"name>text"`
	Text   string `xml:"questiontext>text"`
	Single string `xml:"single"`
	ID     string `xml:"idnumber"`
	Answer []struct {
		Fraction float64 `xml:"fraction,attr"`
		Format   string  `xml:"format,attr"`
		Text     string  `xml:"text"`
		Feedback string  `xml:"feedback>text"`
	} `xml:"answer"`
}

func TestMoodle(t *testing.T) {
	exported(t, "moodle", func(t *testing.T, s Set, text string) {
		var quiz struct {
			XMLName   xml.Name     `xml:"quiz"`
			Questions []moodleRead `xml:"question"`
		}
		if err := xml.Unmarshal([]byte(text), &quiz); err != nil {
			t.Fatal(err)
		}
		if len(quiz.Questions) != len(s.Problems)+1 || quiz.Questions[0].Type != "category" {
			t.Fatalf("%d questions for %d problems", len(quiz.Questions), len(s.Problems))
		}
		seen := map[string]bool{}
		for i, q := range quiz.Questions[1:] {
			p := s.Problems[i]
			if q.Type != "multichoice" || q.Single != "true" || q.Text != p.questionHTML() ||
				len(q.Answer) != 4 || seen[q.ID] || q.ID == "" || q.Name == "" {
				t.Errorf("question %d reads %+v", i+1, q)
			}
			seen[q.ID] = true
			wellFormed(t, "<div>"+q.Text+"</div>")
			for j, a := range q.Answer {
				right := p.Choices[j].Right
				if a.Text != escaped(p.Choices[j].Text) || (a.Fraction == 100) != right ||
					!right && a.Fraction != 0 || a.Feedback == "" || a.Format != "html" {
					t.Errorf("question %d: %+v", i+1, a)
				}
			}
		}
	})
}

// wellFormed reads XML to its end and returns the names of its elements.
func wellFormed(t *testing.T, text string) map[string]int {
	t.Helper()
	names := map[string]int{}
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return names
		}
		if err != nil {
			t.Fatalf("%v: %s", err, text[:min(len(text), 300)])
		}
		if e, ok := token.(xml.StartElement); ok {
			names[e.Name.Local]++
		}
	}
}

func unzipped(t *testing.T, text string) map[string]string {
	z, err := zip.NewReader(bytes.NewReader([]byte(text)), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		b, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out[f.Name] = string(b)
	}
	return out
}

// sequences are the orders in which the schema of QTI 2.1 has the children of an element, as far
// as they are used; QTI 3.0 has them in the same order.
var sequences = map[string][]string{
	"assessmentItem": {"responseDeclaration", "outcomeDeclaration", "itemBody",
		"responseProcessing", "modalFeedback"},
	"assessmentTest":    {"testPart"},
	"testPart":          {"assessmentSection"},
	"assessmentSection": {"rubricBlock", "assessmentItemRef"},
	"choiceInteraction": {"simpleChoice"},
	"table":             {"caption", "thead", "tbody"},
}

// inSequence holds the children of each element to its sequence.
func inSequence(t *testing.T, q qti, text string) {
	t.Helper()
	order := map[string][]string{}
	for parent, children := range sequences {
		if parent == "table" { // of XHTML, whose names are the same in both
			order[parent] = children
			continue
		}
		for _, c := range children {
			order[q.element(parent)] = append(order[q.element(parent)], q.element(c))
		}
	}
	type open struct {
		name string
		at   int
	}
	var within []open
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			if n := len(within); n > 0 && order[within[n-1].name] != nil {
				parent := &within[n-1]
				at := slices.Index(order[parent.name], e.Name.Local)
				if at < parent.at {
					t.Errorf("%s stands in %s where it may not", e.Name.Local, parent.name)
				}
				parent.at = at
			}
			within = append(within, open{name: e.Name.Local})
		case xml.EndElement:
			within = within[:len(within)-1]
		}
	}
}

// A package of QTI lists every file that it holds, and each item has a choice
// whose right answer is among its choices, and feedback for each of them.
func TestQTI(t *testing.T) {
	for _, v := range []struct {
		format                                        string
		q                                             qti
		choice, value, feedback, base, body, response string
	}{
		{"qti21", qtiTwo, "simpleChoice", "value", "modalFeedback", "baseType", "itemBody",
			"responseIdentifier"},
		{"qti30", qtiThree, "qti-simple-choice", "qti-value", "qti-modal-feedback", "base-type",
			"qti-item-body", "response-identifier"},
	} {
		t.Run(v.format, func(t *testing.T) {
			exported(t, v.format, func(t *testing.T, s Set, text string) {
				files := unzipped(t, text)
				manifest := files["imsmanifest.xml"]
				wellFormed(t, manifest)
				if !strings.Contains(manifest, strings.ReplaceAll(s.Name(), "--", "- -")) {
					t.Error("the manifest does not name the set")
				}
				if n := wellFormed(t, files["test.xml"])[v.q.element("assessmentItemRef")]; n !=
					len(s.Problems) || len(files) != len(s.Problems)+2 {
					t.Errorf("%d items of %d", n, len(s.Problems))
				}
				test := files["test.xml"]
				inSequence(t, v.q, test)
				for _, told := range append(s.cautions(), s.Name()) {
					if !strings.Contains(test, escaped(told)) {
						t.Errorf("the test does not say %q", told)
					}
				}
				for name := range files {
					if name != "imsmanifest.xml" && !strings.Contains(manifest, `href="`+name+`"`) {
						t.Errorf("the manifest does not list %s", name)
					}
				}
				for _, p := range s.Problems {
					item := files[fmt.Sprintf("items/%d.xml", p.Number)]
					names := wellFormed(t, item)
					inSequence(t, v.q, item)
					if names[v.choice] != 4 || names[v.feedback] != 4 || names[v.body] != 1 {
						t.Errorf("item %d holds %v", p.Number, names)
					}
					if !strings.Contains(item, "<"+v.value+">"+p.Letter()+"</"+v.value+">") ||
						!strings.Contains(item, p.questionHTML()) && v.format == "qti30" {
						t.Errorf("item %d: %s", p.Number, item)
					}
					for name := range names {
						if (v.format == "qti30") != strings.HasPrefix(name, "qti-") &&
							!strings.Contains(" p ul ol li table caption thead tbody tr th td "+
								"strong em ",
								" "+name+" ") {
							t.Errorf("item %d: no element %s in %s", p.Number, name, v.format)
						}
					}
				}
			})
		})
	}
}

// Others' readers of GIFT, Aiken, Moodle XML, CSV and QTI read what is written, and a player of
// QTI ticks every choice of the items. They come from npm, by readers/package.json, and are not
// needed to build or run anything. No package there or in Debian was found to hold the schemas of
// QTI: TestQTI holds to their text.
func TestOthersRead(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: others' readers have to run")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("SKIPPED: no node on the PATH; NO FORMAT WAS READ BY OTHERS' READERS")
	}
	if _, err := os.Stat("readers/node_modules/fast-xml-parser"); err != nil {
		t.Skip("SKIPPED: npm ci in examples/problems/readers was not run; " +
			"NO FORMAT WAS READ BY OTHERS' READERS")
	}
	dir := t.TempDir()
	for i, o := range styles {
		o.Seed, o.PerTopic, o.Difficulty, o.Choices = uint64(30+i), 1, 1+i, true
		o.Language = [...]Language{English, Spanish, English}[i]
		s := mustGenerate(t, o)
		files := map[string]string{}
		for name, write := range map[string]func(bool) (string, error){
			"set.json": s.json, "set.gift": s.gift, "set.aiken": s.aiken,
			"set.moodle.xml": s.moodle, "set.csv": s.csv,
		} {
			if files[name], err = write(false); err != nil {
				t.Fatal(err)
			}
		}
		for _, p := range s.Problems {
			files[fmt.Sprintf("qti21-%d.xml", p.Number)] = s.item(qtiTwo, p)
			files[fmt.Sprintf("qti30-%d.xml", p.Number)] = s.item(qtiThree, p)
		}
		to := filepath.Join(dir, fmt.Sprint(i))
		if err := os.Mkdir(to, 0o755); err != nil {
			t.Fatal(err)
		}
		for name, text := range files {
			if err := os.WriteFile(filepath.Join(to, name), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		out, err := exec.CommandContext(t.Context(), node, "readers/read.mjs", to).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		t.Logf("%s", out)
		play(t, s, to)
	}
}

// play ticks every choice of every item in another's player of QTI 3.0, those of QTI 2.1 as
// another's converter has made them: only the right one scores, and each shows its feedback.
func play(t *testing.T, s Set, folder string) {
	player, err := os.ReadFile("readers/node_modules/@citolab/qti-components/cdn/index.js")
	if err != nil {
		t.Fatal(err)
	}
	script, err := os.ReadFile("readers/play.mjs")
	if err != nil {
		t.Fatal(err)
	}
	items := map[string]string{}
	for _, p := range s.Problems {
		for _, of := range []string{"qti30", "converted"} {
			name := fmt.Sprintf("%s-%d", of, p.Number)
			b, err := os.ReadFile(filepath.Join(folder, name+".xml"))
			if err != nil {
				t.Fatal(err)
			}
			items[name] = string(b)
		}
	}
	list, err := json.Marshal(items) // with < and > as escapes, fit for a script
	if err != nil {
		t.Fatal(err)
	}
	var played map[string]map[string]struct{ Score, Shown string }
	inBrowser(t, fmt.Sprintf(`<!DOCTYPE html><meta charset="utf-8"><body><script type="module">%s
</script><script type="module">const items = %s;
%s</script></body>`, strings.ReplaceAll(string(player), "</script", `<\/script`), list, script),
		&played)
	if len(played) != len(items) {
		t.Errorf("%d items played of %d", len(played), len(items))
	}
	for _, p := range s.Problems {
		for _, of := range []string{"qti30", "converted"} {
			name := fmt.Sprintf("%s-%d", of, p.Number)
			for _, c := range p.Choices {
				score := map[bool]string{false: "0", true: "1"}[c.Right]
				if got := played[name][c.Letter]; got.Score != score || got.Shown != c.Letter {
					t.Errorf("%s, %s ticked: %+v", name, c.Letter, got)
				}
			}
		}
	}
	t.Logf("%d items played", len(played))
}

// kept names the sets whose bytes are held.
var kept = []Options{
	{Seed: 1, Difficulty: 1}, {Seed: 7, Difficulty: 2, Units: quantity.SI},
	{Seed: 42, Difficulty: 3, Units: quantity.SI, Bar: true, Language: Spanish},
	{Seed: 9, Difficulty: 3, Choices: true},
}
