package diagnose

// statesOf puts the states of a component into room.
func (c *caseFile) statesOf(p component, room *[2]*state) []*state {
	states := room[:0]
	if p.a != none {
		states = append(states, &c.states[p.a][p.sa])
	}
	if p.b != none {
		states = append(states, &c.states[p.b][p.sb])
	}
	return states
}

// follow is how the features follow the machine's own offset under states, before any pull:
// 1 plus the gains. Where no state has one they are bare and follow it one for one.
func follow(states []*state) (m matrix, bare bool) {
	for f := range m {
		m[f][f] = 1
	}
	bare = true
	for _, s := range states {
		if s.gain == nil {
			continue
		}
		bare = false
		for f := range m {
			for g := range m[f] {
				m[f][g] += s.gain[f][g]
			}
		}
	}
	return m, bare
}

// predict returns the mean and covariance of the features, instruments
// included, under a component. Only features marked in want are filled in.
func (c *caseFile) predict(
	p component, want *[features]bool, noise *matrix,
) (mean vector, cov matrix) {
	var room [2]*state
	states := c.statesOf(p, &room)
	mean = c.machine.mean
	for _, s := range states {
		for f := range features {
			mean[f] += s.shift[f]
		}
	}
	c.machine.follow(states, want, &mean, &cov)
	for f := range features {
		if !want[f] {
			continue
		}
		for _, s := range states {
			cov[f][f] += s.doubt[f]
			for g := range f + 1 {
				cov[f][g] += s.left(f, g)
			}
		}
	}
	for f := range features {
		for g := range f {
			cov[g][f] = cov[f][g]
		}
	}
	for _, s := range states {
		if s.pull != nil {
			s.pull.act(&mean, &cov)
		}
	}
	for f := range features {
		for g := range features {
			cov[f][g] += noise[f][g]
		}
	}
	return mean, cov
}

// follow adds the machine's own offset to a mean, and its scatter to the lower triangle of
// a covariance, as they come through under states.
func (m *machine) follow(states []*state, want *[features]bool, mean *vector, cov *matrix) {
	through, bare := follow(states)
	for f := range features {
		switch {
		case !want[f]:
		case bare:
			mean[f] += m.offset[f]
			copy(cov[f][:f+1], m.scatter[f][:f+1])
		default:
			mean[f] += dot(&through[f], &m.offset)
			half := m.scattered(&through[f])
			for g := range f + 1 {
				if want[g] {
					cov[f][g] = dot(&half, &through[g])
				}
			}
		}
	}
}

// scattered is the covariance of a sum of the machine's own offsets, so weighted, with each.
func (m *machine) scattered(weights *vector) (with vector) {
	for g := range with {
		with[g] = dot(weights, &m.scatter[g])
	}
	return with
}
