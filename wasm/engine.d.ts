/** What the engine answers, as the program answers a page of the workbench. */
export interface EngineAnswer {
  document?: { result: unknown };
  error?: string;
  hint?: string;
}
export type Engine = (request: object) => EngineAnswer;
/** Starts the engine from its module, packed by gzip and written in base64. */
export function start(packed: string): Promise<Engine>;
/** The engine that the packed file holds. */
export function load(): Promise<Engine>;
