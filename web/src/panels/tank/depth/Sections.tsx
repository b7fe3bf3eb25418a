import { useRef } from "preact/hooks";
import { figure, siOf, unitOf, valueIn } from "../../../draw/numbers";
import { units } from "../../../state/look";
import type { KnownTank, TankPlace } from "../documents";
import { apart, depthAt, halfWidth, layoutOf, levelAt, levelOf, middleAt, pathOf, xOf, yOf, type Layout } from "./geometry";

/** Steps of the depth line: with arrow keys, and with Shift, in the unit shown (in, mm). */
const steps = { us: [0.125, 5], si: [2, 100] } as const;

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
  const layout = layoutOf(tank, width);
  if (!layout) return null;
  const middle = middleAt(stick, tank);
  return (
    <svg class="chart tanksections" width={layout.width} height={layout.height} role="group" aria-label="Section and long section to one scale">
      <Across tank={tank} tone={tone} layout={layout} middle={middle} level={level} />
      <Along tank={tank} tone={tone} layout={layout} level={level} />
      <Devices tank={tank} layout={layout} />
      <Dips tank={tank} layout={layout} level={level} stick={stick} />
      <DepthLine layout={layout} stick={stick} level={level} onDepth={onDepth} />
      <text x={layout.middle} y={layout.height - 10} text-anchor="middle" class="b">
        Section at the {stick.what}
      </text>
      <text x={xOf(layout, (tank.outline[0]?.along_m ?? 0) + tank.full_level_m)} y={layout.height - 10}>
        <tspan class="b">Long section</tspan>, {tank.shape}, true to scale
      </text>
    </svg>
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

const plate = { width: 96, height: 34 };

/** Depths on the sticks, as dimension lines with the figure on a plate. */
function Dips({ tank, layout, level, stick }: { tank: KnownTank; layout: Layout; level: number | null; stick: TankPlace }) {
  const system = units.value;
  const marks = tank.places.map((place) => ({ place, x: xOf(layout, (place.foot.along_m + place.head.along_m) / 2) }));
  return (
    <>
      {apart(marks, plate.width + 8).map((group) => {
        const chosen = group.find((m) => m.place === stick) ?? group[0];
        if (!chosen) return null;
        const { place, x } = chosen;
        const names = group.map((m) => m.place.what).join(", ");
        const [foot, top] = [yOf(layout, place.foot.level_m), level === null ? null : yOf(layout, Math.max(level, place.foot.level_m))];
        const right = x + 8 + plate.width < layout.width;
        const left = right ? x + 6 : x - 6 - plate.width;
        return (
          <g class="dip" key={place.what}>
            {group.map((m) => (
              <path class="stick" key={m.place.what} d={`M${m.x} ${yOf(layout, m.place.head.level_m) - 26}V${yOf(layout, m.place.foot.level_m)}`} />
            ))}
            <text x={x} y={yOf(layout, place.head.level_m) - 32} text-anchor="middle" class="b">
              {names}
            </text>
            {top !== null && (
              <>
                <path class="dimension" d={`M${x - 4} ${top}H${x + 4}M${x - 4} ${foot}H${x + 4}M${x} ${top}V${foot}`} />
                <rect class="plate" x={left} y={(top + foot) / 2 - plate.height / 2} width={plate.width} height={plate.height} rx="2" />
                <text x={left + 6} y={(top + foot) / 2 - 3} class="b mark">
                  {figure("bore", system, depthAt(place, level ?? 0))} {unitOf("bore", system)}
                </text>
                <text x={left + 6} y={(top + foot) / 2 + 11}>
                  at the {place.what.length > 11 ? `${place.what.slice(0, 10)}…` : place.what}
                </text>
              </>
            )}
          </g>
        );
      })}
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
