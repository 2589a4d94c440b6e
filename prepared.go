package satline

import (
	"github.com/satline/satline/electrical"
	"github.com/satline/satline/refrigerant"
)

// prepared is a visit that has been checked field by field, with every reading
// carrying an uncertainty.
type prepared struct {
	visit      Visit
	fluid      *refrigerant.Refrigerant
	atmosphere AtmosphereUsed
	readings   Readings
	log        []LogEntry
	logged     fieldSet // readings that the log may hold; no others
	electrical *electrical.Report
	before     *settledBefore // of a session; nil else
}
