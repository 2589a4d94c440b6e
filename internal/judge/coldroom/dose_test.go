package coldroom

import (
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// A machine that is short behind its receiver is charged by the plan, visit after visit: the
// leak is mended, doses go in while the plan says so, and glass and level are looked at after
// each. It ends with liquid at the receiver's outlet and never with a receiver that is full.
func TestDoses(t *testing.T) {
	want := 12
	if testing.Short() {
		want = 4
	}
	done, filled := 0, 0
	for i := 0; done < want && i < 3000; i++ {
		v := bench.Draw(rand.New(rand.NewPCG(91, uint64(i))), 0)
		if v.Truth != undercharge || !v.Strong || v.Room.Receiver == nil || !*v.Room.Receiver {
			continue
		}
		glide, err := v.Fluid.Glide(v.Suction.Value.Absolute(quantity.StandardAtmosphere))
		if err != nil || glide > muchGlide {
			continue // weighed in, not topped up
		}
		done++
		var added quantity.Mass
		for range 40 {
			level, full := v.Spare()
			v.Answers["cold-glass"], v.Answers["cold-receiver-low"] = level < 0, level < full/2
			c := caseOf(t, v)
			c.Moved = added
			j := Judge(c)
			if mass := doseOf(j); mass != 0 {
				answers := v.Answers
				v.Add(mass)
				added += mass
				v.Answers = answers
			} else if j.Ask != nil {
				v.Answers[j.Ask.Look] = v.Look(j.Ask.Look)
			} else {
				break
			}
		}
		level, full := v.Spare()
		if level > full+doseShare {
			t.Errorf("visit %d: overcharged, %.2f beyond what runs, %.2f when right", i, level,
				full)
		}
		filled += one(level > 0)
	}
	t.Logf("%d of %d end with liquid at the receiver's outlet", filled, done)
	if done < want || filled < done*9/10 {
		t.Errorf("%d of %d are charged", filled, done)
	}
}

// doseOf is what a plan adds next; zero where it adds nothing.
func doseOf(j modes.Judgement) quantity.Mass {
	for _, s := range j.Steps {
		if s.Do.Code == "step.cold-add" || s.Do.Code == "step.cold-add-level" {
			if m, ok := s.Do.Value("mass"); ok {
				return m.Of.(quantity.Mass)
			}
		}
	}
	return 0
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
