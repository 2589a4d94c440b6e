package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
)

// A Port is the refrigerant at a place of the circuit where a gauge or a clamp can
// reach it.
type Port struct {
	Pressure    quantity.Pressure         `json:"pressure"`
	Temperature quantity.Temperature      `json:"temperature"`
	Enthalpy    quantity.SpecificEnthalpy `json:"enthalpy"`
	// Quality is the share of the mass that is vapor: 0 for liquid, 1 for vapor.
	Quality float64 `json:"quality"`
}

// A Limit is why a state is none that the machine runs on in: a pressure control stops
// it before, or it does not do what it is there for.
type Limit int

// The limits.
const (
	// NoLimit: the machine runs on.
	NoLimit Limit = iota
	// HighPressure: the head is above the high-pressure switch.
	HighPressure
	// LowPressure: the suction is below the low-pressure switch.
	LowPressure
	// NotCooling: the coil takes no more heat from the air than the blower gives to it,
	// so that the machine heats the house.
	NotCooling
)

var limitNames = []string{"", "none", "high pressure", "low pressure", "not cooling"}

// String returns "none", "high pressure", "low pressure" or "not cooling".
func (l Limit) String() string {
	if l < NoLimit || l > NotCooling {
		return "unknown limit"
	}
	return enum.Name(limitNames, l+1)
}

// MarshalText writes the name of String; what is none of the limits is an error.
func (l Limit) MarshalText() ([]byte, error) { return enum.TextFromZero("limit", limitNames, l) }

// UnmarshalText accepts the names that String returns.
func (l *Limit) UnmarshalText(text []byte) error {
	return enum.ParseFromZero("limit", limitNames, text, l)
}

// Operating is the steady state of a machine.
type Operating struct {
	// Ports in the order of the flow.
	Suction       Port `json:"suction"`      // at the compressor
	Discharge     Port `json:"discharge"`    // at the compressor
	Liquid        Port `json:"liquid"`       // leaving the condenser
	ValveIn       Port `json:"valveIn"`      // entering the metering device
	EvaporatorIn  Port `json:"evaporatorIn"` // after it
	EvaporatorOut Port `json:"evaporatorOut"`

	// Evaporating and Condensing are what gauges at the suction and the liquid port
	// show: dew point and bubble point.
	Evaporating quantity.Temperature `json:"evaporating"`
	Condensing  quantity.Temperature `json:"condensing"`
	// Superheat at the suction port counts from the dew point; where liquid returns it
	// is 0 and Suction.Quality below 1. EvaporatorSuperheat is that at the coil's outlet.
	Superheat           quantity.TemperatureDelta `json:"superheat"`
	EvaporatorSuperheat quantity.TemperatureDelta `json:"evaporatorSuperheat"`
	// Subcooling at the liquid port counts from the bubble point at the pressure there; 0 or
	// a little below where vapor leaves too. Approach is the liquid above the outdoor air.
	Subcooling quantity.TemperatureDelta `json:"subcooling"`
	Approach   quantity.TemperatureDelta `json:"approach"`

	Flow quantity.MassFlow `json:"flow"`
	// Capacity is what the coil takes from the air, Sensible and Latent its parts;
	// NetCapacity is less the heat of the blower.
	Capacity    quantity.Power `json:"capacity"`
	Sensible    quantity.Power `json:"sensible"`
	Latent      quantity.Power `json:"latent"`
	NetCapacity quantity.Power `json:"netCapacity"`
	// HeatRejected is what the condenser gives to the outdoor air.
	HeatRejected quantity.Power `json:"heatRejected"`
	// LineGain is what the suction line takes from its surroundings, and ShellLoss what
	// the compressor gives to them.
	LineGain        quantity.Power `json:"lineGain"`
	ShellLoss       quantity.Power `json:"shellLoss"`
	CompressorPower quantity.Power `json:"compressorPower"`
	FanPower        quantity.Power `json:"fanPower"`    // outdoor
	BlowerPower     quantity.Power `json:"blowerPower"` // indoor
	Power           quantity.Power `json:"power"`       // all three
	// COP is NetCapacity over Power; EER is that in Btu/(W·h).
	COP float64 `json:"cop"`
	EER float64 `json:"eer"`

	// CoilLeaving is the air off the coil, and Supply that after the blower.
	CoilLeaving         quantity.Temperature `json:"coilLeaving"`
	Supply              quantity.Temperature `json:"supply"`
	SupplyHumidityRatio float64              `json:"supplyHumidityRatio"` // kg per kg of dry air
	Condensate          quantity.MassFlow    `json:"condensate"`
	// CondensateTemperature is that at which the water's heat is counted.
	CondensateTemperature quantity.Temperature `json:"condensateTemperature"`
	CondenserLeaving      quantity.Temperature `json:"condenserLeaving"`
	// CoilSurface is the coldest surface of the evaporator: below 32 °F it frosts where
	// it is wet.
	CoilSurface quantity.Temperature `json:"coilSurface"`
	CoilWet     float64              `json:"coilWet"` // share of the coil, 0 to 1

	// Shares of the coils, 0 to 1.
	EvaporatorTwoPhase float64 `json:"evaporatorTwoPhase"`
	CondenserVapor     float64 `json:"condenserVapor"`
	CondenserTwoPhase  float64 `json:"condenserTwoPhase"`
	CondenserLiquid    float64 `json:"condenserLiquid"`
	// ValveOpening of an expansion valve, 0 to 1; 1 for a restrictor.
	ValveOpening float64 `json:"valveOpening"`
	// FanShare is the outdoor airflow as a share of the full one, less than 1 where the
	// head pressure is held.
	FanShare float64 `json:"fanShare"`

	// Charge is what the circuit holds in this state. Beyond the range of the model, with a
	// Limit by pressure, it is not the charge asked for.
	Charge quantity.Mass `json:"charge"`
	Limit  Limit         `json:"limit"`
}

// runs tells a state from nil and the zero Operating.
func (o *Operating) runs() bool { return o != nil && o.Suction.Pressure > 0 }

// LiquidReturns reports whether liquid reaches the compressor. In the zero Operating
// nothing does.
func (o *Operating) LiquidReturns() bool { return o.runs() && o.Suction.Quality < 1 }

// PressureRatio returns the discharge over the suction pressure, and 0 for the zero
// Operating and for pressures that are none.
func (o *Operating) PressureRatio() float64 {
	if !o.runs() {
		return 0
	}
	return finite.OrZero(float64(o.Discharge.Pressure / o.Suction.Pressure))
}

func (t *trial) operating(v outcome) Operating {
	p, c, e := &t.pump, &t.condensed, &t.evaporated
	m := t.flow
	w := m * p.work
	o := Operating{
		Suction:   port(t.suctionP, &t.gas),
		Discharge: port(t.dischargeP, &t.hot),
		EvaporatorOut: Port{
			quantity.Pressure(t.evap.P), quantity.Temperature(e.t), quantity.SpecificEnthalpy(e.h),
			min(max(e.x, 0), 1),
		},

		Evaporating:         quantity.Temperature(t.in.Dew.T),
		Superheat:           quantity.TemperatureDelta(max(t.gas.T-t.in.Dew.T, 0)),
		EvaporatorSuperheat: quantity.TemperatureDelta(max(e.t-t.evap.Dew.T, 0)),

		Flow:            quantity.MassFlow(m),
		Capacity:        quantity.Power(e.heat),
		HeatRejected:    quantity.Power(c.heat),
		LineGain:        quantity.Power(t.suctionGain),
		ShellLoss:       quantity.Power(w * t.compressor.HeatLoss),
		CompressorPower: quantity.Power(w),
		BlowerPower:     quantity.Power(t.question.blower),
		FanPower:        quantity.Power(t.question.outdoorFanW * t.fanShare),

		CoilSurface: quantity.Temperature(e.air.Surface),
		CoilWet:     e.air.Wet * e.twoPhase,

		EvaporatorTwoPhase: e.twoPhase,
		CondenserVapor:     c.vapor, CondenserTwoPhase: c.twoPhase, CondenserLiquid: c.liquid,
		ValveOpening: t.open,
		FanShare:     t.fanShare,
		Charge:       quantity.Mass(t.inCondenser + t.inLiquidLine + t.inEvaporator + t.inSuction),
	}

	var b cyclefluid.Isobar
	t.fluid.Set(&b, t.liquidP)
	o.Condensing = quantity.Temperature(b.Bubble.T)
	o.Liquid = t.portAt(&b, c.h)
	o.ValveIn = t.portAt(&t.enter, c.h)
	o.Subcooling = quantity.TemperatureDelta(b.Bubble.T - float64(o.Liquid.Temperature))
	o.Approach = quantity.TemperatureDelta(float64(o.Liquid.Temperature) - t.outdoorT)
	t.fluid.Set(&b, t.evap.P+t.evaporator.drop*m*m*t.gas.V)
	o.EvaporatorIn = t.portAt(&b, c.h)

	// Air of the two zones, mixed.
	a := &e.air
	sensible := e.twoPhase*a.Sensible + e.superheated
	cp := t.air.HeatCapacity()
	o.Sensible = quantity.Power(sensible)
	o.Latent = o.Capacity - o.Sensible
	o.Condensate = quantity.MassFlow(a.Condensate * e.twoPhase)
	o.CondensateTemperature = quantity.Temperature(a.T)
	o.SupplyHumidityRatio = t.returnW - a.Condensate*e.twoPhase/t.dryAir
	o.CoilLeaving = quantity.Temperature(
		t.returnT - sensible/(t.dryAir*(cp-vaporHeatCapacity*(t.returnW-o.SupplyHumidityRatio))),
	)
	o.Supply = o.CoilLeaving + quantity.Temperature(t.question.blower/(t.dryAir*cp))
	o.CondenserLeaving = quantity.Temperature(t.outdoorT + (c.heat+float64(o.FanPower))/c.airC)

	o.NetCapacity = o.Capacity - o.BlowerPower
	o.Power = o.CompressorPower + o.FanPower + o.BlowerPower
	o.COP = float64(o.NetCapacity / o.Power)
	o.EER = o.COP * 3600 / quantity.BTU

	switch {
	case v == atHighest || t.dischargeP > t.highCutout:
		o.Limit = HighPressure
	case v == atLowest || t.suctionP < t.lowCutout:
		o.Limit = LowPressure
	case !(o.NetCapacity > 0):
		o.Limit = NotCooling
	}
	return o
}

const vaporHeatCapacity = 1860.0 // J/(kg K), of water

func port(p float64, s *cyclefluid.State) Port {
	return Port{
		quantity.Pressure(p), quantity.Temperature(s.T), quantity.SpecificEnthalpy(s.H),
		math.Min(math.Max(s.X, 0), 1),
	}
}

// portAt is a port on b at enthalpy h, liquid included.
func (t *trial) portAt(b *cyclefluid.Isobar, h float64) Port {
	if h < b.Bubble.H {
		l := b.LiquidAtEnthalpy(h)
		return Port{
			quantity.Pressure(b.P), quantity.Temperature(l.T), quantity.SpecificEnthalpy(h), 0,
		}
	}
	s := b.AtEnthalpy(h)
	return port(b.P, &s)
}
