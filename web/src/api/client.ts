import { stationOf } from "./station";
import type { Diagnostic, Edit, Station, StationTold, Tables, Units, Want } from "./types";

/** What the server said no to, with what to do about it. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    message: string,
    readonly hint: string,
    readonly body: Record<string, unknown>,
  ) {
    super(message);
  }

  /** The first thing that is wrong, with what to do about it. */
  get first(): string {
    const told = (this.body["diagnostics"] as Diagnostic[] | undefined)?.[0];
    return told ? withHint(told) : this.message;
  }
}

export const withHint = ({ message, hint }: Pick<Diagnostic, "message" | "hint">) =>
  message + (hint ? `; ${hint}` : "");

/** The key of this start of the server, from the printed address; kept for this tab. */
function key(): string {
  const given = /^#key=([0-9a-f]+)$/.exec(location.hash);
  if (given?.[1]) {
    sessionStorage.setItem("key", given[1]);
    history.replaceState(null, "", location.pathname + location.search);
  }
  return sessionStorage.getItem("key") ?? "";
}

const secret = key();
/** True if this tab was opened with the printed address. */
export const hasKey = secret !== "";

async function send(method: string, path: string, body?: unknown, signal?: AbortSignal): Promise<Response> {
  const headers: Record<string, string> = {};
  if (body !== undefined) headers["Content-Type"] = "application/json";
  if (secret) headers["X-Forecourse-Key"] = secret;
  const response = await fetch(path, {
    method,
    headers,
    cache: "no-store",
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(signal ? { signal } : {}),
  });
  if (!response.ok) throw await refusal(response);
  return response;
}

async function refusal(response: Response): Promise<Refused> {
  const json = read(await response.text());
  if (json["station"]) json["station"] = await whole(json["station"] as StationTold);
  const error = String(json["error"] ?? response.statusText);
  return new Refused(response.status, error, String(json["hint"] ?? ""), json);
}

/** What is told of a refusal; a text that is no document is the error itself. */
function read(text: string): Record<string, unknown> {
  try {
    return JSON.parse(text || "{}") as Record<string, unknown>;
  } catch {
    return { error: text };
  }
}

async function call<T>(method: string, path: string, body?: unknown, signal?: AbortSignal): Promise<T> {
  const text = await (await send(method, path, body, signal)).text();
  return JSON.parse(text || "{}") as T;
}

let known: Promise<Tables> | null = null;
/** The tables, asked for once. */
function tables(): Promise<Tables> {
  known ??= call<Tables>("GET", "/api/tables").catch((error: unknown) => {
    known = null;
    throw error;
  });
  return known;
}

const whole = async (told: StationTold | Promise<StationTold>): Promise<Station> =>
  stationOf(await told, await tables());

/** Sends what is answered with the station. */
const write = (path: string, body: unknown) => whole(call<StationTold>("POST", path, body));

interface Asked<A> {
  revision: number;
  answers: A[];
  diagnostics: Diagnostic[];
}

export const api = {
  station: () => whole(call<StationTold>("GET", "/api/station")),
  ask: <A>(wants: Want[], edits: Edit[] = [], signal?: AbortSignal) =>
    call<Asked<A>>("POST", "/api/ask", { wants, edits }, signal),
  edit: (revision: number, label: string, edits: Edit[]) => write("/api/edit", { revision, label, edits }),
  undo: (revision: number) => write("/api/undo", { revision }),
  redo: (revision: number) => write("/api/redo", { revision }),
  text: (revision: number, label: string, text: string) => write("/api/text", { revision, label, text }),
  saveAs: (name: string) => write("/api/save-as", { name }),
  open: (name: string) => write("/api/open", { name }),
  create: (name: string, template: string) => write("/api/new", { name, template }),
  sites: () => call<{ names: string[]; templates: { id: string; text: string }[] }>("GET", "/api/sites"),
  /** A row for the store of the station's records; resolves when it is on the disk. */
  enterRecord: (kind: string, values: Record<string, string | null>) =>
    call<object>("POST", "/api/records", { kind, values }),
  /** Several rows of one kind, in one step. */
  enterRecords: (kind: string, rows: Record<string, string>[]) => call<object>("POST", "/api/records", { kind, rows }),
  takeBackRecord: () => call<{ taken: string }>("POST", "/api/records/take-back", {}),
  startRun: (revision: number, want: Want, edits: Edit[] = []) =>
    call<{ run: number }>("POST", "/api/runs", { revision, want, edits }),
  run: <A>(id: number) =>
    call<{ share: number; done: boolean; cancelled: boolean; answer?: A }>("GET", `/api/runs/${id}`),
  stopRun: (id: number) => call<object>("DELETE", `/api/runs/${id}`),
  reportChoices: <C>(signal: AbortSignal) => call<C>("GET", "/api/report/sections", undefined, signal),
  report: async (wanted: object, signal: AbortSignal) =>
    (await send("POST", "/api/report", wanted, signal)).blob(),
  /** "kit.csv", "kit.xlsx" or "calendar.ics" */
  handover: async (file: string, units: Units) => (await send("POST", `/api/handover/${file}`, { units })).blob(),
};

/** Server-sent events; reconnects by itself. Returns what ends it. */
export function listen(handlers: Record<string, (data: Record<string, unknown>) => void>, alive: (up: boolean) => void) {
  const source = new EventSource("/api/events");
  source.onopen = () => alive(true);
  source.onerror = () => alive(false);
  for (const [name, handler] of Object.entries(handlers)) {
    source.addEventListener(name, (event) => handler(JSON.parse((event as MessageEvent<string>).data)));
  }
  return () => source.close();
}
