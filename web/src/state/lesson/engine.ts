/** The engine as WebAssembly, for a page that has no program to ask. */

/** Answers a request, as the program answers a page of the workbench. */
export type Engine = (request: object) => EngineAnswer;
export interface EngineAnswer {
  document?: { result: unknown };
  error?: string;
  hint?: string;
}

interface Exports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  malloc(size: number): number;
  free(at: number): void;
  forecourse_ask(at: number): number;
}

function unpack(packed: string): Promise<ArrayBuffer> {
  const bytes = Uint8Array.from(atob(packed.trim()), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
}

/** What the C library asks of its surroundings: the time of day, and variables, of which there are none. */
const surroundings = (view: () => DataView): Record<string, (...args: never[]) => unknown> => ({
  clock_time_get(_clock: number, _precision: bigint, at: number) {
    view().setBigUint64(at, BigInt(Date.now()) * 1000000n, true);
    return 0;
  },
  environ_sizes_get(count: number, size: number) {
    view().setUint32(count, 0, true);
    view().setUint32(size, 0, true);
    return 0;
  },
  environ_get: () => 0,
  emscripten_notify_memory_growth: () => undefined,
  proc_exit(code: number) {
    throw new Error(`the engine ended with ${code}`);
  },
});

/** What a module asks for and nobody here has: an error if it is ever called. */
const missing = (name: string) => () => {
  throw new Error(`the engine has no ${name}`);
};

/** Starts the engine from its module, packed by gzip and written in base64. */
export async function startEngine(packed: string): Promise<Engine> {
  let exports: Exports | null = null;
  const given = surroundings(() => new DataView(exports!.memory.buffer));
  const module = await WebAssembly.compile(await unpack(packed));
  const imports: Record<string, Record<string, WebAssembly.ImportValue>> = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    (imports[from] ??= {})[name] = given[name] ?? missing(name);
  }
  const engine = (exports = (await WebAssembly.instantiate(module, imports)).exports as unknown as Exports);
  engine._initialize();
  return (request) => {
    const asked = new TextEncoder().encode(`${JSON.stringify(request)}\0`);
    const at = engine.malloc(asked.length);
    new Uint8Array(engine.memory.buffer).set(asked, at);
    const told = engine.forecourse_ask(at);
    engine.free(at);
    const bytes = new Uint8Array(engine.memory.buffer);
    return JSON.parse(new TextDecoder().decode(bytes.subarray(told, bytes.indexOf(0, told)))) as EngineAnswer;
  };
}
