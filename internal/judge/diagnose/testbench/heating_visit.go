package testbench

import (
	"errors"
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A HeatingVisit is a technician with instruments at a heat pump that heats.
type HeatingVisit struct {
	Evidence diagnose.Evidence
	// Truth is what is wrong: a cause and the fault that makes it, "sound" where nothing is.
	Cause, Fault string
	// Second and SecondFault are those of a pair; empty without.
	Second, SecondFault string
	// Loss is the larger of the fractions of capacity and of efficiency that it costs; it is 1
	// where the machine is sound and a reading is wrong.
	Loss float64
	// Size of the fault, as a share.
	Size float64

	pump     *HeatPump
	inner    *Visit // of the instruments
	humidity float64
	// sound and right are the machine as it was built, strips the K that auxiliary heat adds, port
	// says that the suction hose sits on a line that is hot.
	sound  ailments
	right  float64
	strips float64
	port   bool
	sizeB  float64 // of the second fault
}

// A heatingFault is one way in which a heat pump is found wrong in winter. Shares and sizes are
// common practice, no source.
type heatingFault struct {
	cause, fault string
	share        float64
	low, high    float64
	fits         func(*HeatPump, Weather) bool
	apply        func(rng *rand.Rand, h *HeatPump, size float64)
}

func frosty(_ *HeatPump, w Weather) bool { return w.Outdoor < quantity.Fahrenheit(42) }

var heatingFaults = []heatingFault{
	{"undercharge", "undercharge", 0.24, 0.08, 0.45, nil, lessCharge},
	{"overcharge", "overcharge", 0.08, 0.08, 0.4, nil, moreCharge},
	{"low-indoor-airflow", "filter", 0.12, 0.15, 0.6, nil, lessHeatedAir},
	{"low-indoor-airflow", "blower", 0.04, 0.15, 0.5, nil, lessHeatedAir},
	{"low-indoor-airflow", "ducts", 0.05, 0.15, 0.5, nil, lessHeatedAir},
	{"low-indoor-airflow", "indoor-coil", 0.04, 0.15, 0.55, nil, fouledIndoorCoil},
	{"outdoor-air-short", "outdoor-ice", 0.08, 0.4, 0.92, frosty, icedOutdoorCoil},
	{"outdoor-air-short", "outdoor-dirt", 0.06, 0.3, 0.75, nil, dirtyOutdoorCoil},
	{"outdoor-air-short", "outdoor-fan", 0.03, 0.4, 0.92, nil, lessOutdoorAir},
	{"restriction", "outdoor-device-starving", 0.045, 0.2, 0.65, nil, starved},
	{"restriction", "liquid-line-restriction", 0.025, 0.15, 0.8, nil, restricted},
	{"restriction", "check-valve-stuck", 0.03, 0.25, 0.85, nil, restricted},
	{"overfeed", "check-valve-leaking", 0.025, 0.2, 0.9, nil, passesMore},
	{"overfeed", "outdoor-device-large", 0.025, 0.2, 0.9, nil, passesMore},
	{"reversing-valve", "reversing-valve-leak", 0.03, 0.08, 0.45, nil, leaksAcross},
	{"vapor-leak", "compressor-valves", 0.03, 0.08, 0.5, nil, leaksAcross},
	{"non-condensables", "non-condensables", 0.02, 0.5, 3, nil, gasInCircuit},
	{"auxiliary-heat", "strips-on", 0.05, 1.5, 5, nil, nil}, // kW per ton, 5 to 15 kW
}

func lessCharge(_ *rand.Rand, h *HeatPump, size float64) { h.charge *= 1 - size }

func moreCharge(_ *rand.Rand, h *HeatPump, size float64) { h.charge *= 1 + size }

func restricted(_ *rand.Rand, h *HeatPump, size float64) { h.ails.restriction += size }

func leaksAcross(_ *rand.Rand, h *HeatPump, size float64) { h.ails.leak += size }

func fouledIndoorCoil(_ *rand.Rand, h *HeatPump, size float64) {
	h.ails.indoorAir *= 1 - size
	h.ails.indoorFoul *= 1 - 0.3*size
}

func icedOutdoorCoil(_ *rand.Rand, h *HeatPump, size float64) {
	h.ails.outdoorAir *= 1 - size
	h.ails.outdoorFoul *= 1 - 0.45*size
}

func dirtyOutdoorCoil(_ *rand.Rand, h *HeatPump, size float64) {
	h.ails.outdoorAir *= 1 - size
	h.ails.outdoorFoul *= 1 - 0.35*size
}

func lessOutdoorAir(_ *rand.Rand, h *HeatPump, size float64) {
	h.ails.outdoorAir *= 1 - size
}

func starved(_ *rand.Rand, h *HeatPump, size float64) {
	if h.outdoorDevice.kind.Fixed() {
		h.ails.feed.area *= 1 - size
		return
	}
	h.ails.feed.area *= (1 - size) / h.outdoorDevice.most
}

func gasInCircuit(_ *rand.Rand, h *HeatPump, size float64) {
	h.ails.gas += size * openCircuit * float64(h.Nominal) / watts
}

func lessHeatedAir(_ *rand.Rand, h *HeatPump, size float64) { h.ails.indoorAir *= 1 - size }

// passesMore is liquid that goes by the device, or a device that passes too much.
func passesMore(_ *rand.Rand, h *HeatPump, size float64) {
	if h.outdoorDevice.kind.Fixed() {
		h.ails.feed.area *= 1 + size
		return
	}
	h.ails.feed.stick, h.ails.feed.stuck = 1, 1+0.6*size
}

// Instruments that lie in winter.
var heatingLies = []lie{
	{diagnose.SuctionClamp, 0.25, 0.3, 0.95, false, toward(suctionLine, outdoorDryBulb)},
	{diagnose.LiquidClamp, 0.25, 0.2, 0.8, false, toward(liquidLine, outdoorDryBulb)},
	{diagnose.SuctionGauge, 0.12, 6, 14, true, off(suctionPressure, psi)},
	{diagnose.LiquidGauge, 0.1, 15, 40, true, off(liquidPressure, psi)},
	{diagnose.SupplySensor, 0.2, -12, -4, false, off(supplyDryBulb, degreeF)},
	{"suction-port", 0.15, 0, 0, false, nil},
	{diagnose.OtherRefrigerant, 0.05, 0, 0, false, func(*[readable]float64, float64) {}},
}

// DrawHeatingVisit makes a visit: sound in 35 %, an instrument that lies in 10 %, else one
// fault.
func DrawHeatingVisit(rng *rand.Rand) (*HeatingVisit, error) {
	u, pick := rng.Float64(), rng.Float64()
	for range 80 {
		v, err := tryHeatingVisit(rng, u, pick)
		if err == nil {
			return v, nil
		}
		if !errors.Is(err, ErrNoOperation) && !errors.Is(err, errDesign) {
			return nil, err
		}
	}
	return nil, ErrNoOperation
}

// heatingPairs are the faults that are drawn two at a time.
var heatingPairs = [...][2]string{
	{"undercharge", "outdoor-ice"}, {"undercharge", "outdoor-dirt"}, {"undercharge", "filter"},
	{"overcharge", "filter"}, {"overcharge", "outdoor-dirt"}, {"outdoor-dirt", "filter"},
}

// DrawHeatingPair makes a visit to a machine with two faults, each of which costs at least a
// twentieth of its capacity or its efficiency by itself.
func DrawHeatingPair(rng *rand.Rand) (*HeatingVisit, error) {
	pair := heatingPairs[rng.IntN(len(heatingPairs))]
	for range 200 {
		v, err := tryHeatingPair(rng, pair)
		if err == nil {
			return v, nil
		}
		if !errors.Is(err, ErrNoOperation) && !errors.Is(err, errDesign) {
			return nil, err
		}
	}
	return nil, ErrNoOperation
}

func tryHeatingPair(rng *rand.Rand, pair [2]string) (*HeatingVisit, error) {
	const shows = 0.05
	h, w, humidity, err := heatingAsFound(rng)
	if err != nil {
		return nil, err
	}
	v := &HeatingVisit{}
	k := newKit(rng)
	sound, charge := h.ails, h.charge
	was, err := h.heat(w, humidity, sound, charge)
	if err != nil {
		return nil, err
	}
	var with [2]*heatingFault
	var size [2]float64
	for i, code := range pair {
		for j := range heatingFaults {
			if heatingFaults[j].fault == code {
				with[i] = &heatingFaults[j]
			}
		}
		f := with[i]
		if f.fits != nil && !f.fits(h, w) {
			return nil, errDesign
		}
		size[i] = uniform(rng, f.low, f.high)
		f.apply(rng, h, size[i])
		o, err := h.Heat(w, humidity)
		if err != nil {
			return nil, err
		}
		if lossOf(o, was) < shows {
			return nil, errDesign
		}
		h.ails, h.charge = sound, charge
	}
	for i, f := range with {
		f.apply(rng, h, size[i])
	}
	o, err := h.Heat(w, humidity)
	if err != nil {
		return nil, err
	}
	v.Cause, v.Fault, v.Size = with[0].cause, with[0].fault, size[0]
	v.Second, v.SecondFault = with[1].cause, with[1].fault
	v.Loss = lossOf(o, was)
	v.sound, v.right, v.humidity, v.sizeB = sound, charge, humidity, size[1]
	v.write(rng, h, w, o, &k)
	return v, nil
}

// lossOf is the larger of the parts of capacity and of efficiency that are lost.
func lossOf(o, was *Operation) float64 {
	part := float64(o.Capacity / was.Capacity)
	return max(1-part, 1-part*float64(was.Power/o.Power))
}

// heatingAsFound is a heat pump in some weather: nearly right charged, not quite clean,
// somewhere between two defrosts.
func heatingAsFound(rng *rand.Rand) (h *HeatPump, w Weather, humidity float64, err error) {
	if h, err = DrawHeatPump(rng); err != nil {
		return nil, w, 0, err
	}
	outdoor := clamp(35+13*rng.NormFloat64(), 0, 64)
	room := clamp(69.5+2.5*rng.NormFloat64(), 60, 78)
	w = Weather{
		Outdoor: quantity.Fahrenheit(outdoor), ReturnDryBulb: quantity.Fahrenheit(room),
		ReturnWetBulb: quantity.Fahrenheit(room - 14),
		Atmosphere: quantity.AtmosphereAt(
			quantity.Feet(uniform(rng, 0, 5000) * float64(rng.IntN(2)))),
	}
	humidity = uniform(rng, 0.5, 0.95)
	h.charge *= 1 + 0.015*clamp(rng.NormFloat64(), -2, 2)
	h.ails.indoorAir *= 1 + 0.04*clamp(rng.NormFloat64(), -2, 2)
	h.ails.outdoorAir *= uniform(rng, 0.85, 1.02)
	if outdoor < 42 && outdoor > 12 {
		h.ails.outdoorAir *= 1 - uniform(rng, 0, 0.3)
	}
	return h, w, humidity, nil
}

func tryHeatingVisit(rng *rand.Rand, u, pick float64) (*HeatingVisit, error) {
	h, w, humidity, err := heatingAsFound(rng)
	if err != nil {
		return nil, err
	}
	v := &HeatingVisit{Cause: "sound", Fault: "sound"}
	k := newKit(rng)
	soundly := h.ails
	soundCharge := h.charge
	strips, port := 0.0, false
	switch {
	case u < 0.1:
		v.Loss = 1
		at := pick
		for i := range heatingLies {
			l := &heatingLies[i]
			if at -= l.share; at < 0 || i == len(heatingLies)-1 {
				v.Cause = string(l.signature)
				k.size = uniform(rng, l.low, l.high)
				if l.either && rng.IntN(2) == 0 {
					k.size = -k.size
				}
				if port = l.apply == nil; !port {
					k.lie = l
				}
				break
			}
		}
		v.Fault = v.Cause
	case u < 0.65:
		f := pickHeatingFault(h, w, pick)
		v.Cause, v.Fault, v.Size = f.cause, f.fault, uniform(rng, f.low, f.high)
		if f.apply == nil {
			v.Loss = 1
			blown := h.airflow * h.ails.indoorAir * 1200
			strips = 1000 * v.Size * float64(h.Nominal) / watts / blown
		} else {
			f.apply(rng, h, v.Size)
		}
	}
	o, err := h.Heat(w, humidity)
	if err != nil {
		return nil, err
	}
	// No maker lets a sound machine flood its compressor so.
	was, err := h.heat(w, humidity, soundly, soundCharge)
	if err != nil {
		return nil, err
	}
	if was.DischargeLine.Sub(was.Condensing) < quantity.FahrenheitDelta(25) {
		return nil, errDesign
	}
	if v.Loss == 0 && v.Cause != "sound" {
		v.Loss = lossOf(o, was)
	}
	v.sound, v.right, v.humidity, v.strips, v.port = soundly, soundCharge, humidity, strips, port
	v.write(rng, h, w, o, &k)
	return v, nil
}

func pickHeatingFault(h *HeatPump, w Weather, u float64) *heatingFault {
	sum := 0.0
	for i := range heatingFaults {
		if f := &heatingFaults[i]; f.fits == nil || f.fits(h, w) {
			sum += f.share
		}
	}
	u *= sum
	last := &heatingFaults[0]
	for i := range heatingFaults {
		f := &heatingFaults[i]
		if f.fits != nil && !f.fits(h, w) {
			continue
		}
		last = f
		if u -= f.share; u < 0 {
			break
		}
	}
	return last
}

// write notes what the technician would.
func (v *HeatingVisit) write(
	rng *rand.Rand, h *HeatPump, w Weather, o *Operation, k *kit,
) {
	inner := &Visit{Machine: h.Machine, Weather: w, kit: *k}
	v.pump, v.inner = h, inner
	for i := range inner.taken {
		inner.taken[i] = true
	}
	for _, c := range []struct {
		reading int
		chance  float64
	}{{dischargeLine, 0.5}, {condenserLeaving, 0.2}, {airflow, 0.3}, {power, 0.3}} {
		inner.taken[c.reading] = rng.Float64() < c.chance
	}
	inner.taken[supplyWetBulb], inner.taken[returnWetBulb] = false, false
	e := &inner.Evidence
	e.Metering, e.HeatPump, e.NominalCapacity = h.Machine.device.kind, true, h.Nominal
	e.Charge = h.LabelCharge
	gauges := h.fluid.refrigerant
	if inner.lies() == diagnose.OtherRefrigerant {
		others := named[h.Designation()]
		if r, err := refrigerant.Lookup(others[rng.IntN(len(others))]); err == nil {
			gauges = r
		}
	}
	e.Fluid, e.Others = gauges, diagnose.Alternatives(gauges)
	e.Atmosphere = w.Atmosphere
	e.Input.Atmosphere = w.Atmosphere
	e.Input.Heating = true
	v.take(rng, o)
	has := func(fault string) bool { return v.Fault == fault || v.SecondFault == fault }
	flag := func(there bool, hit, usual float64) bool {
		if there {
			return rng.Float64() < hit
		}
		return rng.Float64() < usual
	}
	e.Seen.FilterDirty = flag(has("filter"), 0.55, 0.07)
	e.Seen.OutdoorCoilDirty = flag(has("outdoor-dirt"), 0.5, 0.07)
	e.Seen.OilStains = flag(has("undercharge"), 0.28, 0.03)
	e.Seen.CoilIced = flag(has("outdoor-ice"), 0.75, 0.02)
	v.Evidence = *e
}

// take notes what the instruments show of an operation.
func (v *HeatingVisit) take(rng *rand.Rand, o *Operation) {
	k := &v.inner.kit
	r := k.read(rng, o, v.inner.Weather)
	if v.Fault == "reversing-valve-leak" { // the hot gas joins before the clamp
		r[suctionLine] += v.Size * 0.9 * (float64(o.DischargeLine) - float64(o.SuctionLine))
	}
	r[supplyDryBulb] += v.strips
	if v.strips > 0 && rng.IntN(2) == 0 {
		r[power] += v.strips * r[airflow] * 1200 // where the clamp was round both feeds
	}
	if v.port {
		r[suctionPressure] = r[liquidPressure] + psi*uniform(rng, -4, 10)
	}
	v.inner.note(r)
}

// Again reads the machine anew once it has settled.
func (v *HeatingVisit) Again(rng *rand.Rand) error {
	o, err := v.pump.Heat(v.inner.Weather, v.humidity)
	if err != nil {
		return err
	}
	v.take(rng, o)
	v.Evidence = v.inner.Evidence
	return nil
}

// Read takes a reading more, named as in a visit; false where it was taken, or is none.
func (v *HeatingVisit) Read(rng *rand.Rand, field string) bool {
	i, ok := map[string]int{
		"dischargeLine": dischargeLine, "condenserLeaving": condenserLeaving,
		"airflow": airflow, "power": power,
	}[field]
	if !ok || v.inner.taken[i] {
		return false
	}
	v.inner.taken[i] = true
	return v.Again(rng) == nil
}

// Mend puts a cause right; false where the visit has no such cause. What else is wrong stays.
func (v *HeatingVisit) Mend(cause string) bool {
	switch cause {
	case v.Cause:
		v.Cause, v.Fault, v.Size = v.Second, v.SecondFault, v.sizeB
	case v.Second:
	default:
		return false
	}
	v.Second, v.SecondFault = "", ""
	if v.Cause == "" {
		v.Cause, v.Fault = "sound", "sound"
	}
	off := v.ChargeError()
	v.pump.ails, v.pump.charge = v.sound, v.right
	for i := range heatingFaults {
		if f := &heatingFaults[i]; f.fault == v.Fault && f.apply != nil {
			f.apply(nil, v.pump, v.Size)
		}
	}
	if cause != "undercharge" && cause != "overcharge" {
		v.pump.charge = v.right * (1 + off)
	}
	v.inner.kit.lie, v.strips, v.port = nil, 0, false
	e := &v.inner.Evidence
	e.Fluid, e.Others = v.pump.fluid.refrigerant, diagnose.Alternatives(v.pump.fluid.refrigerant)
	return true
}

// ChargeError is by what share of the right charge the machine holds too much.
func (v *HeatingVisit) ChargeError() float64 { return v.pump.charge/v.right - 1 }

// Look returns what a look says of the truth: yes or no, with other chances than the
// judge has. Common practice, no source.
func (v *HeatingVisit) Look(rng *rand.Rand, code string) bool {
	p := falseLook
	for _, fault := range []string{v.Fault, v.SecondFault} {
		p = max(p, heatingLooks[code][fault])
	}
	return rng.Float64() < p
}

var heatingLooks = map[string]map[string]float64{
	"outdoor-ice":          {"outdoor-ice": 0.94},
	"outdoor-coil":         {"outdoor-dirt": 0.9, "outdoor-fan": 0.87},
	"defrost-test":         {"outdoor-ice": 0.8},
	"strips-current":       {"strips-on": 0.95},
	"reversing-valve":      {"reversing-valve-leak": 0.9},
	"pressures-at-stop":    {"compressor-valves": 0.75, "reversing-valve-leak": 0.7},
	"liquid-line-drop":     {"liquid-line-restriction": 0.85, "check-valve-stuck": 0.8},
	"check-valves":         {"check-valve-leaking": 0.8},
	"valve-bulb":           {"outdoor-device-starving": 0.5, "outdoor-device-large": 0.5},
	"indoor-air-path":      {"filter": 0.95, "indoor-coil": 0.8, "ducts": 0.8, "blower": 0.5},
	"static-pressure":      {"filter": 0.75, "indoor-coil": 0.45, "ducts": 0.85},
	"suction-port":         {"suction-port": 0.97},
	"suction-clamp-second": {"suction-clamp": 0.93},
	"liquid-clamp-second":  {"liquid-clamp": 0.93},
	"gauge-zero":           {"suction-gauge-zero": 0.95, "liquid-gauge-zero": 0.95},
	"supply-second":        {"supply-sensor": 0.93},
	"refrigerant-label":    {"other-refrigerant": 0.95},
	"standing-pressure":    {"non-condensables": 0.9},
	"oil-and-leak":         {"undercharge": 0.6},
}

// WeighIn leaves the right charge in an evacuated circuit, without the gas that was in it.
func (v *HeatingVisit) WeighIn() {
	for _, cause := range []string{"undercharge", "overcharge", "non-condensables"} {
		v.Mend(cause)
	}
	v.pump.charge = v.right
}
