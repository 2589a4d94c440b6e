// Runs the library beside the page, so that typing never waits for it.
let queue = [];
globalThis.satlineReady = () => {
  postMessage({ ready: true, fluids: JSON.parse(globalThis.satlineFluids()) });
  const waiting = queue;
  queue = null;
  waiting.forEach(answer);
};
function answer(request) {
  const began = performance.now();
  const text = globalThis.satlineAssess(request.visit);
  postMessage({ id: request.id, whole: request.whole, text, took: performance.now() - began });
}
onmessage = async (event) => {
  if (!event.data.module) {
    if (queue) queue.push(event.data);
    else answer(event.data);
    return;
  }
  try {
    const unpacked = new Response(new Blob([event.data.module]).stream().pipeThrough(new DecompressionStream("gzip")));
    const go = new Go();
    const { instance } = await WebAssembly.instantiate(await unpacked.arrayBuffer(), go.importObject);
    await go.run(instance);
    postMessage({ failed: "the library stopped" });
  } catch (cause) {
    postMessage({ failed: String(cause) });
  }
};
