package server

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"

	"github.com/satline/satline"
)

// A client in Go posts a visit and reads an assessment, or a problem that says
// what to mend.
func Example() {
	server := httptest.NewServer(newService(slog.New(slog.DiscardHandler), usual()))
	defer server.Close()

	ask := func(visit string) (string, error) {
		resp, err := http.Post(server.URL+"/v1/assess", "application/json",
			bytes.NewReader([]byte(visit)))
		if err != nil {
			return "", err
		}
		defer resp.Body.Close()
		body, err := io.ReadAll(resp.Body)
		if err != nil {
			return "", err
		}
		if resp.StatusCode != http.StatusOK {
			var problem struct{ Title, Field, Detail string }
			err := json.Unmarshal(body, &problem)
			return problem.Title + " " + problem.Field, err
		}
		var assessment satline.Assessment
		err = json.Unmarshal(body, &assessment)
		return assessment.Headline.Text, err
	}
	fmt.Println(ask(`{
	  "units": "IP",
	  "equipment": {"refrigerant": "R-32", "metering": "TXV", "arrangement": "package",
	    "label": {"charge": "3 lb 4 oz"}}
	}`))
	fmt.Println(ask(`{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
	  "readings": {"liquidLine": "900 °F"}}`))
	// Output:
	// Weigh in 3 lb 4.0 oz: label 3 lb 4.0 oz. <nil>
	// A value has to be mended. readings.liquidLine <nil>
}
