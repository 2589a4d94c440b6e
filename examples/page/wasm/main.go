//go:build js && wasm

// Wasm is the library as the page calls it, in a worker of its own.
package main

import (
	"encoding/json"
	"syscall/js"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/page/live"
	"github.com/satline/satline/quantity"
)

// calls are what the page may ask, each with its arguments as text.
var calls = map[string]func(args []string) any{
	"form": func(args []string) any {
		var sys quantity.System
		if sys.UnmarshalText([]byte(args[1])) != nil {
			sys = quantity.IP
		}
		return live.NewForm(satline.Language(args[0]), sys)
	},
	"read": func(args []string) any {
		var in live.Typed
		if json.Unmarshal([]byte(args[0]), &in) != nil {
			return live.Reading{}
		}
		return live.Read(in)
	},
	"assess": func(args []string) any { return live.Assess([]byte(args[0])) },
	"task": func(args []string) any {
		return live.Perform(args[0], []byte(args[1]), []byte(args[2]))
	},
	"record": func(args []string) any {
		page, err := live.Record([]byte(args[0]), []byte(args[1]), time.Now())
		if err != nil {
			return map[string]string{"problem": err.Error()}
		}
		return map[string]string{"page": page}
	},
}

func main() {
	js.Global().Set("satlineCall", js.FuncOf(func(_ js.Value, args []js.Value) any {
		texts := make([]string, 0, 3)
		for _, a := range args[1:] {
			texts = append(texts, a.String())
		}
		answer, err := json.Marshal(calls[args[0].String()](texts))
		if err != nil {
			return `{"errors": {}, "problem": "the answer could not be written"}`
		}
		return string(answer)
	}))
	js.Global().Call("satlineReady")
	select {}
}
