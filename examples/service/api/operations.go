// Package api has what the service is asked and what it answers, without HTTP: the
// documents, the functions from one to the other, and the list of endpoints.
package api

import (
	"reflect"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
)

// An Operation is what the description says of one endpoint.
type Operation struct {
	Method, Path string
	// ID is by which a generated client calls it.
	ID      string
	Summary string
	// Tag is the group that it is in.
	Tag string
	// Constant says that its answer changes with the program alone, and has an ETag.
	Constant bool
	// Takes and Gives are the types of the two documents, nil where there is no JSON;
	// Media and GivesKind their media types.
	Takes, Gives     reflect.Type
	Media, GivesKind string
	// Example is a document that it takes.
	Example string
	// Parameter is an example of what stands in the braces of the path.
	Parameter string
	// Problems are the statuses of its problems, beside those that any request may have.
	Problems []int
}

// The media types of requests and answers.
const (
	JSON        = "application/json"
	NDJSON      = "application/x-ndjson"
	ProblemJSON = "application/problem+json"
)

// ofBodies are the statuses of the problems of a request with a body.
var ofBodies = []int{400, 408, 413, 415, 422, 503}

// Operations are all endpoints.
var Operations = []Operation{
	{
		Method: "POST", Path: "/v1/assess", ID: "assess", Tag: "assessments",
		Summary: "Assess a visit. Scope \"verdict\" leaves out the next dose and the diagnosis, " +
			"which take most of the time.",
		Takes: reflect.TypeFor[satline.Visit](), Gives: reflect.TypeFor[satline.Assessment](),
		Media: JSON, GivesKind: JSON,
		Example: ExampleVisit, Problems: ofBodies,
	},
	{
		Method: "POST", Path: "/v1/assess/batch", ID: "assessBatch", Tag: "assessments",
		Summary: "Assess visits, one a line, each answered on a line of its own as soon as it " +
			"has come. A line that cannot be assessed, or is longer than 1 MiB, has a problem " +
			"for an answer and does not end the batch. At most 100000 lines, each at most 15 s " +
			"in coming. A result whose problem is /problems/stopping, or /problems/too-large " +
			"on line 100001, is the last one: send that line and those after it again.",
		Takes: reflect.TypeFor[satline.Visit](), Gives: reflect.TypeFor[BatchResult](),
		Media: NDJSON, GivesKind: NDJSON,
		Problems: []int{400, 413, 415, 422, 503},
	},
	{
		Method: "GET", Path: "/v1/refrigerants", ID: "listRefrigerants", Tag: "refrigerants",
		Constant: true,
		Summary:  "Every refrigerant that is known, by designation.",
		Gives:    reflect.TypeFor[[]RefrigerantName](), GivesKind: JSON, Problems: []int{422},
	},
	{
		Method: "GET", Path: "/v1/refrigerants/{name}", ID: "getRefrigerant", Tag: "refrigerants",
		Constant: true,
		Summary:  "What is known of one refrigerant, in any usual spelling of its designation.",
		Gives:    reflect.TypeFor[RefrigerantSheet](), GivesKind: JSON, Parameter: "R-454B",
		Problems: []int{404, 422},
	},
	{
		Method: "POST", Path: "/v1/refrigerant/saturation", ID: "saturation", Tag: "refrigerants",
		Summary: "Bubble and dew temperature at a pressure, with superheat and subcooling of a " +
			"pipe; or bubble and dew pressure at a temperature.",
		Takes: reflect.TypeFor[SaturationQuestion](), Gives: reflect.TypeFor[SaturationAnswer](),
		Media: JSON, GivesKind: JSON,
		Example: `{"refrigerant": "R-454B", "gauge": "118 psig", ` +
			`"elevation": "6000 ft", "line": "52 °F"}`,
		Problems: ofBodies,
	},
	{
		Method: "POST", Path: "/v1/refrigerant/state", ID: "state", Tag: "refrigerants",
		Summary: "Density, enthalpy, entropy and the rest at an absolute pressure and one more " +
			"property.",
		Takes: reflect.TypeFor[StateQuestion](), Gives: reflect.TypeFor[StateAnswer](), Media: JSON,
		GivesKind: JSON,
		Example:   `{"refrigerant": "R-32", "pressure": "900 kPa", "temperature": "15 °C"}`,
		Problems:  ofBodies,
	},
	{
		Method: "POST", Path: "/v1/air", ID: "air", Tag: "air",
		Summary: "The state of moist air at any altitude.",
		Takes:   reflect.TypeFor[AirQuestion](), Gives: reflect.TypeFor[AirAnswer](), Media: JSON,
		GivesKind: JSON,
		Example:   `{"dryBulb": "79 °F", "wetBulb": "66 °F", "elevation": "4700 ft"}`,
		Problems:  ofBodies,
	},
	{
		Method: "POST", Path: "/v1/charge/target", ID: "chargeTarget", Tag: "charge",
		Summary: "What superheat, subcooling or approach should read, how near is near enough, " +
			"and where both come from.",
		Takes: reflect.TypeFor[TargetQuestion](), Gives: reflect.TypeFor[charge.Target](),
		Media: JSON, GivesKind: JSON,
		Example: `{"method": "superheat", "returnWetBulb": "64 °F ± 0.6 °F", ` +
			`"outdoorDryBulb": "88 °F ± 0.6 °F"}`,
		Problems: ofBodies,
	},
	{
		Method: "GET", Path: "/problems/{kind}", ID: "problemKind", Tag: "service", Constant: true,
		Summary: "What a kind of problem means, at the address that is its type.",
		Gives:   reflect.TypeFor[Problem](), GivesKind: JSON, Parameter: "input",
		Problems: []int{404, 422},
	},
	{Method: "GET", Path: "/openapi.json", ID: "description",
		Summary: "This description.", GivesKind: JSON, Tag: "service", Constant: true},
}

// Address is the path with its parameter put in.
func (o Operation) Address() string {
	return strings.NewReplacer("{name}", o.Parameter, "{kind}", o.Parameter).Replace(o.Path)
}

// ExampleVisit is invented.
const ExampleVisit = `{
  "title": "Invented", "units": "IP",
  "equipment": {"refrigerant": "R-410A", "metering": "fixed restrictor",
    "nominalCapacity": "3 ton"},
  "site": {"elevation": "6000 ft"},
  "readings": {
    "suctionPressure": "118 psig", "suctionLine": "70 °F",
    "liquidPressure": "318 psig", "liquidLine": "96 °F",
    "outdoorDryBulb": "82 °F", "returnDryBulb": "75 °F", "returnWetBulb": "63 °F ± 0.6 °F"
  }
}`
