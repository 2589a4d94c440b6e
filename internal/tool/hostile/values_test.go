package hostile

import (
	"bytes"
	"io"
	"math"
	"reflect"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// hostile are numbers that nobody should give.
var hostile = []float64{
	0, math.Copysign(0, -1), 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64,
	-math.MaxFloat64, math.SmallestNonzeroFloat64, 1e300, 1e-300, 1e18, -1e18, 1e-12,
}

// usual are the ranges in which values of a quantity are met.
var usual = map[reflect.Type][2]float64{
	reflect.TypeFor[quantity.Temperature]():      {255, 345},
	reflect.TypeFor[quantity.TemperatureDelta](): {0, 25},
	reflect.TypeFor[quantity.Pressure]():         {95e3, 3e6},
	reflect.TypeFor[quantity.GaugePressure]():    {2e5, 3e6},
	reflect.TypeFor[quantity.StaticPressure]():   {5, 300},
	reflect.TypeFor[quantity.Mass]():             {0.1, 30},
	reflect.TypeFor[quantity.MassFlow]():         {1e-3, 1},
	reflect.TypeFor[quantity.VolumeFlow]():       {0.1, 1},
	reflect.TypeFor[quantity.Power]():            {500, 2e4},
	reflect.TypeFor[quantity.SpecificEnthalpy](): {2e4, 4.5e5},
	reflect.TypeFor[quantity.SpecificEntropy]():  {900, 1900},
	reflect.TypeFor[quantity.Density]():          {1, 1300},
	reflect.TypeFor[quantity.Velocity]():         {0.5, 8},
	reflect.TypeFor[quantity.Area]():             {0.05, 1},
	reflect.TypeFor[quantity.Length]():           {0.005, 30},
	reflect.TypeFor[quantity.Volume]():           {0.005, 0.1},
}

// readers make readings of a visit, which nothing else can make one that was taken.
var readers = map[reflect.Type]any{}

func reader[T quantity.Quantity]() {
	readers[reflect.TypeFor[satline.Reading[T]]()] = satline.ReadingOf[T]
}

func init() {
	reader[quantity.Temperature]()
	reader[quantity.GaugePressure]()
	reader[quantity.StaticPressure]()
	reader[quantity.VolumeFlow]()
	reader[quantity.Power]()
	reader[quantity.Current]()
}

// seed puts values into the pool that much else needs.
func (c *caller) seed() {
	put := func(v any) {
		c.pool[reflect.TypeOf(v)] = append(c.pool[reflect.TypeOf(v)], reflect.ValueOf(v))
	}
	for _, name := range []string{"R-22", "R-410A", "R-454B", "R-744", "R-718"} {
		r, err := refrigerant.Lookup(name)
		if err != nil {
			c.t.Fatal(err)
		}
		put(r)
		for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
			if s, err := cycle.DesignResidential(r, quantity.Tons(3), m); err == nil {
				put(s)
			}
		}
	}
	for _, rh := range []float64{0.2, 0.5, 0.9} {
		a, err := psychro.FromRelativeHumidity(
			quantity.Fahrenheit(75), rh, quantity.StandardAtmosphere,
		)
		if err != nil {
			c.t.Fatal(err)
		}
		put(a)
	}
	put(cycle.RatingConditions())
}

// value draws one of a type: in half of all draws a good one where there is one, in the
// others anything.
func (c *caller) value(typ reflect.Type, depth int) reflect.Value {
	if good := c.pool[typ]; len(good) > 0 && c.rand.IntN(3) > 0 {
		return good[c.rand.IntN(len(good))]
	}
	v := reflect.New(typ).Elem()
	if depth > 5 {
		return v
	}
	if read, ok := readers[typ]; ok && c.rand.IntN(4) > 0 {
		of := reflect.TypeOf(read).In(0)
		return reflect.ValueOf(read).Call([]reflect.Value{c.value(of, depth+1)})[0]
	}
	switch typ.Kind() {
	case reflect.Float64, reflect.Float32:
		v.SetFloat(c.number(typ))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		v.SetInt(c.integer(typ))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint(uint64(c.rand.IntN(5)))
	case reflect.Bool:
		v.SetBool(c.rand.IntN(2) == 0)
	case reflect.String:
		v.SetString(c.text())
	case reflect.Struct:
		c.fill(v, depth)
	case reflect.Pointer:
		if c.rand.IntN(4) > 0 {
			v.Set(reflect.New(typ.Elem()))
			v.Elem().Set(c.value(typ.Elem(), depth+1))
		}
	case reflect.Slice:
		for range c.rand.IntN(5) {
			v = reflect.Append(v, c.value(typ.Elem(), depth+1))
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(c.value(typ.Elem(), depth+1))
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(typ))
		for range c.rand.IntN(3) {
			v.SetMapIndex(c.value(typ.Key(), depth+1), c.value(typ.Elem(), depth+1))
		}
	case reflect.Func:
		v.Set(reflect.MakeFunc(typ, func([]reflect.Value) []reflect.Value {
			var out []reflect.Value
			for i := range typ.NumOut() {
				out = append(out, c.value(typ.Out(i), depth+1))
			}
			return out
		}))
	case reflect.Interface:
		c.implement(v)
	}
	return v
}

// fill sets the fields that others can set, all of them, or a few.
func (c *caller) fill(v reflect.Value, depth int) {
	all := c.rand.IntN(2) == 0
	for i := range v.NumField() {
		if v.Type().Field(i).IsExported() && (all || c.rand.IntN(2) == 0) {
			v.Field(i).Set(c.value(v.Field(i).Type(), depth+1))
		}
	}
}

func (c *caller) number(typ reflect.Type) float64 {
	if c.rand.IntN(3) == 0 {
		return hostile[c.rand.IntN(len(hostile))]
	}
	if in, ok := usual[typ]; ok {
		return in[0] + (in[1]-in[0])*c.rand.Float64()
	}
	return c.rand.Float64()
}

func (c *caller) integer(typ reflect.Type) int64 {
	if typ == reflect.TypeFor[time.Duration]() {
		return []int64{0, -1, int64(time.Second), int64(time.Hour), math.MaxInt64,
			math.MinInt64}[c.rand.IntN(6)]
	}
	if c.rand.IntN(6) == 0 {
		return []int64{-1, 100, -1 << 7}[c.rand.IntN(3)]
	}
	return int64(c.rand.IntN(6))
}

func (c *caller) text() string {
	words := []string{
		"", "R-22", "R-32", "R-600a", "R-999", "NaN", "62 °F", "±", "\x00\xff",
		strings.Repeat("x", 300),
	}
	return words[c.rand.IntN(len(words))]
}

// implement gives an interface a value of the pool that has its methods, or none.
func (c *caller) implement(v reflect.Value) {
	for _, some := range []any{new(bytes.Buffer), io.Discard, quantity.Kelvin(math.NaN()), io.EOF} {
		if reflect.TypeOf(some).Implements(v.Type()) {
			v.Set(reflect.ValueOf(some))
			return
		}
	}
	for _, typ := range types {
		good := c.pool[typ]
		if typ.Implements(v.Type()) && len(good) > 0 && c.rand.IntN(4) > 0 {
			v.Set(good[c.rand.IntN(len(good))])
			return
		}
	}
}
