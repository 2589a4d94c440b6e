package satline

import (
	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// withCapacity adds to what is derived the capacity by the air on both sides of the coil and
// its flow, where all of them were read.
func withCapacity(p *prepared, r *Readings, d Derived) Derived {
	if r.Airflow == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil ||
		r.SupplyDryBulb == nil || r.SupplyWetBulb == nil {
		return d
	}
	c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return:     airside.AirReading{DryBulb: *r.ReturnDryBulb, WetBulb: *r.ReturnWetBulb},
		Supply:     airside.AirReading{DryBulb: *r.SupplyDryBulb, WetBulb: *r.SupplyWetBulb},
		Airflow:    *r.Airflow,
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
	if r.Power != nil {
		if e, err := airside.EfficiencyOf(c.Total, *r.Power); err == nil {
			d.Efficiency = &e
		}
	}
	return d
}
