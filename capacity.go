package satline

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// withCapacity adds to what is derived the capacity by the air on both sides of the coil and
// its flow, where all of them were read.
func withCapacity(p *prepared, r *Readings, d Derived) Derived {
	if !r.Airflow.taken || !r.ReturnDryBulb.taken || !r.ReturnWetBulb.taken ||
		!r.SupplyDryBulb.taken || !r.SupplyWetBulb.taken {
		return d
	}
	c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return:     airside.AirReading{DryBulb: r.ReturnDryBulb.of, WetBulb: r.ReturnWetBulb.of},
		Supply:     airside.AirReading{DryBulb: r.SupplyDryBulb.of, WetBulb: r.SupplyWetBulb.of},
		Airflow:    r.Airflow.of,
		Atmosphere: p.atmosphere.Pressure,
	})
	if err != nil {
		return d // the readings contradict each other, and a doubt says so
	}
	d.TotalCapacity, d.SensibleCapacity, d.LatentCapacity = &c.Total, &c.Sensible, &c.Latent
	d.Condensate = &c.Condensate
	if c.SensibleHeatRatio != 0 {
		d.SensibleHeatRatio = &quantity.UncertainNumber{Value: c.SensibleHeatRatio,
			Std: c.SensibleHeatRatioStd}
	}
	if r.Power.taken {
		if e, err := airside.EfficiencyOf(c.Total, r.Power.of); err == nil {
			d.Efficiency = &e
		}
	}
	return d
}
