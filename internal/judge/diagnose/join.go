package diagnose

// A join is what the readings after say, given those before.
type join struct {
	log float64 // likelihood of both
	// squared distance of those after from what is expected of them.
	squared float64
	// off is what was read less what is expected, and variance that of it; by place.
	off, variance [features]float64
}

// join weighs both sets of readings under a component before and what it became.
func (c *caseFile) join(was *caseFile, b *history, a component) (j join, ok bool) {
	j, ok = c.joinSharing(was, b, a, c.lasting(was, b, a))
	if !ok {
		j, ok = c.joinSharing(was, b, a, [2]*state{})
	}
	return j, ok
}

// joinSharing conditions the readings after on those before, by the factor of these; how the
// machine answers what lasts is much the same in both.
func (c *caseFile) joinSharing(
	was *caseFile, b *history, a component, lasting [2]*state,
) (j join, ok bool) {
	w := c.work
	first, second := c.packed(a)
	cov := *c.covariance(first, second)
	ahead := c.ownOffset(first, second)
	var given [features][features]float64 // L⁻¹ of those before times the covariance with them
	for i := range w.n {
		f := w.at[i]
		for k := range was.work.n {
			g := was.work.at[k]
			x := ahead[i][g]
			if !b.bare {
				x = dot(&ahead[i], &b.own[g])
			}
			given[i][k] = x + sharedNoise*c.seen.noise[f][g]
			for _, s := range lasting {
				if s != nil {
					given[i][k] += sharedRest * s.left(f, g)
				}
			}
		}
		given[i] = b.by.step(was.work.n, &given[i], nil)
		w.x[i] -= b.by.dot(was.work.n, &given[i], &b.by.x)
		for k := range i + 1 {
			cov[place(i, k)] -= b.by.dot(was.work.n, &given[i], &given[k])
		}
		j.off[i], j.variance[i] = w.x[i], cov[place(i, i)]+w.noise[place(i, i)]
	}
	logDet, squared, ok := w.whiten(&cov)
	j.squared = squared
	j.log = logStudent(
		was.work.n+w.n, b.by.logDet+logDet, b.by.squared+squared,
	)
	return j, ok
}

// packed packs what an explanation came to, whose states may be new.
func (c *caseFile) packed(p component) (first, second *packing) {
	w := c.work
	first, second = &w.sound, &w.sound
	if p.a != none {
		first = &w.joined[0]
		c.packState(&c.states[p.a][p.sa], first)
	}
	if p.b != none {
		second = &w.joined[1]
		c.packState(&c.states[p.b][p.sb], second)
	}
	return first, second
}

// ownOffset is the covariance of the features with the machine's own offset.
func (c *caseFile) ownOffset(first, second *packing) (with [features]vector) {
	w := c.work
	for i, f := range w.at[:w.n] {
		if !first.rooted && !second.rooted {
			with[i] = c.machine.scatter[f]
			continue
		}
		root := w.rootOf(first, second, i)
		for g := range with[i] {
			with[i][g] = dot(&root, &w.along[g])
		}
	}
	for _, s := range [...]*packing{first, second} {
		if p := s.pull; p != nil {
			row := with[w.in[p.feature]]
			for h, slope := range p.gradient {
				if slope == 0 {
					continue
				}
				for g := range row {
					row[g] += p.fraction * slope * with[w.in[h]][g]
				}
			}
			with[w.in[p.feature]] = row
		}
	}
	return with
}

// lasting are the causes that are there before and after, at the lesser severity of the two.
func (c *caseFile) lasting(was *caseFile, b *history, a component) (states [2]*state) {
	for i, p := range [...]int{a.a, a.b} {
		for j, q := range [...]int{b.a, b.b} {
			if p == none || q == none || c.suspects[p].signature != was.suspects[q].signature {
				continue
			}
			s := &c.states[p][[...]int{a.sa, a.sb}[i]]
			t := &was.states[q][[...]int{b.sa, b.sb}[j]]
			if t.severity < s.severity {
				s = t
			}
			states[i] = s
		}
	}
	return states
}
