// Runs the library beside the page, so that typing never waits for it. The page
// has two of these: one follows the typing, the other works out dose and
// diagnosis, which take longer than a frame.
let queue = [];
globalThis.satlineReady = () => {
  postMessage({ ready: true, fluids: JSON.parse(globalThis.satlineFluids()), looks: JSON.parse(globalThis.satlineLooks()), units: JSON.parse(globalThis.satlineUnits()) });
  const waiting = queue;
  queue = null;
  waiting.forEach(answer);
};
function answer(request) {
  const began = performance.now();
  const text = globalThis.satlineAssess(request.visit);
  postMessage({ id: request.id, whole: request.whole, text, took: performance.now() - began });
}
async function unpack(packed) {
  const unpacked = new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip")));
  return WebAssembly.compile(await unpacked.arrayBuffer());
}
onmessage = async (event) => {
  const { packed, compiled } = event.data;
  if (!packed && !compiled) {
    if (queue) queue.push(event.data);
    else answer(event.data);
    return;
  }
  try {
    const library = compiled || (await unpack(packed));
    if (packed) postMessage({ compiled: library });
    const go = new Go();
    await go.run(await WebAssembly.instantiate(library, go.importObject));
    postMessage({ failed: "the library stopped" });
  } catch (cause) {
    postMessage({ failed: String(cause) });
  }
};
