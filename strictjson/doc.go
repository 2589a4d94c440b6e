// Package strictjson reads JSON that people write by hand, and answers a
// mistake with one line that says where it is and what to mend; [Error].Also has the others.
//
// It differs from encoding/json, whose idea of what is JSON it takes, where that is
// lenient: an unknown field is an error that names the nearest known one, a
// key given twice is an error, keys match exactly, null is not a value, and
// size, depth and the length of lists are bounded. DecodeVisit of package satline
// reads a visit with it; a service of your own may read its other documents so.
package strictjson
