package coil

import "math"

// A Result is what becomes of the air, and the heat it gives.
type Result struct {
	T float64 // leaving dry bulb, K
	W float64 // leaving humidity ratio, kg/kg
	// Heat is what the coil takes from the air, in W, less what the condensate
	// carries away at the leaving temperature; negative where the air is heated.
	Heat float64
	// Sensible is the part of Heat that the leaving air would need to be back at
	// the entering dry bulb, W.
	Sensible   float64
	Condensate float64 // kg/s
	// Surface is the temperature of the coil's surface where the air leaves, the
	// coldest of a cooling coil; SurfaceEntering where the air enters. K.
	Surface         float64
	SurfaceEntering float64
	Wet             float64 // share of the coil that is wet, 0 to 1
}

// Through passes a flow of dry air, in kg/s, through a coil whose refrigerant is
// at a constant temperature, in K, with the conductances of the whole coil in
// W/K: air to surface and surface to refrigerant. A refrigerant warmer than the
// air heats it. Without flow or without conductance there is no heat, and the
// air leaves as it does in that limit.
func (a *Air) Through(dryAir, refrigerant, airUA, refUA float64) Result {
	const most = 1e12 // beyond any machine; keeps infinities out
	if !(a.p > 0 && airUA > 0 && refUA > 0 && refrigerant > 0) || refrigerant > most ||
		dryAir > most {
		r := Result{T: a.t, W: a.w, Surface: a.t, SurfaceEntering: a.t}
		if refUA > 0 && refrigerant > 0 {
			r.Surface, r.SurfaceEntering = refrigerant, refrigerant
		}
		return r
	}
	airUA, refUA = min(airUA, most), min(refUA, most)
	stopped := !(dryAir > 0)
	// Past this many transfer units the air is at the refrigerant's temperature
	// to the last bit, and heat goes with the flow.
	const enough = 200
	smallest := airUA / (airUA + refUA) * refUA / (a.cp * enough)
	m := max(dryAir, smallest)
	if stopped {
		m = smallest
	}

	c := coilOf(a, m, refrigerant, airUA, refUA)
	var r Result
	if dry := c.dryShare(); dry >= 1 {
		r = c.dry()
	} else {
		r = c.wet(dry)
	}
	if m != dryAir {
		flow := 0.0
		if !stopped {
			flow = dryAir
		}
		r.Heat *= flow / m
		r.Sensible *= flow / m
		r.Condensate *= flow / m
	}
	return r
}

// A pass is one passage of air through a coil.
type pass struct {
	*Air
	m, tr, airUA, refUA float64
	// surface is the share of the way from refrigerant to air at which a dry
	// surface is.
	surface float64
	// ntu counts the transfer units of the dry coil, from air to refrigerant.
	ntu float64
}

func coilOf(a *Air, m, tr, airUA, refUA float64) pass {
	surface := airUA / (airUA + refUA)
	return pass{a, m, tr, airUA, refUA, surface, surface * refUA / (m * a.cp)}
}

// dryShare returns the share of the coil, from where the air enters, whose
// surface is above the dew point: 0 where all is wet, 1 or more where none is.
func (c *pass) dryShare() float64 {
	if c.dew <= c.tr || c.tr >= c.t {
		return 1
	}
	// The air temperature at which the surface meets the dew point.
	meets := (c.dew - c.tr) / c.surface
	if meets >= c.t-c.tr {
		return 0
	}
	return math.Log((c.t-c.tr)/meets) / c.ntu
}

func (c *pass) dry() Result {
	drive := c.t - c.tr
	out := c.tr + drive*math.Exp(-c.ntu)
	heat := c.m * c.cp * (c.t - out)
	return Result{
		T: out, W: c.w, Heat: heat, Sensible: heat,
		Surface:         c.tr + c.surface*(out-c.tr),
		SurfaceEntering: c.tr + c.surface*drive,
	}
}
