package satline

// Validate lists every field to mend before the visit can be assessed, refrigerant first; nil where
// there is none. Assess returns the first of them. What can only be told from the readings as they
// come to rest is looked at once the fields themselves are right. A form of texts reads each field
// by its UnmarshalText, whose error is about that field, and then validates.
func (v Visit) Validate() []*VisitError {
	if _, problems := checked(v); len(problems) > 0 {
		return problems
	}
	if p, err := prepare(v); err == nil {
		if s, err := settle(p); err == nil {
			return p.refused(&s.readings)
		}
	}
	return nil
}
