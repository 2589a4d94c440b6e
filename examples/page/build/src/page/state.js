// What is entered, and the last whole assessment that is shown of it.

const empty = () => ({ texts: {}, units: {}, system: "IP", metering: "", conditions: {}, checks: [], log: [], moves: [], start: 0, extra: {} });
let state = empty();
let shown = null;
// The units of each kind of field and system, the usual one first, once the library
// has said them. Nothing is asked or logged before that.
let units = null;
