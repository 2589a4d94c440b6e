// Package words makes sentences of facts, in English or Spanish.
//
// The sentences stand in text files, one folder a language, a line each:
//
//	danger.suction-vacuum: suction {suction}, in a vacuum
//
// A name in braces stands for the value of that name. What stands in brackets is left out
// where a value in it is missing, and {count|reading|readings} chooses a form by a number,
// by the plural rules of the language. A sentence that starts with a value starts with a
// capital letter all the same. Which sentences there are is the same in every language, and
// so are the values that each uses; the tests hold that.
//
// Spanish is that of technicians in the Americas; it has not been read by one yet.
package words

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"golang.org/x/text/language"
)

//go:embed en/*.txt es/*.txt
var files embed.FS

// languages in the order in which the matcher prefers them; the first is spoken where no
// other fits.
var languages = []language.Tag{language.English, language.Spanish}

var matcher = language.NewMatcher(languages)

// A catalog holds the templates of one language.
type catalog map[string]template

var catalogs = [...]func() catalog{
	sync.OnceValue(func() catalog { return read("en") }),
	sync.OnceValue(func() catalog { return read("es") }),
}

func read(folder string) catalog {
	out := catalog{}
	names, err := fs.Glob(files, folder+"/*.txt")
	if err != nil {
		panic(err)
	}
	for _, name := range names {
		text, err := files.ReadFile(name)
		if err != nil {
			panic(err)
		}
		for line := range strings.Lines(string(text)) {
			line = strings.TrimSpace(line)
			if line == "" || line[0] == '#' {
				continue
			}
			code, sentence, ok := strings.Cut(line, ": ")
			if _, twice := out[code]; !ok || twice {
				panic(fmt.Sprintf("%s: %q is no line of a catalog, or stands twice", name, line))
			}
			out[code] = parse(sentence)
		}
	}
	return out
}

// Shapes tells for every code of a language which values its sentence uses.
func Shapes(tag language.Tag) map[string][]string {
	_, index, _ := matcher.Match(tag)
	out := map[string][]string{}
	for code, t := range catalogs[index]() {
		out[code] = t.names(nil)
	}
	return out
}
