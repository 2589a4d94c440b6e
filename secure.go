package satline

import (
	"strings"

	"github.com/satline/satline/charge"
)

// secured is the step that comes before every other where the machine may harm
// itself as it runs.
func (j *job) secured() (Step, bool) {
	if o, ok := j.iced(); ok {
		thaw, _, _ := strings.Cut(o.Instead, "; ")
		return Step{Do: closed(sentence(thaw)), Why: o.Reason}, true
	}
	for _, r := range j.risks {
		if r.Stop != "" {
			return Step{Do: closed(sentence(r.Stop)), Why: r.Text + "; " + r.Why}, true
		}
	}
	return Step{}, false
}

// iced is the obstacle of an iced coil: thaw it; then read again.
func (j *job) iced() (charge.Obstacle, bool) {
	for _, o := range j.obstacles {
		if o.Code == "coil-iced" {
			return o, true
		}
	}
	return charge.Obstacle{}, false
}

// afterThaw is what is left to do of instead once the coil is being thawed.
func (j *job) afterThaw(instead string) string {
	if o, ok := j.iced(); ok && instead == o.Instead {
		_, instead, _ = strings.Cut(instead, "; ")
	}
	return instead
}

// then is what follows once the machine is secured.
func (r Risk) then() string {
	return strings.TrimPrefix(r.Do, r.Stop+"; ")
}
