//go:build js && wasm

// Wasm is the library as the page calls it, in a worker of its own.
package main

import (
	"encoding/json"
	"syscall/js"

	"github.com/satline/satline/examples/page/live"
)

func main() {
	js.Global().Set("satlineAssess", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return text(live.Assess([]byte(args[0].String())))
	}))
	js.Global().
		Set("satlineFluids", js.FuncOf(func(js.Value, []js.Value) any { return text(live.Fluids()) }))
	js.Global().
		Set("satlineLooks", js.FuncOf(func(js.Value, []js.Value) any { return text(live.Looks()) }))
	js.Global().
		Set("satlineUnits", js.FuncOf(func(js.Value, []js.Value) any { return text(live.Units()) }))
	js.Global().Call("satlineReady")
	select {}
}

func text(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		return `{"errors": {}, "problem": "the answer could not be written"}`
	}
	return string(b)
}
