package live

import (
	"embed"
	"maps"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

//go:embed words/*.txt
var wordFiles embed.FS

// A book is the page's own words in a language, beside those of the library.
type book struct{ language satline.Language }

var catalogs = func() map[satline.Language]map[string]string {
	out := map[satline.Language]map[string]string{}
	for _, l := range satline.Languages() {
		text, err := wordFiles.ReadFile("words/" + string(l) + ".txt")
		if err != nil {
			panic(err)
		}
		out[l] = map[string]string{}
		for line := range strings.Lines(string(text)) {
			if code, words, ok := strings.Cut(strings.TrimSpace(line), ": "); ok {
				out[l][code] = words
			}
		}
	}
	return out
}()

// own are the words of the language, English where it has none.
func (b book) own() map[string]string {
	if c, ok := catalogs[b.language]; ok {
		return c
	}
	return catalogs[satline.English]
}

// words are its own, and those of the library that stand by themselves on the page.
func (b book) words() map[string]string {
	out := maps.Clone(b.own())
	for _, belief := range []satline.Belief{
		satline.Believed, satline.Unusual, satline.Doubted, satline.Impossible,
	} {
		code := "belief." + string(belief)
		out[code] = satline.Word(code, b.language)
	}
	return out
}

// word is the page's own, else the library's, else the code.
func (b book) word(code string) string {
	if w, ok := b.own()[code]; ok {
		return w
	}
	return satline.Word(code, b.language)
}

// figures writes the decimals of a text as the language does.
func (b book) figures(text string) string {
	out, digit := []byte(text), func(c byte) bool { return c >= '0' && c <= '9' }
	for i := 1; i+1 < len(out); i++ {
		if out[i] == '.' && digit(out[i-1]) && digit(out[i+1]) {
			out[i] = b.word("decimal")[0]
		}
	}
	return string(out)
}

// sentence puts values into words: "from {low} to {high}".
func (b book) sentence(code string, values ...string) string {
	var pairs []string
	for i := 0; i+1 < len(values); i += 2 {
		pairs = append(pairs, "{"+values[i]+"}", values[i+1])
	}
	return strings.NewReplacer(pairs...).Replace(b.word(code))
}

// label names the field at a path: by words of its own, else by those of the parts of its path
// within its section, "run capacitor, rated"; a part that has no words yet by its name.
func (b book) label(path string) string {
	if w := b.word("field." + path); w != "field."+path {
		return w
	}
	parts := strings.Split(strings.ReplaceAll(strings.TrimSuffix(path, ".*"), ".*.", "."), ".")
	if parts[0] == "readings" {
		return b.word("reading." + parts[1])
	}
	var out []string
	for _, name := range parts[min(2, len(parts)-1):] {
		w := b.word("name." + name)
		if w == "name."+name {
			w = spaced(name)
		}
		out = append(out, w)
	}
	label := strings.Join(out, ", ")
	first, size := utf8.DecodeRuneInString(label)
	return string(unicode.ToUpper(first)) + label[size:]
}

// say words a fact: those of the page by its own sentences, the others as the library does.
func (b book) say(f fact.Fact, sys quantity.System) string {
	sentence, ok := b.own()[string(f.Code)]
	if !ok {
		return satline.Say(f, b.language, sys)
	}
	for _, v := range f.Values {
		text := satline.Show(v, b.language, sys)
		if name, ok := v.Of.(string); ok {
			text = b.word("icing." + name)
		}
		sentence = strings.ReplaceAll(sentence, "{"+v.Name+"}", text)
	}
	// What stands in brackets is left out where a value is missing.
	return brackets(sentence, func(part string) string {
		if strings.Contains(part, "{") {
			return ""
		}
		return part
	})
}

// brackets puts something else for each part in square brackets.
func brackets(text string, other func(part string) string) string {
	var b strings.Builder
	for {
		before, rest, opens := strings.Cut(text, "[")
		b.WriteString(before)
		if !opens {
			return b.String()
		}
		part, after, _ := strings.Cut(rest, "]")
		b.WriteString(other(part))
		text = after
	}
}

// spaced is a name of several words as words.
func spaced(name string) string {
	var b strings.Builder
	for _, r := range name {
		if unicode.IsUpper(r) {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
