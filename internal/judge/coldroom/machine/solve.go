package machine

import "math"

// Unknowns are the logarithms of the pressures in the coils and the enthalpy at the end of
// the evaporator.
type Unknowns [3]float64

type residuals [3]float64

func (r residuals) norm() float64 { return math.Sqrt(r[0]*r[0] + r[1]*r[1] + r[2]*r[2]) }

// Run solves the machine in a weather with something wrong. Where the solver finds no way there
// from a guess it is led: the weather changes from that of the design day in steps.
func (s *Machine) Run(w Weather, x Failing, from *Unknowns) (State, Unknowns) {
	st, u := s.solve(w, x, from)
	if st.Converged || from != nil {
		return st, u
	}
	const steps = 8
	start := Weather{s.Box, s.DesignDay}
	var led *Unknowns
	for i := range steps + 1 {
		part := float64(i) / steps
		at := Weather{
			start.Box + part*(w.Box-start.Box), start.Outdoor + part*(w.Outdoor-start.Outdoor),
		}
		st, u = s.solve(at, x, led)
		led = &u
	}
	return st, u
}

func (s *Machine) guess(w Weather, x Failing) Unknowns {
	low := s.f.At(s.f.DewPressure(w.Box - 1.1*s.Difference))
	c := w.Outdoor + s.OverOutdoor
	if !x.NoFloor {
		c = max(c, s.Floor+x.Floor)
	}
	return Unknowns{
		math.Log(low.P), math.Log(middlePressure(s.f, c)), low.VaporAt(low.Dew.T + s.Bulb).H,
	}
}

// solve is Run from one start: for the two pressures and the enthalpy at the end of the coil, by
// Newton's method with differences.
func (s *Machine) solve(w Weather, x Failing, from *Unknowns) (State, Unknowns) {
	u := Unknowns{}
	if from != nil {
		u = *from
	} else {
		u = s.guess(w, x)
	}
	var st State
	r := s.balance(&u, w, x, &st)
	var j [3]residuals
	fresh := false
	for range 40 {
		n := r.norm()
		if n < 1e-4 {
			break
		}
		if !fresh {
			j, fresh = s.slopes(u, r, w, x), true
		}
		d, ok := solve3(j, r)
		if !ok {
			break
		}
		scale := 1.0
		for i, most := range (Unknowns{0.35, 0.25, 12000}) {
			if a := math.Abs(d[i]); a*scale > most {
				scale = most / a
			}
		}
		better := false
		for range 8 {
			v := u
			for i := range v {
				v[i] -= scale * d[i]
			}
			var sv State
			rv := s.balance(&v, w, x, &sv)
			if m := rv.norm(); m < n {
				j = learnt(j, u, v, r, rv)
				u, r, st, better, fresh = v, rv, sv, true, m < 0.4*n
				break
			}
			scale *= 0.4
		}
		if !better {
			break
		}
	}
	const near = 0.015 // of the design day: where a corner of the model holds the last steps up
	st.Converged = r.norm() < near
	return st, u
}

// slopes are the residuals by each unknown, by differences.
func (s *Machine) slopes(u Unknowns, r residuals, w Weather, x Failing) (j [3]residuals) {
	step := Unknowns{1e-5, 1e-5, 20}
	for i := range u {
		v := u
		v[i] += step[i]
		rv := s.balance(&v, w, x, &State{})
		for k := range rv {
			j[i][k] = (rv[k] - r[k]) / step[i]
		}
	}
	return j
}

// learnt is a matrix of slopes after a step, by Broyden's first update, in the units in which
// the Unknowns are of one size.
func learnt(j [3]residuals, u, v Unknowns, r, rv residuals) [3]residuals {
	size := Unknowns{1, 1, 30000}
	var d Unknowns
	whole := 0.0
	for i := range d {
		d[i] = (v[i] - u[i]) / size[i]
		whole += d[i] * d[i]
	}
	for k := range r {
		miss := rv[k] - r[k]
		for i := range d {
			miss -= j[i][k] * d[i] * size[i]
		}
		for i := range d {
			j[i][k] += miss * d[i] / whole / size[i]
		}
	}
	return j
}

func solve3(j [3]residuals, r residuals) (Unknowns, bool) {
	a := [3][4]float64{}
	for i := range 3 {
		for k := range 3 {
			a[k][i] = j[i][k]
		}
	}
	for k := range 3 {
		a[k][3] = r[k]
	}
	for c := range 3 {
		p := c
		for k := c + 1; k < 3; k++ {
			if math.Abs(a[k][c]) > math.Abs(a[p][c]) {
				p = k
			}
		}
		if math.Abs(a[p][c]) < 1e-12 {
			return Unknowns{}, false
		}
		a[c], a[p] = a[p], a[c]
		for k := range 3 {
			if k == c {
				continue
			}
			q := a[k][c] / a[c][c]
			for i := c; i < 4; i++ {
				a[k][i] -= q * a[c][i]
			}
		}
	}
	return Unknowns{a[0][3] / a[0][0], a[1][3] / a[1][1], a[2][3] / a[2][2]}, true
}
