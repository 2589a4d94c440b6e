package main

import (
	"archive/zip"
	"bytes"
	_ "embed"
	"encoding/xml"
	"fmt"
	"html"
	"strings"
	"time"
)

func escaped(s string) string { return html.EscapeString(s) }

// questionHTML is what is asked, in XHTML without classes or styles: what every
// quiz system shows.
func (p Problem) questionHTML() string {
	var b strings.Builder
	fmt.Fprintf(&b, "<p>%s</p><ul>", escaped(p.Statement))
	for _, g := range p.Given {
		fmt.Fprintf(&b, "<li>%s: %s</li>", escaped(g.Name), escaped(g.Value))
	}
	b.WriteString("</ul>")
	for _, t := range p.Tables {
		fmt.Fprintf(&b, "<table><caption>%s</caption><thead><tr>", escaped(t.Caption))
		for _, h := range t.Head {
			fmt.Fprintf(&b, `<th scope="col">%s</th>`, escaped(h))
		}
		b.WriteString("</tr></thead><tbody>")
		for _, r := range t.Rows {
			b.WriteString("<tr>")
			for i, c := range r {
				if i == 0 {
					fmt.Fprintf(&b, `<th scope="row">%s</th>`, escaped(c))
					continue
				}
				fmt.Fprintf(&b, "<td>%s</td>", escaped(c))
			}
			b.WriteString("</tr>")
		}
		b.WriteString("</tbody></table>")
	}
	if p.Caution != "" {
		fmt.Fprintf(&b, "<p><em>%s: %s</em></p>", say(p.language, "caution"), escaped(p.Caution))
	}
	fmt.Fprintf(&b, "<p><strong>%s</strong></p>", escaped(p.Ask))
	return b.String()
}

// solutionHTML is the worked solution, with the cautions and the name of the set.
func (s Set) solutionHTML(p Problem) string {
	var b strings.Builder
	fmt.Fprintf(&b, "<p>%s</p><ol>", escaped(p.Lettered()))
	for _, st := range p.Steps {
		fmt.Fprintf(&b, "<li>%s (%s)</li>",
			escaped(strings.TrimSpace(st.Text+" "+st.Sum)), escaped(st.Source))
	}
	b.WriteString("</ol>")
	if p.Answer.Note != "" {
		fmt.Fprintf(&b, "<p>%s: %s.</p>", s.say("also"), escaped(p.Answer.Note))
	}
	return b.String() + s.cautionsHTML()
}

// cautionsHTML are the cautions of the set and its name, which stand with every export.
func (s Set) cautionsHTML() string {
	var b strings.Builder
	for _, c := range append(s.cautions(), s.Name()) {
		fmt.Fprintf(&b, "<p>%s</p>", escaped(c))
	}
	return b.String()
}

type moodleText struct {
	Format string `xml:"format,attr,omitempty"`
	Text   struct {
		Data string `xml:",cdata"`
	} `xml:"text"`
}

func moodleHTML(s string) moodleText {
	t := moodleText{Format: "html"}
	t.Text.Data = s
	return t
}

type moodleAnswer struct {
	Fraction int `xml:"fraction,attr"`
	moodleText
	Feedback moodleText `xml:"feedback"`
}

type moodleQuestion struct {
	Type     string      `xml:"type,attr"`
	Category *moodleText `xml:"category,omitempty"`
	Name     *moodleText `xml:"name,omitempty"`
	Question *moodleText `xml:"questiontext,omitempty"`
	General  *moodleText `xml:"generalfeedback,omitempty"`
	Grade    string      `xml:"defaultgrade,omitempty"`
	Penalty  string      `xml:"penalty,omitempty"`
	Hidden   string      `xml:"hidden,omitempty"`
	// IDNumber is unique within the system that reads it.
	IDNumber string         `xml:"idnumber,omitempty"`
	Single   string         `xml:"single,omitempty"`
	Shuffle  string         `xml:"shuffleanswers,omitempty"`
	Numbered string         `xml:"answernumbering,omitempty"`
	Answers  []moodleAnswer `xml:"answer"`
}

// moodle is a category and a question of one choice for each problem.
func (s Set) moodle(bool) (string, error) {
	category := moodleText{}
	category.Text.Data = "$course$/top/" + strings.ReplaceAll(s.title(), "/", "//")
	quiz := struct {
		XMLName   xml.Name `xml:"quiz"`
		Comment   string   `xml:",comment"`
		Questions []moodleQuestion
	}{Comment: " " + strings.ReplaceAll(s.Name(), "--", "- -") + " "}
	quiz.Questions = append(quiz.Questions, moodleQuestion{Type: "category", Category: &category})
	for _, p := range s.Problems {
		name := moodleText{}
		name.Text.Data = s.problemTitle(p)
		question, general := moodleHTML(p.questionHTML()), moodleHTML(s.solutionHTML(p))
		q := moodleQuestion{
			Type: "multichoice", Name: &name, Question: &question, General: &general,
			Grade: "1", Penalty: "0.3333333", Hidden: "0", IDNumber: s.identifier(p),
			Single: "true", Shuffle: "false", Numbered: "ABCD",
		}
		for _, c := range p.Choices {
			a := moodleAnswer{moodleText: moodleHTML(escaped(c.Text)),
				Feedback: moodleHTML(escaped(c.Feedback))}
			if c.Right {
				a.Fraction = 100
			}
			q.Answers = append(q.Answers, a)
		}
		quiz.Questions = append(quiz.Questions, q)
	}
	b, err := xml.MarshalIndent(quiz, "", " ")
	out := strings.NewReplacer("<moodleQuestion", "<question", "</moodleQuestion>", "</question>",
		"<Questions", "<question", "</Questions>", "</question>").Replace(string(b))
	return xml.Header + out + "\n", err
}

// identifier names a problem of a set: letters, digits and hyphens.
func (s Set) identifier(p Problem) string {
	return fmt.Sprintf("problems-%s-%016x-%d", strings.ReplaceAll(Version, ".", "-"),
		hash(s.Options.Command()), p.Number)
}

// A qti is a version of QTI: its namespaces, and how it spells what both have.
type qti struct {
	item, schema, manifest, itemType, testType string
	spell                                      func(string) string
}

var (
	qtiTwo = qti{
		item: namespaces("http://www.imsglobal.org/xsd/imsqti_v2p1",
			"http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1.xsd"),
		schema: "QTIv2.1 Package", manifest: `xmlns="http://www.imsglobal.org/xsd/imscp_v1p1"`,
		itemType: "imsqti_item_xmlv2p1", testType: "imsqti_test_xmlv2p1",
		spell: func(s string) string { return s },
	}
	qtiThree = qti{
		item: namespaces("http://www.imsglobal.org/xsd/imsqtiasi_v3p0",
			"https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"),
		schema:   "QTI Package",
		manifest: `xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"`,
		itemType: "imsqti_item_xmlv3p0", testType: "imsqti_test_xmlv3p0",
		spell: kebab,
	}
)

func namespaces(of, schema string) string {
	return fmt.Sprintf("xmlns=%q xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" "+
		"xsi:schemaLocation=%q", of, of+" "+schema)
}

// kebab turns the names of QTI 2.1 into those of QTI 3.0: choiceInteraction into
// qti-choice-interaction, and attributes without the prefix.
func kebab(name string) string {
	var b strings.Builder
	for _, r := range name {
		if r >= 'A' && r <= 'Z' {
			b.WriteByte('-')
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}

// element and attribute spell a name in the version.
func (q qti) element(name string) string {
	if out := q.spell(name); out != name || q.itemType == qtiThree.itemType {
		return "qti-" + out
	}
	return name
}

func (s Set) qti21(bool) (string, error) { return s.qtiPackage(qtiTwo) }
func (s Set) qti30(bool) (string, error) { return s.qtiPackage(qtiThree) }

// write fills <name attr…> templates in which element names stand as «name» and
// attribute names as ‹name›.
func (q qti) write(template string) string {
	var b strings.Builder
	for template != "" {
		i := strings.IndexAny(template, "«‹")
		if i < 0 {
			break
		}
		b.WriteString(template[:i])
		template = template[i:]
		closing, spell := "»", q.element
		if strings.HasPrefix(template, "‹") {
			closing, spell = "›", q.spell
		}
		open := len("«")
		if closing == "›" {
			open = len("‹")
		}
		end := strings.Index(template, closing)
		b.WriteString(spell(template[open:end]))
		template = template[end+len(closing):]
	}
	b.WriteString(template)
	return b.String()
}

//go:embed qti_item.xml
var qtiItem string

// item is one problem: a choice, what is right, and the feedback of each choice.
func (s Set) item(q qti, p Problem) string {
	var choices, feedback strings.Builder
	for _, c := range p.Choices {
		fmt.Fprintf(&choices, q.write("<«simpleChoice» identifier=\"%s\">%s</«simpleChoice»>\n"),
			c.Letter, escaped(c.Text))
		body := escaped(c.Feedback)
		if q.itemType == qtiThree.itemType {
			body = "<qti-content-body><p>" + body + "</p></qti-content-body>"
		} else {
			body = "<p>" + body + "</p>"
		}
		fmt.Fprintf(&feedback, q.write("<«modalFeedback» ‹outcomeIdentifier›=\"FEEDBACK\" "+
			"identifier=\"%s\" ‹showHide›=\"show\">%s</«modalFeedback»>\n"), c.Letter, body)
	}
	// The capitals are put in after the names are spelt, for text may hold any sign.
	question := p.questionHTML()
	if q.itemType == qtiTwo.itemType { // which is of XHTML 1: no scope on a table without head
		question = strings.ReplaceAll(question, "<table>", `<table summary="`+
			escaped(s.say("table"))+`">`)
	}
	return strings.NewReplacer("CHOICES</", choices.String()+"</", "FEEDBACKS</",
		feedback.String()+"</", "NAMESPACES", q.item, `"ID"`, `"`+s.identifier(p)+`"`,
		`"TITLE"`, `"`+escaped(s.problemTitle(p))+`"`, `"LANG"`, `"`+string(s.Options.Language)+`"`,
		">LETTER<", ">"+p.Letter()+"<", "\nQUESTION\n",
		"\n"+question+"\n").Replace(xml.Header + q.write(qtiItem))
}

// test puts the problems in their order.
func (s Set) test(q qti) string {
	var refs strings.Builder
	for _, p := range s.Problems {
		fmt.Fprintf(&refs, "<«assessmentItemRef» identifier=\"item-%d\" href=\"items/%d.xml\"/>\n",
			p.Number, p.Number)
	}
	cautions := s.cautionsHTML()
	if q.itemType == qtiThree.itemType {
		cautions = "<qti-content-body>" + cautions + "</qti-content-body>"
	}
	out := q.write(xml.Header + `<«assessmentTest» NAMESPACES identifier="test" title="TITLE">
<«testPart» identifier="part" ‹navigationMode›="nonlinear" ‹submissionMode›="individual">
<«assessmentSection» identifier="section" title="TITLE" visible="true">
<«rubricBlock» view="candidate" use="instructions">CAUTIONS</«rubricBlock»>
` + refs.String() + `</«assessmentSection»>
</«testPart»>
</«assessmentTest»>
`)
	return strings.NewReplacer("NAMESPACES", q.item, ">CAUTIONS<", ">"+cautions+"<",
		`"TITLE"`, `"`+escaped(s.title())+`"`).Replace(out)
}

// manifest lists what the package holds, and names the set.
func (s Set) manifest(q qti) string {
	version := "3.0.0"
	if q.itemType == qtiTwo.itemType {
		version = "1.0.0"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s<!-- %s -->\n<manifest %s identifier=\"manifest\">\n<metadata><schema>%s"+
		"</schema><schemaversion>%s</schemaversion></metadata>\n<organizations/>\n<resources>\n",
		xml.Header, strings.ReplaceAll(s.Name(), "--", "- -"), q.manifest, q.schema, version)
	fmt.Fprintf(&b, "<resource identifier=\"test\" type=\"%s\" href=\"test.xml\">"+
		"<file href=\"test.xml\"/>\n", q.testType)
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "<dependency identifierref=\"item-%d\"/>\n", p.Number)
	}
	b.WriteString("</resource>\n")
	for _, p := range s.Problems {
		fmt.Fprintf(&b, "<resource identifier=\"item-%d\" type=\"%s\" href=\"items/%d.xml\">"+
			"<file href=\"items/%d.xml\"/></resource>\n", p.Number, q.itemType, p.Number, p.Number)
	}
	b.WriteString("</resources>\n</manifest>\n")
	return b.String()
}

// qtiPackage is a content package, the same bytes for the same set.
func (s Set) qtiPackage(q qti) (string, error) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	add := func(name, text string) error {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate,
			Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
		if err == nil {
			_, err = w.Write([]byte(text))
		}
		return err
	}
	if err := add("imsmanifest.xml", s.manifest(q)); err != nil {
		return "", err
	}
	if err := add("test.xml", s.test(q)); err != nil {
		return "", err
	}
	for _, p := range s.Problems {
		if err := add(fmt.Sprintf("items/%d.xml", p.Number), s.item(q, p)); err != nil {
			return "", err
		}
	}
	err := z.Close()
	return b.String(), err
}
