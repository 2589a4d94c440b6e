// What is entered, and the last whole assessment that is shown of it.

const empty = () => ({ texts: {}, units: {}, system: "IP", metering: "", conditions: {}, checks: [], log: [], moves: [], start: 0, extra: {} });
let state = empty();
let shown = null;
