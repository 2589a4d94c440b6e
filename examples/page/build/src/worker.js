// Runs the library beside the page, so that typing never waits for it. The page
// has two of these: one follows the typing, the other works out what takes longer.
let queue = [];
globalThis.satlineReady = () => {
  const waiting = queue;
  queue = null;
  waiting.forEach(answer);
};
function answer({ id, name, args }) {
  const began = performance.now();
  const text = globalThis.satlineCall(name, ...args);
  const ended = performance.now();
  postMessage({ id, text, took: ended - began, at: performance.timeOrigin + ended });
}
// unpack reads through no blob: a browser that opens the page from a file may refuse that.
async function unpack(packed) {
  const stream = new DecompressionStream("gzip"), writer = stream.writable.getWriter();
  writer.write(packed);
  writer.close();
  // It is compiled while it is still being unpacked.
  return WebAssembly.compileStreaming(new Response(stream.readable, { headers: { "Content-Type": "application/wasm" } }));
}
onmessage = async ({ data }) => {
  if (data.name) {
    if (queue) queue.push(data);
    else answer(data);
    return;
  }
  try {
    const library = data.compiled || (await unpack(data.packed));
    if (data.packed) postMessage({ compiled: library });
    const go = new Go();
    await go.run(await WebAssembly.instantiate(library, go.importObject));
    postMessage({ failed: "the library stopped" });
  } catch (cause) {
    postMessage({ failed: String(cause) });
  }
};
