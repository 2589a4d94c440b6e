package diagnose

import (
	"slices"

	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A Code names a cause for programs. It never changes its meaning.
type Code string

// A Kind says where a cause sits.
type Kind int

// The kinds, in the order in which they are to be dealt with.
const (
	Instrument   Kind = iota // the reading is wrong, not the machine
	Circumstance             // the weather or the use, not the machine
	Air                      // indoor or outdoor air
	Circuit                  // the refrigerant circuit
)

// A Fault is one cause as the trade names it.
type Fault struct {
	Code Code
	Kind Kind
	// Signature is the group of faults that look alike to gauges and
	// thermometers at the usual ports. Inference weighs signatures; what is
	// seen, heard or measured elsewhere tells the faults of one apart.
	Signature Code
	// Variant is the entry of the signature table for a fault that shifts the
	// readings in a way of its own, too little so to be told apart by it; empty
	// means the entry of the signature.
	Variant string
	// Share is how common the fault is among those of its signature; common
	// practice, no source.
	Share float64
	// Devices that the fault can happen to; none means all.
	Devices []refrigerant.Metering
	// Readings that the fault of an instrument makes wrong, as a visit names them, and the
	// dangers that it makes appear where there are none.
	Readings, Seems []string
	// Opens says that the circuit is opened to put it right, Running that the machine has to run
	// for it to be found.
	Opens, Running bool
	// HeatPump says that only a machine with a reversing valve can have it.
	HeatPump bool

	Sources []fact.Source
	// Own says that it is a HouseFault.
	Own bool

	index int // in the library
}

var (
	rossiBraun = fact.Source{
		Title:    "Rossi and Braun 1997, HVAC&R Research 3(1):19-37, fault rules",
		Standing: fact.Published,
	}
	breukerBraun = fromMemory("Breuker and Braun 1998, HVAC&R Research 4(3):303-318")
	kim          = fromMemory("Kim, Yoon, Payne and Domanski 2008, NIST SP 1087")
	farzadONeal  = fromMemory("Farzad and O'Neal 1993, ASHRAE Transactions 99(1)")
	liBraun      = fromMemory("Li and Braun 2007, HVAC&R Research 13(2):369-395")
	acca         = fromMemory("ANSI/ACCA 5 QI, HVAC Quality Installation Specification")
	practice     = fact.Source{Standing: fact.CommonPractice}
)

func fromMemory(title string) fact.Source {
	return fact.Source{Title: title, Standing: fact.FromMemory}
}

func (f *Fault) fits(device refrigerant.Metering, heatPump bool) bool {
	if f.HeatPump && !heatPump {
		return false
	}
	for _, d := range f.Devices {
		if d == device || d.Fixed() && device.Fixed() {
			return true
		}
	}
	return len(f.Devices) == 0 || device == 0
}

// A HouseFault is a fault of somebody's own, with the readings and the looks of one of the
// library.
type HouseFault struct {
	Code, Like Code
	// Share is how common it is beside the fault that it is like; 1 is as common.
	Share  float64
	Source fact.Source
}

func (h *HouseFault) fault() *Fault {
	like := lookup(h.Like)
	if like == nil {
		return nil
	}
	f := *like
	f.Code, f.Share, f.Sources, f.Own = h.Code, like.Share*h.Share, []fact.Source{h.Source}, true
	return &f
}

// WrongInstruments are the faults of instruments, which make readings wrong. They are not to be
// changed.
func WrongInstruments() []Fault { return wrongInstruments }

var wrongInstruments = slices.DeleteFunc(
	Library(), func(f Fault) bool { return len(f.Readings) == 0 },
)

// OfInstrument reports whether a signature is that of a wrong instrument.
func OfInstrument(signature Code) bool { return misread[signature] }

var misread = func() map[Code]bool {
	out := map[Code]bool{}
	for i := range wrongInstruments {
		out[wrongInstruments[i].Signature] = true
	}
	return out
}()

// SeemsTo lists the causes that make a danger appear where there is none.
func SeemsTo(danger string) []Code { return seems[danger] }

var seems = func() map[string][]Code {
	out := map[string][]Code{}
	for i := range library {
		for _, danger := range library[i].Seems {
			if c := library[i].Signature; !slices.Contains(out[danger], c) {
				out[danger] = append(out[danger], c)
			}
		}
	}
	return out
}()

// Library returns every fault that is known, grouped by signature.
func Library() []Fault { return append([]Fault(nil), library...) }

var library = func() []Fault {
	var all []Fault
	for _, part := range [][]Fault{circuitFaults, airFaults, circumstances, instrumentFaults} {
		all = append(all, part...)
	}
	for i := range all {
		all[i].index = i
	}
	return all
}()

// lookup returns the fault of a code; nil where there is none.
func lookup(code Code) *Fault {
	for i := range library {
		if library[i].Code == code {
			return &library[i]
		}
	}
	return nil
}

// faultsOf returns the faults of a signature that the machine can have.
func faultsOf(signature Code, e *Evidence) []*Fault {
	var out []*Fault
	take := func(f *Fault) {
		if f != nil && f.Signature == signature && f.fits(e.Metering, e.HeatPump) {
			out = append(out, f)
		}
	}
	all := bySignature[signature]
	fit := true
	for _, f := range all {
		fit = fit && f.fits(e.Metering, e.HeatPump)
	}
	if fit && len(e.House) == 0 {
		return all
	}
	for _, f := range all {
		take(f)
	}
	for i := range e.House {
		take(e.House[i].fault())
	}
	return out
}

// bySignature are the faults of the library by their signature.
var bySignature = func() map[Code][]*Fault {
	out := map[Code][]*Fault{}
	for i := range library {
		f := &library[i]
		out[f.Signature] = append(out[f.Signature], f)
	}
	return out
}()
