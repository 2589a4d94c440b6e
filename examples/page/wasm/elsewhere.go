//go:build !js

package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "this runs in a browser; go run ./examples/page/build makes the page")
	os.Exit(1)
}
