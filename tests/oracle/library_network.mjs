// A network file (the schema of tests/data/reference_station.json) told to the network library through epanet-js.
//
// What the library lacks or does in its own way, and how it is told all the same:
// - It has no loss linear in flow. All components of a run are one wide pipe in which the flow stays laminar, long
//   enough for the linear terms, with a minor loss for the quadratic ones. Where the flow in it left the laminar range,
//   it would be wrong without a word: `solveCase` looks at every such pipe.
// - A limiter is a flow control valve, which must not stand at a reservoir: the wide pipe comes after it. While it does
//   not limit, it has next to no loss, and rounding of the heads on both sides of it moves up to 1e-7 of the flow. So it
//   gets a small share of the run's quadratic loss; more would be wrong, for an active valve has no loss of that kind.
// - Its viscosity is a multiplier of a built-in 1.1e-5 ft2/s.
// - Its flow accuracy is a relative change from step to step; only the head error option bounds what is left.
import { FlowUnits, HeadLossType, InitHydOption, LinkProperty, LinkType, NodeProperty, NodeType, Option, Project,
  Workspace } from "epanet-js";

const largestLaminarReynolds = 2000;
const leastLength = 1e-6; // m; the library refuses 0
const leastRoughness = 1e-18; // m; the library refuses 0; 1e-12 would move the flows of a smooth line by 1e-9
const valveShare = 1e-5; // of a run's quadratic loss, taken over by its limiter
const valveBore = 0.05; // m

/** Loads the engine once. */
export async function loadLibrary() {
  const workspace = new Workspace();
  await workspace.loadModule();
  return workspace;
}

/** Runs of elements between nodes where more than two meet: [{ from, to, elements }]. */
function runsOf(network) {
  const into = new Map(network.nodes.map((node) => [node.id, []]));
  const out = new Map(network.nodes.map((node) => [node.id, []]));
  for (const element of network.elements) {
    out.get(element.from).push(element);
    into.get(element.to).push(element);
  }
  const fixed = new Set(network.nodes.filter((node) => node.fixed_head_m !== undefined).map((node) => node.id));
  const isInner = (id) => !fixed.has(id) && into.get(id).length === 1 && out.get(id).length === 1;
  const runs = [];
  for (const first of network.elements.filter((element) => !isInner(element.from))) {
    const elements = [first];
    while (isInner(elements.at(-1).to)) elements.push(out.get(elements.at(-1).to)[0]);
    runs.push({ from: first.from, to: elements.at(-1).to, elements });
  }
  return runs;
}

/** The library's constants: those a file gives, or as they stand in its source. */
function libraryConstants({ reference_library_constants: given, kinematic_viscosity_m2_s: viscosity }) {
  if (given) return given;
  const foot = 0.3048;
  const unit = 1.1e-5; // ft2/s
  return {
    g_ft_s2: 32.2,
    minor_loss_factor_ft: 0.02517,
    litre_per_cubic_foot: 28.317,
    ft_m: foot,
    viscosity_multiplier: viscosity / (unit * foot * foot),
    viscosity_unit_ft2_s: unit,
  };
}

/** The constants of the library in the units of a network file. */
function libraryUnits(c) {
  const flow = c.litre_per_cubic_foot / 1000; // m3/s for one ft3/s
  return {
    gravity: c.g_ft_s2,
    viscosity: c.viscosity_multiplier * c.viscosity_unit_ft2_s,
    foot: c.ft_m,
    linear: (c1) => (c1 * flow) / c.ft_m, // ft per ft3/s
    minorLossOf: (c2, bore) => (((c2 * flow * flow) / c.ft_m) * (bore / c.ft_m) ** 4) / c.minor_loss_factor_ft, // K
  };
}

/** The pipe that loses c1 q + c2 q|q| as long as it is laminar: { length, bore } in m and its minor loss K. */
function equivalentPipe(units, c1, c2, largestFlow) {
  const kinematic = units.viscosity * units.foot ** 2;
  const bore = Math.max(1, (4 * largestFlow) / (Math.PI * kinematic * (largestLaminarReynolds / 2)));
  const d = bore / units.foot;
  const area = (Math.PI / 4) * d * d;
  const length = (units.linear(c1) * units.gravity * d * d * area) / (32 * units.viscosity);
  return {
    length: Math.max(length * units.foot, leastLength),
    bore,
    K: units.minorLossOf(c2, bore),
  };
}

/** Builds one case of a network in an empty project, link by link. */
class Builder {
  constructor(workspace, network, wanted) {
    this.network = network;
    this.wanted = wanted;
    this.constants = libraryConstants(network.constants);
    this.units = libraryUnits(this.constants);
    this.model = new Project(workspace);
    this.model.init("report.txt", "", FlowUnits.LPS, HeadLossType.DW);
    this.hoses = new Map(); // hose number to link
    this.pumps = [];
    this.laminar = []; // [link, bore]
    this.count = 0;
    // No run carries more than all pumps at the end of their curves, and then some.
    const ends = network.elements.filter((e) => e.kind === "pump").map((e) => e.points.at(-1)[0]);
    this.largestFlow = 1.5 * ends.reduce((sum, flow) => sum + flow, 0);
  }

  build() {
    this.setOptions();
    const runs = runsOf(this.network);
    const ends = new Set(runs.flatMap((run) => [run.from, run.to]));
    for (const node of this.network.nodes.filter((one) => ends.has(one.id))) this.addEnd(node);
    for (const run of runs) this.addRun(run);
    return this;
  }

  setOptions() {
    const { model } = this;
    model.setOption(Option.SpViscos, this.constants.viscosity_multiplier);
    model.setOption(Option.Trials, 500);
    model.setOption(Option.Accuracy, 1e-3);
    model.setOption(Option.HeadError, 1e-8);
  }

  addEnd(node) {
    const isFixed = node.fixed_head_m !== undefined;
    const index = this.model.addNode(node.id, isFixed ? NodeType.Reservoir : NodeType.Junction);
    if (isFixed) this.model.setNodeValue(index, NodeProperty.Elevation, node.fixed_head_m);
  }

  /** Pump first, then pipes, limiter, and all components as one pipe; what is in series may stand in any order. */
  addRun(run) {
    const ofKind = (...kinds) => run.elements.filter((element) => kinds.includes(element.kind));
    const links = ofKind("pump").map((pump) => (from, to) => this.addPump(pump, from, to));
    links.push(...ofKind("pipe").map((p) => (from, to) => this.addPipe(from, to, p.L, p.D, p.roughness, p.K ?? 0)));
    const [nozzle] = ofKind("nozzle");
    const limited = nozzle && this.wanted.limiter && (nozzle.qlim ?? null) !== null && this.isOpen(nozzle);
    const components = ofKind("component", "nozzle");
    const sum = (key) => components.reduce((total, one) => total + (one[key] ?? 0), 0);
    const share = limited ? valveShare : 0;
    if (limited) links.push((from, to) => this.addLimiter(nozzle.qlim, share * sum("c2"), from, to));
    const losses = [sum("c1"), (1 - share) * sum("c2")];
    if (components.length > 0) links.push((from, to) => this.addComponents(losses, nozzle, from, to));
    let from = run.from;
    links.forEach((add, i) => {
      const to = i + 1 < links.length ? `M${(this.count += 1)}` : run.to;
      if (i + 1 < links.length) this.model.addNode(to, NodeType.Junction);
      add(from, to);
      from = to;
    });
  }

  isOpen(nozzle) {
    return this.wanted.open_hoses.includes(nozzle.hose);
  }

  addLink(type, from, to) {
    return this.model.addLink(`X${(this.count += 1)}`, type, from, to);
  }

  addPump(pump, from, to) {
    if (pump.points.length !== 3) throw new Error(`${pump.id}: the library takes a pump's power law by three points`);
    const link = this.addLink(LinkType.Pump, from, to);
    const curve = `C${this.pumps.length}`;
    this.model.addCurve(curve);
    const index = this.model.getCurveIndex(curve);
    this.model.setCurve(index, pump.points.map(([flow]) => 1000 * flow), pump.points.map(([, head]) => head));
    this.model.setHeadCurveIndex(link, index);
    this.pumps.push(link);
  }

  addPipe(from, to, length, bore, roughness, K) {
    const link = this.addLink(LinkType.Pipe, from, to);
    const rough = Math.max(roughness, leastRoughness);
    this.model.setPipeData(link, length, 1000 * bore, 1000 * rough, K);
    return link;
  }

  addLimiter(limit, c2, from, to) {
    const link = this.addLink(LinkType.FCV, from, to);
    this.model.setLinkValue(link, LinkProperty.Diameter, 1000 * valveBore);
    this.model.setLinkValue(link, LinkProperty.MinorLoss, this.units.minorLossOf(c2, valveBore));
    this.model.setLinkValue(link, LinkProperty.InitSetting, 1000 * limit);
  }

  addComponents([c1, c2], nozzle, from, to) {
    const pipe = equivalentPipe(this.units, c1, c2, this.largestFlow);
    const link = this.addPipe(from, to, pipe.length, pipe.bore, 1e-6, pipe.K);
    this.laminar.push([link, pipe.bore]);
    if (!nozzle) return;
    this.hoses.set(nozzle.hose, link);
    if (!this.isOpen(nozzle)) this.model.setLinkValue(link, LinkProperty.InitStatus, 0);
  }
}

/** Runs the library; its warnings are faults but for those of a pump or valve at the end of its range (4, 5). */
function run(model) {
  const warn = console.warn;
  const warnings = [];
  console.warn = (text) => warnings.push(text);
  try {
    model.runH();
  } finally {
    console.warn = warn;
  }
  const faults = warnings.filter((text) => !/Warning [45]\)/.test(text));
  if (faults.length > 0) throw new Error(faults.join("; "));
}

/** Solves one case: { hoses, pumps } in m3/s, by hose number and in file order; a closed hose counts 0. */
export function solveCase(workspace, network, wanted) {
  const built = new Builder(workspace, network, wanted).build();
  const { model } = built;
  model.openH();
  model.initH(InitHydOption.NoSave);
  run(model);
  const flow = (link) => model.getLinkValue(link, LinkProperty.Flow) / 1000;
  const kinematic = network.constants.kinematic_viscosity_m2_s;
  for (const [link, bore] of built.laminar) {
    const reynolds = (4 * Math.abs(flow(link))) / (Math.PI * bore * kinematic);
    if (reynolds > largestLaminarReynolds) throw new Error(`equivalent pipe no longer laminar: Re ${reynolds}`);
  }
  const hoses = [];
  for (const [hose, link] of built.hoses) hoses[hose] = wanted.open_hoses.includes(hose) ? flow(link) : 0;
  const answer = { hoses, pumps: built.pumps.map(flow) };
  model.closeH();
  model.close();
  return answer;
}
