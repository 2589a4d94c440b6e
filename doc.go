// Package satline turns the readings of a service visit to an air conditioner
// into an assessment a technician can act on.
package satline
