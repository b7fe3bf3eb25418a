import { useRef } from "preact/hooks";
import { figure, siOf, unitOf, valueIn } from "../../../draw/numbers";
import { units } from "../../../state/look";
import { Wide } from "../../parts/Wide";
import type { KnownTank, TankPlace } from "../documents";
import { apart, depthAt, halfWidth, layoutOf, levelAt, levelOf, middleAt, middleOf, pathOf, xOf, yOf, type Layout } from "./geometry";

/** Steps of the depth line: with arrow keys, and with Shift, in the unit shown (in, mm). */
const steps = { us: [0.125, 5], si: [2, 100] } as const;

/** What the names and plates need; where there is less, the drawing scrolls sideways. px */
const least = 620;

interface Props {
  tank: KnownTank;
  tone: string;
  width: number;
  /** Where the stick is put. */
  stick: TankPlace;
  /** m above the lowest point inside; null: not known. */
  level: number | null;
  onDepth: (depth: number) => void;
}

/** Section at the stick and long section, side by side to one scale; the depth line crosses both. */
export function Sections({ tank, tone, width, stick, level, onDepth }: Props) {
  const layout = layoutOf(tank, width > 0 ? Math.max(width, least) : 0);
  if (!layout) return null;
  const middle = middleAt(stick, tank);
  return (
    <Wide label="Sections">
    <svg class="chart tanksections" width={layout.width} height={layout.height} role="group" aria-label="Section and long section to one scale">
      <Across tank={tank} tone={tone} layout={layout} middle={middle} level={level} />
      <Along tank={tank} tone={tone} layout={layout} level={level} />
      <Devices tank={tank} layout={layout} />
      <Dips tank={tank} layout={layout} level={level} />
      <DepthLine layout={layout} stick={stick} level={level} onDepth={onDepth} />
      <text x={layout.middle} y={layout.height - 10} text-anchor="middle" class="b">
        Section at the {placeName(stick)}
      </text>
      <text x={xOf(layout, middleOf(tank.outline))} y={layout.height - 10} text-anchor="middle">
        <tspan class="b">Long section</tspan>, {tank.shape}, true to scale
      </text>
    </svg>
    </Wide>
  );
}

interface Drawn {
  tank: KnownTank;
  tone: string;
  layout: Layout;
  level: number | null;
}

function Across({ tank, tone, layout, middle, level }: Drawn & { middle: number }) {
  const half = halfWidth(tank) * layout.scale;
  const [x, y] = [layout.middle, yOf(layout, middle)];
  const top = level === null ? layout.height : yOf(layout, level);
  const box = tank.section_width_m !== null;
  const tall = box ? layout.scale * tank.full_level_m : 2 * half;
  const shape = box ? (
    <rect x={x - half} y={y - tall / 2} width={2 * half} height={tall} />
  ) : (
    <circle cx={x} cy={y} r={half} />
  );
  return (
    <g>
      <clipPath id="tank-across">{shape}</clipPath>
      <g class="inside">{shape}</g>
      <rect class={`liquid ${tone}`} x={x - half} y={top} width={2 * half} height={Math.max(0, y + tall / 2 - top)} clip-path="url(#tank-across)" />
      <g class="shell">{shape}</g>
    </g>
  );
}

function Along({ tank, tone, layout, level }: Drawn) {
  const path = pathOf(layout, tank.outline);
  const top = level === null ? layout.height : yOf(layout, level);
  const water = tank.now?.water_level_m ?? null;
  return (
    <g>
      <clipPath id="tank-along">
        <path d={path} />
      </clipPath>
      <path class="inside" d={path} />
      <rect class={`liquid ${tone}`} x="0" y={top} width={layout.width} height={Math.max(0, layout.foot - top)} clip-path="url(#tank-along)" />
      {water !== null && water > 0 && (
        <rect class="water" x="0" y={yOf(layout, water)} width={layout.width} height={layout.foot - yOf(layout, water)} clip-path="url(#tank-along)" />
      )}
      <path class="shell" d={path} />
    </g>
  );
}

/** What is set, at its own place. */
function Devices({ tank, layout }: { tank: KnownTank; layout: Layout }) {
  const set = tank.overfill.set_now.flatMap((device) => {
    const at = tank.places.find((p) => p.along_m === device.along_m);
    return at && device.depth_m !== null ? [{ device, x: xOf(layout, at.head.along_m), y: yOf(layout, levelOf(at, device.depth_m)) }] : [];
  });
  return (
    <>
      {set.map(({ device, x, y }) => (
        <g class={`device ${device.device}`} key={device.what}>
          <title>
            {device.what}, {figure("bore", units.value, device.depth_m)} {unitOf("bore", units.value)}
          </title>
          <path d={`M${x - 22} ${y}H${x + 22}`} />
        </g>
      ))}
    </>
  );
}

const plate = { height: 34, least: 88, most: 168, letter: 7, gap: 4 };
/** From a stick to its dimension line, and on to its plate, px. */
const [aside, on] = [9, 5];

/** "gauge and reading" of a stick with both. */
const placeName = (place: TankPlace) => place.what.replaceAll(", ", " and ");
const plateWidth = (place: TankPlace) =>
  Math.min(plate.most, Math.max(plate.least, 12 + plate.letter * placeName(place).length));

/** A stick on the drawing; its dimension and plate stand to its right, or to its left where another one is near and
 * there is room beside the section across. */
interface Dip {
  place: TankPlace;
  x: number;
  way: 1 | -1;
  width: number;
  /** Where plates would overlap, how many rows below the middle of the dimension its own stands. */
  row: number;
}

function dipsOf(tank: KnownTank, layout: Layout): Dip[] {
  const marks = tank.places.map((place) => ({ place, x: xOf(layout, (place.foot.along_m + place.head.along_m) / 2) }));
  const reach = (place: TankPlace) => plateWidth(place) + aside + on;
  const free = layout.middle + halfWidth(tank) * layout.scale + 8;
  return apart(marks, plate.most + 2 * (aside + on)).flatMap((group) => {
    let row = 0;
    let end = -Infinity;
    const dips = group.map((mark, i): Dip => {
      const width = plateWidth(mark.place);
      const past = mark.x + reach(mark.place) > layout.width;
      const way = past || (i === 0 && group.length > 1 && mark.x - reach(mark.place) > free) ? -1 : 1;
      const left = way > 0 ? mark.x + aside + on : mark.x - reach(mark.place);
      row = left < end ? row + 1 : 0;
      end = Math.max(end, left + width);
      return { ...mark, way, width, row };
    });
    const rows = Math.max(...dips.map((d) => d.row));
    return dips.map((d) => ({ ...d, row: d.row - rows / 2 }));
  });
}

/** Depths on the sticks, as dimension lines with the figure on a plate. */
function Dips({ tank, layout, level }: { tank: KnownTank; layout: Layout; level: number | null }) {
  const dips = dipsOf(tank, layout);
  return (
    <>
      <g class="dip">
        {dips.map(({ place, x }) => (
          <path class="stick" key={place.what} d={`M${x} ${yOf(layout, place.head.level_m) - 24}V${yOf(layout, place.foot.level_m)}`} />
        ))}
        {level !== null && dips.map((dip) => <Dimension key={dip.place.what} dip={dip} layout={layout} level={level} />)}
        {level !== null && dips.map((dip) => <Plate key={dip.place.what} dip={dip} layout={layout} level={level} />)}
      </g>
      {apart(dips, plate.most).map((group) => (
        <text
          key={group[0]?.place.what}
          x={group.reduce((sum, d) => sum + d.x, 0) / group.length}
          y={Math.min(...group.map((d) => yOf(layout, d.place.head.level_m))) - 30}
          text-anchor="middle"
          class="b"
        >
          {group.map((d) => placeName(d.place)).join(" · ")}
        </text>
      ))}
    </>
  );
}

/** From where to where a dimension reaches, px; and where its line stands. */
function reachOf({ place, x, way }: Dip, layout: Layout, level: number) {
  const [foot, head] = [yOf(layout, place.foot.level_m), yOf(layout, place.head.level_m)];
  return { foot, top: Math.min(foot, Math.max(head, yOf(layout, level))), line: x + way * aside };
}

function Dimension({ dip, layout, level }: { dip: Dip; layout: Layout; level: number }) {
  const { foot, top, line } = reachOf(dip, layout, level);
  return <path class="dimension" d={`M${line - 4} ${top}H${line + 4}M${line - 4} ${foot}H${line + 4}M${line} ${top}V${foot}`} />;
}

function Plate({ dip, layout, level }: { dip: Dip; layout: Layout; level: number }) {
  const system = units.value;
  const { place, way, width, row } = dip;
  const { foot, top, line } = reachOf(dip, layout, level);
  const left = way > 0 ? line + on : line - on - width;
  const middle = (top + foot) / 2 + row * (plate.height + plate.gap);
  return (
    <>
      <rect class="plate" x={left} y={middle - plate.height / 2} width={width} height={plate.height} rx="2" />
      <text x={left + 6} y={middle - 3} class="b mark">
        {figure("bore", system, depthAt(place, level))} {unitOf("bore", system)}
      </text>
      <text x={left + 6} y={middle + 11}>
        {placeName(place)}
      </text>
    </>
  );
}

/** The depth line: dragged, or moved with the arrow keys. */
function DepthLine({ layout, stick, level, onDepth }: { layout: Layout; stick: TankPlace; level: number | null; onDepth: (depth: number) => void }) {
  const handle = useRef<SVGGElement>(null);
  const system = units.value;
  const shown = level ?? stick.foot.level_m;
  const depth = depthAt(stick, shown);
  const y = yOf(layout, shown);
  const to = (si: number) => onDepth(Math.min(stick.stick_m, Math.max(0, si)));
  const [fine, coarse] = steps[system];
  const snapped = (si: number) => siOf("bore", system, Math.round(valueIn("bore", system, si) / fine) * fine);
  const drag = (event: PointerEvent) => {
    const box = handle.current?.ownerSVGElement?.getBoundingClientRect();
    if (box && handle.current?.hasPointerCapture(event.pointerId)) to(snapped(depthAt(stick, levelAt(layout, event.clientY - box.top))));
  };
  const press = (event: KeyboardEvent) => {
    const step = siOf("bore", system, event.shiftKey ? coarse : fine);
    const moves: Record<string, number> = { ArrowUp: depth + step, ArrowRight: depth + step, ArrowDown: depth - step, ArrowLeft: depth - step, Home: 0, End: stick.stick_m };
    const next = moves[event.key];
    if (next === undefined) return;
    event.preventDefault();
    to(snapped(next));
  };
  return (
    <g
      ref={handle}
      class="depthline"
      role="slider"
      tabIndex={0}
      aria-label={`Depth at the ${stick.what}`}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={Number(valueIn("bore", system, stick.stick_m).toFixed(2))}
      aria-valuenow={Number(valueIn("bore", system, depth).toFixed(2))}
      aria-valuetext={`${figure("bore", system, depth)} ${unitOf("bore", system)}`}
      onKeyDown={press}
      onPointerDown={(e) => {
        e.preventDefault();
        handle.current?.focus();
        handle.current?.setPointerCapture(e.pointerId);
      }}
      onPointerMove={drag}
    >
      <path class="grip" d={`M0 ${y}H${layout.width}`} />
      <path class="line" d={`M8 ${y}H${layout.width - 8}`} />
      <path class="tab" d={`M6 ${y - 7}h11l7 7-7 7h-11z`} />
    </g>
  );
}
