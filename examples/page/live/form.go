package live

import (
	"encoding"
	"reflect"
	"slices"
	"sort"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/work"
)

// A Form is all that can be entered, with its words: what the page is made of.
type Form struct {
	Words     map[string]string `json:"words"`
	Languages []Option          `json:"languages"`
	// Quantities are the units to offer for each quantity, by system, the usual one first.
	Quantities map[string]map[quantity.System][]Unit `json:"quantities"`
	Fluids     []Fluid                               `json:"fluids"`
	Looks      []satline.Look                        `json:"looks"`
	Groups     []Group                               `json:"groups"`
	Tasks      []Group                               `json:"tasks"`
	// Move is the field of the refrigerant that is moved at a time.
	Move Field `json:"move"`
	// Core are the paths of the readings of a charging loop.
	Core []string `json:"core"`
	// Wait is how long a machine runs after a move before its readings count, in seconds.
	Wait float64 `json:"wait"`
}

// A Group is fields that are entered together.
type Group struct {
	Code   string  `json:"code"`
	Name   string  `json:"name"`
	Hint   string  `json:"hint,omitempty"`
	Fields []Field `json:"fields"`
	Lists  []List  `json:"lists,omitempty"`
	// Opened are the fields that stand open; the others are folded.
	Opened int `json:"opened,omitempty"`
	// Parts are groups within it, each folded.
	Parts []Group `json:"parts,omitempty"`
}

// A List is fields that may be entered several times over.
type List struct {
	Path   string  `json:"path"`
	Name   string  `json:"name"`
	Fields []Field `json:"fields"`
	// Lists stand in each of its rows.
	Lists []List `json:"lists,omitempty"`
	// Timed says that each row is of a moment, which a stopwatch gives.
	Timed bool `json:"timed,omitempty"`
}

// A Field is one value of a visit or a task.
type Field struct {
	Path  string `json:"path"`
	Label string `json:"label"`
	// Kind is "text", "yes", "either" (yes or no), "choice", "number", or the name of a quantity.
	Kind string `json:"kind"`
	// Signed says that it may be below zero.
	Signed  bool     `json:"signed,omitempty"`
	Options []Option `json:"options,omitempty"`
	// Unit is the one to begin with, by system; empty where it is that of the quantity.
	Unit map[quantity.System]string `json:"unit,omitempty"`
}

// An Option is a value with its words.
type Option struct {
	Value string `json:"value"`
	Text  string `json:"text"`
}

// A Fluid is a choice of refrigerant on the page.
type Fluid struct {
	Designation string `json:"designation"`
	Note        string `json:"note"`
}

// core are the readings that a charging loop takes. Common practice, no source.
var core = []string{
	"suctionPressure", "liquidPressure", "suctionLine", "liquidLine", "outdoorDryBulb",
	"returnDryBulb", "returnWetBulb", "supplyDryBulb",
}

// elsewhere are the parts of a visit that are no fields: they have a switch or a list of
// their own on the page, or are set by what is done there.
var elsewhere = []string{
	"units", "language", "scope", "log", "moves", "checks", "conditions.readAt",
}

// groups divides the fields of a visit by how their paths begin; what is named by none is
// of the machine.
var groups = []struct {
	code   string
	opened int
	first  []string // in this order before the others
	begins []string
}{
	{code: "readings", begins: []string{"readings."}, opened: len(core),
		first: prefixed("readings.", core)},
	{code: "label", begins: []string{"equipment.label."}, opened: 3,
		first: prefixed("equipment.label.", []string{"charge", "subcooling", "superheat"})},
	{code: "electrical", begins: []string{"electrical."}},
	{code: "cold", begins: []string{"equipment.coldRoom."}},
	{code: "line", begins: []string{"equipment.lineSet.", "equipment.accessories"}},
	{code: "seen", begins: []string{"conditions."}, opened: 1,
		first: []string{"conditions.running"}},
	{code: "house", begins: []string{"house."}, first: []string{"house.name"}},
	{code: "instruments", begins: []string{"instruments."}},
	{code: "record", begins: []string{"notes", "complaint"}, opened: 2},
	{code: "machine", begins: []string{""}, opened: 5, first: []string{
		"title", "equipment.refrigerant", "equipment.metering", "equipment.nominalCapacity",
		"site.elevation",
	}},
}

func prefixed(prefix string, names []string) []string {
	var out []string
	for _, n := range names {
		out = append(out, prefix+n)
	}
	return out
}

// NewForm describes the page in a language and a system of units.
func NewForm(language satline.Language, sys quantity.System) Form {
	b := book{language}
	out := Form{
		Words: b.words(), Quantities: quantities(), Looks: satline.Looks(language, sys),
		Core: prefixed("readings.", core), Wait: charge.WaitAfterMove().Seconds(),
		Move: b.field(leaf{path: "move", of: reflect.TypeFor[quantity.Mass]()}),
	}
	for _, l := range satline.Languages() {
		out.Languages = append(out.Languages, Option{string(l), book{l}.word("language")})
	}
	for _, r := range refrigerant.All() {
		note := string(r.SafetyGroup())
		if r.Flammable() {
			note += ", " + b.word("flammable")
		}
		out.Fluids = append(out.Fluids, Fluid{r.Designation(), note})
	}
	all := leaves(reflect.TypeFor[satline.Visit](), "")
	out.Groups = b.groups(all)
	for _, t := range tasks {
		out.Tasks = append(out.Tasks, b.task(&t, all))
	}
	return out
}

// groups are those of a visit, each of which takes what those before it have left.
func (b book) groups(all []leaf) (out []Group) {
	taken := map[string]bool{}
	for _, g := range groups {
		group := Group{Code: g.code, Name: b.word("group." + g.code), Opened: g.opened}
		var own []leaf
		for _, l := range all {
			begins := func(with string) bool { return strings.HasPrefix(l.path, with) }
			if !taken[l.path] && slices.ContainsFunc(g.begins, begins) {
				taken[l.path] = true
				own = append(own, l)
			}
		}
		sort.SliceStable(own, func(i, j int) bool {
			return rank(g.first, own[i].path) < rank(g.first, own[j].path)
		})
		b.fill(&group, own)
		if g.code != "electrical" { // it has a task of its own
			out = append(out, group)
		}
	}
	order := []string{
		"machine", "label", "line", "cold", "readings", "seen", "instruments", "house", "record",
	}
	// package sort, since a stable sort compiled for one type takes 2 kB of the page.
	sort.SliceStable(out, func(i, j int) bool {
		return rank(order, out[i].Code) < rank(order, out[j].Code)
	})
	return out
}

// task is the group of one, with what it takes of the visit.
func (b book) task(t *task, all []leaf) Group {
	group := Group{
		Code: t.code, Name: b.word("task." + t.code), Hint: b.word("task." + t.code + ".hint"),
	}
	for _, l := range all {
		if slices.Contains(t.visit, l.path) {
			b.fill(&group, []leaf{l})
		}
		if t.section != "" && strings.HasPrefix(l.path, t.section) {
			part, _, _ := strings.Cut(strings.TrimPrefix(l.path, t.section), ".")
			if n := len(group.Parts); n == 0 || group.Parts[n-1].Code != part {
				name := b.word("name." + part)
				group.Parts = append(group.Parts, Group{Code: part, Name: name})
			}
			b.fill(&group.Parts[len(group.Parts)-1], []leaf{l})
		}
	}
	if in := fresh(t.input); in != nil {
		b.fill(&group, leaves(reflect.TypeOf(in).Elem(), "task."+t.code+"."))
	}
	return group
}

func rank(order []string, of string) int {
	if i := slices.Index(order, of); i >= 0 {
		return i
	}
	return len(order)
}

// fill gives a group its fields and lists.
func (b book) fill(g *Group, of []leaf) {
	for _, l := range of {
		if l.of.Kind() != reflect.Slice {
			g.Fields = append(g.Fields, b.field(l))
			continue
		}
		g.Lists = append(g.Lists, b.list(l))
	}
}

func (b book) list(l leaf) List {
	list := List{Path: l.path, Name: b.label(l.path)}
	inners := []leaf{{l.path + ".*", l.of.Elem()}}
	if structured(l.of.Elem()) {
		inners = leaves(l.of.Elem(), l.path+".*.")
	}
	for _, inner := range inners {
		if inner.of.Kind() == reflect.Slice {
			list.Lists = append(list.Lists, b.list(inner))
			continue
		}
		list.Timed = list.Timed || strings.HasSuffix(inner.path, ".at")
		list.Fields = append(list.Fields, b.field(inner))
	}
	return list
}

// A leaf is a value of a struct by its path in JSON, with its type.
type leaf struct {
	path string
	of   reflect.Type
}

var (
	text     = reflect.TypeFor[encoding.TextMarshaler]()
	duration = reflect.TypeFor[time.Duration]()
	either   = reflect.TypeFor[*bool]()
)

// leaves are the values of a struct, those of what it holds with it.
func leaves(t reflect.Type, prefix string) []leaf {
	var out []leaf
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" || name == "-" || slices.Contains(elsewhere, prefix+name) {
			continue
		}
		of := f.Type
		if of != either {
			of = bare(of)
		}
		if structured(of) {
			out = append(out, leaves(of, prefix+name+".")...)
			continue
		}
		out = append(out, leaf{prefix + name, of})
	}
	return out
}

// bare is a type without pointer and uncertainty.
func bare(t reflect.Type) reflect.Type {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t.Kind() == reflect.Struct && t.Implements(text) {
		return t.Field(0).Type
	}
	return t
}

func structured(t reflect.Type) bool { return t.Kind() == reflect.Struct && !t.Implements(text) }

func (b book) field(l leaf) Field {
	f := Field{Path: l.path, Label: b.label(l.path), Kind: kindOf(l.of), Unit: usual(l.path)}
	of := bare(l.of)
	last := strings.TrimSuffix(l.path, ".*")
	last = last[strings.LastIndexByte(last, '.')+1:]
	switch f.Kind {
	case "check":
		f.Kind = "choice"
		for _, c := range checks() {
			f.Options = append(f.Options, Option{string(c), b.word(last + "." + string(c))})
		}
	case "either":
		for _, value := range []string{"true", "false"} {
			f.Options = append(f.Options, Option{value, b.word("either." + value)})
		}
	case "choice":
		for i := int64(1); ; i++ {
			v := reflect.New(of).Elem()
			v.SetInt(i)
			name, err := v.Interface().(encoding.TextMarshaler).MarshalText()
			if err != nil {
				break
			}
			f.Options = append(f.Options, Option{string(name), b.word(last + "." + string(name))})
		}
	case "text":
		if l.path == likePath {
			f.Kind, f.Options = "choice", b.knownFaults()
		}
	case "yes", "number":
	default:
		f.Signed = belowZero(f)
	}
	return f
}

// likePath is the field of a firm's own fault that names the known one which reads as it does.
const likePath = "house.faults.*.like"

// knownFaults are the library's, by what they look like on the gauges.
func (b book) knownFaults() (out []Option) {
	for _, f := range diagnose.Library() {
		reads := b.word("cause." + string(f.Signature))
		out = append(out, Option{string(f.Code), reads + ": " + string(f.Code)})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Text < out[j].Text })
	return out
}

func kindOf(t reflect.Type) string {
	if t == either {
		return "either"
	}
	switch t = bare(t); {
	case t == reflect.TypeFor[work.Item]():
		return "check"
	case t == duration:
		return "Duration"
	case t == reflect.TypeFor[float64]():
		return "number"
	case t.Kind() == reflect.Float64:
		return t.Name()
	case t.Kind() == reflect.Bool:
		return "yes"
	case t.Kind() == reflect.Int && t.Implements(text):
		return "choice"
	case t.Kind() == reflect.Int:
		return "number"
	}
	return "text"
}

// fresh is a pointer to a new value of the type of an input; nil where there is none.
func fresh(input any) any {
	if input == nil {
		return nil
	}
	return reflect.New(reflect.TypeOf(input)).Interface()
}

// checks are those of all tasks of a job, in their order.
func checks() []work.Item {
	var out []work.Item
	for t := work.FindFault; ; t++ {
		if _, err := t.MarshalText(); err != nil {
			return out
		}
		for _, c := range work.Checklist(t) {
			if !slices.Contains(out, c) {
				out = append(out, c)
			}
		}
	}
}
