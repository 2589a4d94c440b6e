package server

import (
	"cmp"
	"runtime/debug"
	"strings"
)

// release is the version that a build gives, where the module's own is not recorded:
// -ldflags='-X github.com/satline/satline/examples/service/server.release=v1.2.3'.
var release string

// version is that of the program: as its build gives it, or as go build has recorded
// it, of a release its number and of a checkout its commit; "devel" where neither has.
var version = func() string {
	recorded := ""
	if info, ok := debug.ReadBuildInfo(); ok {
		recorded = strings.Trim(info.Main.Version, "()")
	}
	return cmp.Or(release, recorded, "devel")
}()
