package main

import (
	"bufio"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"github.com/parquet-go/parquet-go"
	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
	"github.com/satline/satline/work"
)

// An invention is an archive of a firm that does not exist, over ten years. Its machines
// are those of package cycle, with faults, read with the errors of instruments. What the
// tables are to find is put in: one model leaks, one technician adds too much, and one has
// a gauge that reads 12 psi too high.
type invention struct {
	dir                     string
	orders, machines, files int
	seed                    uint64
}

const (
	leaky      = "Dunlin 48"
	overfills  = "Technician 03 (invented)"
	wrongGauge = "Technician 07 (invented)"
	// badEvery of so many lines is no order.
	badEvery = 997
	// twiceEvery of so many orders stands in the archive a second time.
	twiceEvery = 499
)

var models = []struct {
	name, refrigerant string
	metering          satline.Metering
	tons              float64
}{
	{"Heron 24", "R-410A", satline.TXV, 2},
	{"Plover 36", "R-410A", satline.FixedRestrictor, 3},
	{"Curlew 36", "R-454B", satline.TXV, 3},
	{leaky, "R-410A", satline.TXV, 4},
	{"Knot 30", "R-22", satline.FixedRestrictor, 2.5},
}

// faults, and how many machines of a thousand have each.
var faults = []struct {
	share int
	cycle.Faults
}{
	{560, cycle.Faults{}},
	{150, cycle.Faults{Charge: -0.25}},
	{70, cycle.Faults{Charge: 0.25}},
	{100, cycle.Faults{IndoorAirflow: -0.4}},
	{90, cycle.Faults{OutdoorAirflow: -0.4}},
	{30, cycle.Faults{LiquidRestriction: quantity.Bar(7)}},
}

const (
	sound, low, high = 0, 1, 2
)

var weathers = []float64{72, 80, 87, 94, 101} // °F

// states are what each model does with each fault in each weather.
type states [][][]cycle.Operating

func solveAll() (states, error) {
	var out states
	for _, m := range models {
		fluid, err := refrigerant.Lookup(m.refrigerant)
		if err != nil {
			return nil, err
		}
		machine, err := cycle.DesignResidential(fluid, quantity.Tons(m.tons), m.metering)
		if err != nil {
			return nil, err
		}
		var byFault [][]cycle.Operating
		for _, f := range faults {
			var byWeather []cycle.Operating
			for _, t := range weathers {
				o, err := machine.Solve(cycle.Conditions{
					OutdoorDryBulb: quantity.Fahrenheit(t),
					ReturnDryBulb:  quantity.Fahrenheit(75), ReturnWetBulb: quantity.Fahrenheit(63),
				}, f.Faults)
				if err != nil {
					return nil, err
				}
				byWeather = append(byWeather, o)
			}
			byFault = append(byFault, byWeather)
		}
		out = append(out, byFault)
	}
	return out, nil
}

// make writes the archive: files by turns plain, with gzip, and Parquet.
func (a invention) make() error {
	if a.orders < 1 || a.orders > 10_000_000 || a.files < 1 || a.files > 10_000 {
		return fmt.Errorf("-orders is from 1 to 10000000 and -files from 1 to 10000")
	}
	if a.machines == 0 {
		a.machines = max(1, a.orders/10)
	}
	known, err := solveAll()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(a.dir, 0o755); err != nil {
		return err
	}
	sinks, err := a.sinks()
	if err != nil {
		return err
	}
	random := rand.New(rand.NewPCG(a.seed, 24))
	n := 0
	for m := range a.machines {
		share := a.orders/a.machines + min(1, max(0, a.orders%a.machines-m))
		for _, o := range a.machine(random, known, m, share) {
			text, err := json.Marshal(o)
			if err != nil {
				return err
			}
			n++
			if err := put(sinks[random.IntN(len(sinks))], text, n); err != nil {
				return err
			}
		}
	}
	for _, s := range sinks {
		if err := s.close(); err != nil {
			return err
		}
	}
	return nil
}

// sinks opens the files of the archive.
func (a invention) sinks() (out []sink, err error) {
	for i := range a.files {
		s, err := newSink(filepath.Join(a.dir, fmt.Sprintf("orders-%04d", i)), i%3)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// put writes the nth order: a few stand twice in the archive, a few are cut off.
func put(to sink, text []byte, n int) error {
	bad := n%badEvery == 0
	if bad {
		text = text[:len(text)/2]
	}
	if err := to.write(text); err != nil || bad || n%twiceEvery != 0 {
		return err
	}
	return to.write(text)
}

// machine invents the orders of one machine.
func (a invention) machine(random *rand.Rand, known states, m, orders int) []work.Order {
	kind := m % len(models)
	of := models[kind]
	charge := quantity.Pounds(2.5 * of.tons)
	machine := work.Machine{
		Model: of.name, Serial: fmt.Sprintf("INV-%07d", m),
		Equipment: satline.Equipment{
			Refrigerant: of.refrigerant, Metering: of.metering,
			NominalCapacity: quantity.Tons(of.tons),
			Arrangement:     satline.Split, Label: satline.Label{Charge: charge},
		},
		Site: satline.Site{Elevation: new(quantity.Feet(0))},
	}
	if of.metering == satline.TXV {
		machine.Equipment.Label.Subcooling = new(quantity.FahrenheitDelta(10).PlusMinus(0))
	}
	start := time.Date(2016, 1, 1, 9, 0, 0, 0, time.UTC)
	again := -1 // the fault of a callback
	var out []work.Order
	for i := range orders {
		days := 3300 / orders
		start = start.AddDate(0, 0, days/2+random.IntN(days+1))
		fault := drawFault(random, of.name == leaky)
		if again >= 0 {
			start = out[i-1].Start.AddDate(0, 0, 5+random.IntN(20))
			fault = again
		}
		again = -1
		if fault != sound && random.IntN(8) == 0 {
			again = fault
		}
		who := fmt.Sprintf("Technician %02d (invented)", random.IntN(12))
		weather := min(len(weathers)-1, max(0, 4-abs(int(start.Month())-7)))
		o := work.Order{
			Number: fmt.Sprintf("W-%d-%d", m, i), Start: start,
			Customer:   fmt.Sprintf("Customer %d (invented)", m/2),
			Technician: work.Technician{Name: who}, Machine: machine,
			Tasks:  []work.Task{work.FindFault},
			Before: read(random, known[kind][fault][weather], weathers[weather], who),
		}
		if fault == low {
			added, left := charge.Kilograms()*0.25, sound
			if who == overfills {
				added, left = charge.Kilograms()*0.5, high
			}
			o.Tasks = []work.Task{work.SetCharge}
			o.Cylinders = []work.Cylinder{{
				Name: "C-1", Refrigerant: of.refrigerant, Kind: work.Disposable,
				Before: quantity.Kilograms(12), After: quantity.Kilograms(12 - added),
			}}
			o.After = read(random, known[kind][left][weather], weathers[weather], who)
		}
		out = append(out, o)
	}
	return out
}

func abs(n int) int { return max(n, -n) }

func drawFault(random *rand.Rand, leaks bool) int {
	if leaks && random.IntN(4) == 0 {
		return low
	}
	at := random.IntN(1000)
	for i, f := range faults {
		if at -= f.share; at < 0 {
			return i
		}
	}
	return sound
}

// read takes the readings of a machine, with the errors of ordinary instruments.
func read(random *rand.Rand, o cycle.Operating, outdoor float64, who string) *satline.Visit {
	gauge := func(p quantity.Pressure, off float64) satline.Reading[quantity.GaugePressure] {
		psi := p.PSIA() - quantity.StandardAtmosphere.PSIA() + off + 0.6*random.NormFloat64()
		return satline.Measured(quantity.PSIG(float64(int(10*psi)) / 10))
	}
	degrees := func(t float64, off float64) satline.Reading[quantity.Temperature] {
		tenths := int(10 * (t + off*random.NormFloat64()))
		return satline.Measured(quantity.Fahrenheit(float64(tenths) / 10))
	}
	off := 0.0
	if who == wrongGauge {
		off = 12
	}
	return &satline.Visit{Readings: satline.Readings{
		SuctionPressure: gauge(o.Suction.Pressure, off),
		LiquidPressure:  gauge(o.Liquid.Pressure, 0),
		SuctionLine:     degrees(o.Suction.Temperature.Fahrenheit(), 0.9),
		LiquidLine:      degrees(o.Liquid.Temperature.Fahrenheit(), 0.9),
		DischargeLine:   degrees(o.Discharge.Temperature.Fahrenheit(), 0.9),
		OutdoorDryBulb:  degrees(outdoor, 0.6), ReturnDryBulb: degrees(75, 0.6),
		ReturnWetBulb: degrees(63, 0.6), SupplyDryBulb: degrees(o.Supply.Fahrenheit(), 0.6),
	}}
}

// A sink is one file of an archive.
type sink struct {
	write func([]byte) error
	close func() error
}

func newSink(path string, kind int) (sink, error) {
	file, err := os.Create(path + []string{".ndjson", ".ndjson.gz", ".parquet"}[kind])
	if err != nil {
		return sink{}, err
	}
	b := bufio.NewWriterSize(file, 256<<10)
	closers := []func() error{b.Flush, file.Close}
	if kind == 2 {
		rows := parquet.NewGenericWriter[parquetOrder](b, parquet.MaxRowsPerRowGroup(rowGroup))
		return sink{
			func(text []byte) error {
				_, err := rows.Write([]parquetOrder{{string(text)}})
				return err
			},
			closeAll(append([]func() error{rows.Close}, closers...)),
		}, nil
	}
	var w io.Writer = b
	if kind == 1 {
		z := gzip.NewWriter(b)
		w, closers = z, append([]func() error{z.Close}, closers...)
	}
	return sink{
		func(text []byte) error {
			_, err := w.Write(append(text, '\n'))
			return err
		},
		closeAll(closers),
	}, nil
}

func closeAll(closers []func() error) func() error {
	return func() error {
		for _, c := range closers {
			if err := c(); err != nil {
				return err
			}
		}
		return nil
	}
}
