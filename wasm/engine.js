// The engine in one file, for a page that has no program to ask. `@ENGINE@` stands for the WebAssembly module, packed
// by gzip and written in base64 (pack.py puts it in).
//
//   const ask = await load();
//   ask({ site: textOfTheFile, study: "flow" });   // { document } or { error, hint }

const unpack = (packed) => {
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
};

/** What the C library asks of its surroundings: the time of day, and variables, of which there are none. */
const surroundings = (view) => ({
  clock_time_get(clock, precision, at) {
    view().setBigUint64(at, BigInt(Date.now()) * 1000000n, true);
    return 0;
  },
  environ_sizes_get(count, size) {
    view().setUint32(count, 0, true);
    view().setUint32(size, 0, true);
    return 0;
  },
  environ_get: () => 0,
  emscripten_notify_memory_growth() {},
  proc_exit(code) {
    throw new Error(`the engine ended with ${code}`);
  },
});

/** What a module asks for and nobody here has: an error if it is ever called. */
const missing = (name) => () => {
  throw new Error(`the engine has no ${name}`);
};

/** Starts the engine from its packed module; gives the function that answers requests, one after the other. */
export async function start(packed) {
  let memory;
  const given = surroundings(() => new DataView(memory.buffer));
  const module = await WebAssembly.compile(await unpack(packed));
  const imports = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    (imports[from] ??= {})[name] = given[name] ?? missing(name);
  }
  const engine = (await WebAssembly.instantiate(module, imports)).exports;
  memory = engine.memory;
  engine._initialize();
  return (request) => {
    const asked = new TextEncoder().encode(`${JSON.stringify(request)}\0`);
    const at = engine.malloc(asked.length);
    new Uint8Array(memory.buffer).set(asked, at);
    const told = engine.forecourse_ask(at);
    engine.free(at);
    const bytes = new Uint8Array(memory.buffer);
    return JSON.parse(new TextDecoder().decode(bytes.subarray(told, bytes.indexOf(0, told))));
  };
}

/** The engine that this file holds. */
export const load = () => start("@ENGINE@");
