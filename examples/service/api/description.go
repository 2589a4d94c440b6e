package api

import _ "embed"

// Description is the description of the service, in OpenAPI 3.1.
//
//go:embed openapi.json
var Description []byte
