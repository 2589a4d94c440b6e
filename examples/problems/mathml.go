package main

import (
	"html"
	"html/template"
	"strings"
)

// mathML writes a calculation, as "(a + b) / c = d", as presentation MathML, with
// fractions where it divides. Operators stand between blanks.
func mathML(sum string) template.HTML {
	if sum == "" {
		return ""
	}
	m := mathParser{words: mathWords(sum)}
	focus := ""
	if len(m.words) > 9 { // may be wider than a narrow screen, and then scrolls by itself
		focus = ` tabindex="0"`
	}
	return template.HTML(`<span class="sum"` + focus + "><math>" + m.chain() + "</math></span>")
}

// mathWords are the words of a calculation, with parentheses apart from what they
// hold.
func mathWords(sum string) []string {
	var out []string
	for _, w := range strings.Fields(sum) {
		for strings.HasPrefix(w, "(") {
			out, w = append(out, "("), w[1:]
		}
		closed := []string{}
		for strings.HasSuffix(w, ")") || strings.HasSuffix(w, ")²") {
			if rest, ok := strings.CutSuffix(w, ")²"); ok {
				closed, w = append(closed, ")²"), rest
				continue
			}
			closed, w = append(closed, ")"), strings.TrimSuffix(w, ")")
		}
		if w != "" {
			out = append(out, w)
		}
		for i := len(closed) - 1; i >= 0; i-- {
			out = append(out, closed[i])
		}
	}
	return out
}

type mathParser struct {
	words []string
	at    int
}

func (m *mathParser) peek() string {
	if m.at < len(m.words) {
		return m.words[m.at]
	}
	return ""
}

func (m *mathParser) next() string {
	w := m.peek()
	m.at++
	return w
}

func mathOperator(w string) string { return "<mo>" + html.EscapeString(w) + "</mo>" }

// chain is what equal signs and arrows join.
func (m *mathParser) chain() string {
	out := m.sum()
	for m.at < len(m.words) {
		w := m.next()
		switch w {
		case "=", "→":
			out += mathOperator(w) + m.sum()
		default: // a stray word, as one after a colon
			out += "<mtext>" + html.EscapeString(w) + "</mtext>"
		}
	}
	return out
}

func (m *mathParser) sum() string {
	out := m.product()
	for w := m.peek(); w == "+" || w == "−"; w = m.peek() {
		out += mathOperator(m.next()) + m.product()
	}
	return out
}

func (m *mathParser) product() string {
	out := m.factor()
	for {
		switch m.peek() {
		case "×":
			out += mathOperator(m.next()) + m.factor()
		case "/":
			m.next()
			out = "<mfrac><mrow>" + bare(out) + "</mrow><mrow>" + bare(m.factor()) +
				"</mrow></mfrac>"
		default:
			return out
		}
	}
}

const (
	mathOpen  = `<mrow><mo>(</mo>`
	mathClose = `<mo>)</mo></mrow>`
)

// bare is a part of a fraction without the parentheses that held it together.
func bare(part string) string {
	inner, ok := strings.CutPrefix(part, mathOpen)
	if !ok || strings.Count(part, mathOpen) != 1 {
		return part
	}
	if inner, ok = strings.CutSuffix(inner, mathClose); !ok {
		return part
	}
	return inner
}

// factor is a number with its unit, a name, or what parentheses hold.
func (m *mathParser) factor() string {
	if m.peek() == "(" {
		m.next()
		inner := m.sum()
		switch m.next() {
		case ")²":
			return "<msup>" + mathOpen + inner + mathClose + "<mn>2</mn></msup>"
		default:
			return mathOpen + inner + mathClose
		}
	}
	first := m.next()
	if first == "" {
		return ""
	}
	var rest []string
	for m.at < len(m.words) && !strings.Contains(" = → + − × / ( ) )² ", " "+m.peek()+" ") {
		rest = append(rest, m.next())
	}
	digit := strings.TrimLeft(first, "−")
	kind := "mi"
	if digit != "" && digit[0] >= '0' && digit[0] <= '9' {
		kind = "mn"
	}
	out := "<" + kind + ">" + html.EscapeString(first) + "</" + kind + ">"
	if len(rest) > 0 {
		out += "<mtext>\u00a0" + html.EscapeString(strings.Join(rest, "\u00a0")) + "</mtext>"
	}
	return out
}
