package vle

// BubbleT is the bubble point at a temperature: the saturated liquid and the
// first vapor. For a pure fluid it is the same as DewT.
func (s *System) BubbleT(t float64) (Point, error) {
	if s.pure() {
		return s.pureT(t)
	}
	return s.blendT(t, true)
}

// DewT is the dew point at a temperature: the saturated vapor and the first
// liquid.
func (s *System) DewT(t float64) (Point, error) {
	if s.pure() {
		return s.pureT(t)
	}
	return s.blendT(t, false)
}

// BubbleP is the bubble point at a pressure.
func (s *System) BubbleP(p float64) (Point, error) {
	if s.pure() {
		return s.pureP(p)
	}
	return s.blendP(p, true)
}

// DewP is the dew point at a pressure.
func (s *System) DewP(p float64) (Point, error) {
	if s.pure() {
		return s.pureP(p)
	}
	return s.blendP(p, false)
}
