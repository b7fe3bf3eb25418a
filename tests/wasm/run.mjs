// Holds the engine in WebAssembly against the program, under Node and in a browser:
//   node run.mjs PROGRAM ENGINE STATION.toml ...
// For every station: the flow study in full, and the incident "struck" (the station's own, else at its first dispenser);
// for some the whole lesson, and for one the replay of every failure that the built-in lesson names. All as the program
// prints them with --json. Keys and texts are equal, numbers as near as `isNear` says. Prints the greatest difference,
// and the time of each study in the browser beside its goal, which it does not judge. Exit code 1 if something differs.
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const [program, engineFile] = process.argv.slice(2, 4).map((name) => path.resolve(name));
const stations = process.argv.slice(4);
const { chromium } = createRequire(path.join(root, "web/package.json"))("playwright-core");

const day = "2026-11-30"; // by which tests are judged overdue
const shown = 8; // differences of a study
const studies = [
  { name: "flow", goal: 100, words: () => ["flow"], request: () => ({ study: "flow" }) },
  {
    name: "struck",
    goal: 200,
    words: (text) => ["incident", "struck", "--on", day, ...Object.entries(place(text)).flatMap(([, id]) => ["--at", id])],
    request: (text) => ({ study: "incident", kind: "struck", on: day, ...place(text) }),
  },
];

const taught = ["hollin-gap", "sedge-fold", "thornby"]; // whose lesson is held too
const broken = "sedge-fold"; // whose failures are replayed
const failures = [...readFileSync(path.join(root, "lessons/default.toml"), "utf8").matchAll(/^failures = \[(.*)\]/gm)]
  .flatMap(([, list]) => [...list.matchAll(/"([^"]+)"/g)].map(([, id]) => id))
  .filter((id, i, all) => all.indexOf(id) === i);

/** What a station is asked. */
function asked(name) {
  const lesson = { name: "lesson", words: () => ["lesson", "--on", day], request: () => ({ study: "lesson", on: day }) };
  const replays = failures.map((id) => ({
    name: `lesson, ${id}`,
    goal: 1000,
    words: () => ["lesson", "--failure", id],
    request: () => ({ study: "lesson", failure: id }),
  }));
  return [...studies, ...(taught.includes(name) ? [lesson] : []), ...(name === broken ? replays : [])];
}

/** Where a station is struck that has no incident of its own. */
const place = (text) => (text.includes("[[incident]]") ? {} : { at: /\[\[dispenser\]\][^[]*?\bid *= *"([^"]+)"/.exec(text)[1] });

const relative = 1e-9;

// A run of an incident takes steps that its error allows. Both are the same sources, but the C library of each rounds the
// last bit of its functions its own way, and once one step is accepted here and not there, both go different ways within
// that error. So runs whose hash of every bit differs are held to what solvers/sequence/trace.h allows two builds
// (TraceTolerance), and their charts only as far as they have the same points.
const relativeOfRun = 1e-6;
const leastOfRun = [
  [/_s$/, 1e-3],
  [/(_m3|_m3_per_s|\/balance)$/, 1e-7],
  [/_pa$/, 1], // a line that is shut turns 1e-10 m3 into a tenth of a pascal
];

// A drop of a delivery is stepped as well: what a lesson tells of one is held to `relativeOfDrop`, since peaks among it
// are read at the steps (one of 5 Pa differs by 0.002 Pa), and what a picture is drawn from, shares of 1, to a millionth.
const relativeOfDrop = 1e-3;
const isStepped = (at) => /\/(runs|scenes|numbers)\/\d+\//.test(at);

function isNear({ at, ours, theirs, by, sameBits }) {
  if (by <= relative) return true;
  if (/^\/result\/pages\/\d+\/states\//.test(at)) return Math.abs(ours - theirs) <= relativeOfRun;
  if (sameBits || !isStepped(at)) return false;
  if (at.endsWith("/hash")) return true;
  const least = leastOfRun.find(([unit]) => unit.test(at.replace(/\/\d+$/, "")))?.[1] ?? 0;
  const wanted = at.includes("/runs/") ? relativeOfRun : relativeOfDrop;
  return by <= wanted || Math.abs(ours - theirs) <= least;
}

/** The first point at which two courses have other times; -1: none. */
function partAt(chart, other) {
  if (!Array.isArray(chart.time_s)) return -1;
  const near = (time, i) => Math.abs(time - other.time_s[i]) <= relative * Math.abs(time);
  const same = chart.time_s.findIndex((time, i) => !near(time, i));
  return same < 0 && other.time_s.length > chart.time_s.length ? chart.time_s.length : same;
}

/** Points up to where the times part, of a chart or of a scene of a replay. */
function alike(chart, other) {
  const count = Math.max(0, partAt(chart, other));
  const points = chart.time_s.length;
  const cut = (value) => {
    if (Array.isArray(value)) return value.length === points && typeof value[0] !== "object" ? value.slice(0, count) : value.map(cut);
    if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, cut(one)]));
    return value;
  };
  return cut(chart);
}

/** What the program prints; that a finding falls short, or that something is missing, is an answer too. */
function printed([command, ...words], station) {
  try {
    return JSON.parse(execFileSync(program, [command, station, ...words, "--json"], { maxBuffer: 1 << 28, stdio: ["ignore", "pipe", "pipe"] }));
  } catch (failed) {
    if (failed.stdout?.length) return JSON.parse(failed.stdout);
    throw failed;
  }
}

// A command of a replay names the value that it sets to the last bit.
const number = /\d+\.\d{6,}(?:e[-+]?\d+)?/g;
const numbersOf = (text) => (text.match(number) ?? []).map(Number);
const alikeButForNumbers = (one, other) => one !== other && one.replace(number, "#") === other.replace(number, "#");

/** Without what hangs on the last bit: whether a tank comes up to the very volume at which its valve is set. */
function withoutEdges(replay) {
  for (const scene of replay.result?.scenes ?? []) {
    scene.events = scene.events.filter((event) => event.words !== "the tank holds 95 % of its capacity");
  }
  return replay;
}

/** Adds all places where two values differ. */
function differences(ours, theirs, at, out, sameBits = true) {
  if (typeof ours === "number" && typeof theirs === "number") {
    const by = ours === theirs ? 0 : Math.abs(ours - theirs) / Math.max(Math.abs(ours), Math.abs(theirs));
    if (by > 0) out.push({ at, ours, theirs, by, sameBits });
  } else if (ours && theirs && typeof ours === "object" && typeof theirs === "object") {
    const apart = ours.time_s && theirs.time_s && partAt(ours, theirs) >= 0;
    const delivered = ours.command?.[0] === "delivery" && at.includes("/numbers/");
    const same = ours.hash === undefined ? sameBits && !(apart && at.includes("/scenes/")) && !delivered : ours.hash === theirs.hash;
    const [one, other] = apart && !same ? [alike(ours, theirs), alike(theirs, ours)] : [ours, theirs];
    const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
    for (const key of keys) differences(one[key], other[key], `${at}/${key}`, out, same);
  } else if (typeof ours === "string" && typeof theirs === "string" && alikeButForNumbers(ours, theirs)) {
    differences(numbersOf(ours), numbersOf(theirs), at, out, sameBits);
  } else if (ours !== theirs) {
    out.push({ at, ours, theirs, by: Infinity, sameBits });
  }
  return out;
}

/** The studies of every station by the engine in a page of its own, opened from the disk: what it told, and how long the
 * first and the middle one of some more took. */
async function inBrowser(requests) {
  const page = path.join(root, "out/test/wasm/page.html");
  mkdirSync(path.dirname(page), { recursive: true });
  const script = `${readFileSync(engineFile, "utf8")}\nwindow.load = load;`;
  writeFileSync(page, `<!doctype html><meta charset="utf-8"><title>engine</title><script type="module">${script}</script>`);
  console.log(`page with the engine: ${(readFileSync(page).length / 1e6).toFixed(2)} MB`);
  const browser = await chromium.launch({
    executablePath: process.env.FORECOURSE_BROWSER ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
  });
  try {
    const tab = await browser.newPage();
    await tab.goto(pathToFileURL(page).href);
    await tab.waitForFunction(() => window.load);
    console.log(`started in ${(await tab.evaluate(start)).toFixed(0)} ms`);
    const out = [];
    for (const request of requests) out.push(await tab.evaluate(timed, request));
    return out;
  } finally {
    await browser.close();
  }
}

/** In the page: starts the engine; how long that took, in ms. */
async function start() {
  const before = performance.now();
  window.ask = await window.load();
  return performance.now() - before;
}

/** In the page: answers a request several times. */
function timed(request) {
  const times = [];
  let told;
  for (let i = 0; i < 6; ++i) {
    const before = performance.now();
    told = window.ask(request);
    times.push(performance.now() - before);
  }
  const [first, ...again] = times;
  return { told, first, again: again.sort((a, b) => a - b)[2] };
}

const cases = stations.flatMap((station) => {
  const text = readFileSync(station, "utf8");
  const id = path.basename(station, ".toml");
  const hoses = text.match(/^ *\[\[dispenser\.hose\]\]/gm)?.length;
  return asked(id).map(({ name, goal, words, request }) => ({
    name: `${id} (${hoses} hoses) ${name}`,
    goal,
    theirs: printed(words(text), station),
    request: { site: text, file: station, ...request(text) },
  }));
});
const ask = await (await import(pathToFileURL(engineFile))).load();
const seen = await inBrowser(cases.map((one) => one.request));
let wrong = 0;
cases.forEach(({ name, goal, theirs, request }, i) => {
  const here = ask(request);
  const whole = JSON.stringify(here);
  const found = differences(withoutEdges(here.document ?? here), withoutEdges(theirs), "", []).filter((one) => !isNear(one));
  // One module gives one result, whoever runs it.
  if (whole !== JSON.stringify(seen[i].told)) found.push({ at: "/", ours: "Node", theirs: "browser", by: Infinity });
  wrong += found.length;
  const { first, again } = seen[i];
  const wanted = goal ? ` (goal: ${goal} ms)` : "";
  console.log(`${name}: ${found.length} differ; ${first.toFixed(0)} ms, then ${again.toFixed(0)} ms${wanted}`);
  for (const one of found.slice(0, shown)) console.log(`  ${one.at}: ${one.ours} here, ${one.theirs} printed`);
});
console.log(`${cases.length} studies: ${wrong} differences`);
process.exitCode = wrong === 0 ? 0 : 1;
