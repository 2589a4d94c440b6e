package cycle

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

const faultTable = "testdata/faults.csv"

// likeSize is how far, in points, an effect may be from a published one: the model is an
// ordinary machine and not the one tested. The published tests differ among themselves by as
// much.
const likeSize = 15.0

// offInSize reports an effect that is not the published one but in direction: by more than
// half of it and by more than 3 points. The table must say so.
func offInSize(published, effect float64) bool {
	d := math.Abs(published - effect)
	return d > 3 && d > math.Abs(published)/2
}

type faultRow struct {
	source, memory, refrigerant, device, conditions, fault, variable, published, model, note string
}

func readFaults(t *testing.T) (comments []byte, header []string, rows []faultRow) {
	t.Helper()
	text, err := os.ReadFile(faultTable)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range bytes.SplitAfter(text, []byte("\n")) {
		if bytes.HasPrefix(line, []byte("#")) {
			comments = append(comments, line...)
		}
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range all[1:] {
		rows = append(rows, faultRow{c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9]})
	}
	return comments, all[0], rows
}

func (r *faultRow) faults(t *testing.T) Faults {
	name, value, _ := strings.Cut(r.fault, "=")
	v, err := strconv.ParseFloat(value, 64)
	if err != nil {
		t.Fatalf("%s: %v", r.fault, err)
	}
	switch name {
	case "charge":
		return Faults{Charge: v}
	case "compressorLeak":
		return Faults{CompressorLeak: v}
	case "outdoorAirflow":
		return Faults{OutdoorAirflow: v}
	case "indoorAirflow":
		return Faults{IndoorAirflow: v}
	case "liquidRestriction":
		return Faults{LiquidRestriction: quantity.Kilopascals(v)}
	case "nonCondensables":
		return Faults{NonCondensables: v}
	}
	t.Fatalf("fault %q", r.fault)
	return Faults{}
}

func (r *faultRow) effect(t *testing.T) float64 {
	var metering refrigerant.Metering
	if err := metering.UnmarshalText([]byte(r.device)); err != nil {
		t.Fatal(err)
	}
	var c [3]float64
	for i, s := range strings.Split(r.conditions, "/") {
		c[i], _ = strconv.ParseFloat(s, 64)
	}
	s := machine(t, r.refrigerant, metering)
	at := weather(c[0], c[1], c[2])
	a, b := solve(t, s, at, Faults{}), solve(t, s, at, r.faults(t))
	outdoor := func(o Operating) float64 { return float64(o.CompressorPower + o.FanPower) }
	switch r.variable {
	case "evaporating":
		return float64(b.Evaporating - a.Evaporating)
	case "condensing":
		return float64(b.Condensing - a.Condensing)
	case "superheat":
		return float64(b.Superheat - a.Superheat)
	case "subcooling":
		return float64(b.Subcooling - a.Subcooling)
	case "discharge":
		return float64(b.Discharge.Temperature - a.Discharge.Temperature)
	case "condenserRise":
		return float64(b.CondenserLeaving - a.CondenserLeaving)
	case "evaporatorDrop":
		return float64(a.CoilLeaving - b.CoilLeaving)
	case "capacity %":
		return 100 * (float64(b.Capacity/a.Capacity) - 1)
	case "cop %":
		return 100 * (b.COP/a.COP - 1)
	case "outdoorPower %":
		return 100 * (outdoor(b)/outdoor(a) - 1)
	}
	t.Fatalf("variable %q", r.variable)
	return 0
}

// Every published effect has the direction that was measured, but for those whose note
// says what the model has instead; those are held to be still off, so that no note is
// older than the model. Magnitudes stand side by side in the table.
func TestPublishedFaults(t *testing.T) {
	update := os.Getenv("SATLINE_UPDATE") != ""
	comments, header, rows := readFaults(t)
	agree, off, sizes, beyond := 0, 0, 0, 0
	for i := range rows {
		r := &rows[i]
		effect := r.effect(t)
		now := strconv.FormatFloat(math.Round(effect*10)/10, 'f', 1, 64)
		if update {
			r.model = now
		} else if was, err := strconv.ParseFloat(r.model, 64); err != nil ||
			math.Abs(was-effect) > 0.1 {
			t.Errorf("row %d, %s on %s of %s: the table says %s, the model %s", i+1, r.variable,
				r.fault, r.device, r.model, now)
		}
		name := fmt.Sprintf(
			"%s, %s, %s at %s: %s", r.refrigerant, r.device, r.fault, r.conditions, r.variable,
		)
		published, err := strconv.ParseFloat(r.published, 64)
		direction := r.published
		if err == nil {
			direction = "+"
			if published < 0 {
				direction = "-"
			}
			if math.Abs(published) < 1 {
				direction = ""
			}
		}
		same := direction == "" || (direction == "+") == (effect > 0)
		switch {
		case same && strings.HasPrefix(r.note, "off"):
			t.Errorf("%s: no longer off: %s", name, now)
		case same:
			agree++
		case strings.HasPrefix(r.note, "off"):
			off++
		default:
			t.Errorf("%s: published %s, model %s", name, r.published, now)
		}
		if strings.HasPrefix(r.note, "size") {
			sizes++
		}
		if err == nil && offInSize(published, effect) != (r.note != "") &&
			!strings.HasPrefix(r.note, "off") {
			t.Errorf(
				"%s: published %s, model %s, note %q: say where it is off in size, and only there",
				name, r.published, now, r.note,
			)
		}
		if err == nil && math.Abs(published-effect) > likeSize && r.note != "" {
			beyond++
		} else if err == nil {
			kind := verify.Published
			if r.memory == "yes" {
				kind = verify.FromMemory
			}
			verify.Value(t, verify.Source{Cite: r.source, Kind: kind}, name, "%", published, effect,
				likeSize)
		}
	}
	t.Logf(
		"%d of %d published effects have their direction, %d have not; %d are off in size, %d "+
			"of them by more than %g points",
		agree, len(rows), off, sizes, beyond, likeSize,
	)
	if !update {
		return
	}
	var out bytes.Buffer
	out.Write(comments)
	w := csv.NewWriter(&out)
	_ = w.Write(header)
	for _, r := range rows {
		_ = w.Write(
			[]string{
				r.source, r.memory, r.refrigerant, r.device, r.conditions, r.fault, r.variable,
				r.published, r.model, r.note,
			},
		)
	}
	w.Flush()
	if err := os.WriteFile(faultTable, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
