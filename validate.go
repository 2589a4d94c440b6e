package satline

import "errors"

// Validate lists every field to mend before the visit can be assessed, refrigerant first; nil where
// there is none. Assess returns the first of them. What can only be told from the readings as they
// come to rest is looked at once the fields themselves are right. A form of texts reads each field
// by its UnmarshalText, whose error is about that field, and then validates.
func (v Visit) Validate() []*VisitError {
	if _, problems := checked(v); len(problems) > 0 {
		return problems
	}
	p, err := prepare(v)
	if err == nil {
		if s, err := settle(p); err == nil {
			if refused := p.refused(&s.readings); len(refused) > 0 {
				return refused
			}
		}
		_, _, _, _, err = p.toJudge()
	}
	if wrong, ok := errors.AsType[*VisitError](err); ok {
		return []*VisitError{wrong}
	}
	return nil
}
