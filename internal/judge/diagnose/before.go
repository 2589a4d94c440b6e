package diagnose

import (
	"cmp"
	"slices"
)

// A history is an explanation of the earlier readings that is followed through what was done.
type history struct {
	component
	log  float64 // of its prior, with how the air was read
	by   factored
	own  matrix // how the features follow the machine's own offset
	bare bool
}

// follow makes histories of the likeliest explanations, the likeliest first.
func (c *caseFile) follow() {
	order := make([]*component, len(c.parts))
	for i := range order {
		order[i] = &c.parts[i]
	}
	slices.SortStableFunc(
		order, func(x, y *component) int { return cmp.Compare(y.weight, x.weight) },
	)
	least := 0.0
	if c.evidence.NoPairs && len(order) > 0 {
		least = hardlyLikely * order[0].weight
	}
	for _, p := range order[:min(mostHistories, len(order))] {
		if p.weight <= least {
			break
		}
		h := history{component: *p, log: p.log - p.fit + c.bounds(*p)}
		first, second := c.packed(*p)
		c.work.whiten(c.covariance(first, second))
		h.by = c.work.factored
		h.own, h.bare = c.followed(*p)
		c.work.histories = append(c.work.histories, h)
	}
}

// before is what was believed by the earlier readings.
func (c *caseFile) before(earlier *Earlier) *caseFile {
	past := *c.evidence
	past.Input, past.Airflow, past.Power = earlier.Input, earlier.Airflow, earlier.Power
	past.Current = cmp.Or(earlier.Current, past.Current)
	past.ExternalStatic = cmp.Or(earlier.ExternalStatic, past.ExternalStatic)
	if earlier.Expected != nil {
		past.Expected = earlier.Expected
	}
	past.Earlier = nil
	if was := earlier.Kept.find(&past); was != nil {
		return was
	}
	was := open(&past)
	was.work.histories = was.work.histories[:0]
	if was.seen.n > 0 {
		was.infer()
		was.follow()
	}
	if earlier.Kept != nil {
		earlier.Kept.put(was)
	} else {
		c.earlier = was // whose states go on in this one
	}
	return was
}

// Kept is what was believed before something was done, for another diagnosis with the same
// Earlier and evidence that differs in nothing but what was read since.
type Kept struct{ with, without *caseFile } // pairs

func (k *Kept) of(noPairs bool) **caseFile {
	if noPairs {
		return &k.without
	}
	return &k.with
}

func (k *Kept) put(was *caseFile) {
	was.work.packings = nil // all that is weighed is
	*k.of(was.evidence.NoPairs) = was
}

// find is nil where it was not kept, or where what it rests on was read anew.
func (k *Kept) find(past *Evidence) *caseFile {
	if k == nil {
		return nil
	}
	was := *k.of(past.NoPairs)
	if was == nil {
		return nil
	}
	e := was.evidence
	if e.Current != past.Current || e.ExternalStatic != past.ExternalStatic ||
		e.Seen != past.Seen || !slices.Equal(e.Expected, past.Expected) {
		return nil
	}
	return was
}

// followed is how the features of a component follow the machine's own offset, as the clamps
// show it; bare is one for one.
func (c *caseFile) followed(p component) (m matrix, bare bool) {
	var room [2]*state
	states := c.statesOf(p, &room)
	m, bare = follow(states)
	for _, s := range states {
		if s.pull != nil {
			s.pull.follow(&m)
			bare = false
		}
	}
	return m, bare
}
