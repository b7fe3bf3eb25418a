import { amount, digits, figure, ticks, unitOf, valueIn } from "../../../draw/numbers";
import { units } from "../../../state/look";
import type { KnownTank, TankPlace } from "../documents";

const box = { height: 300, left: 58, right: 16, top: 14, foot: 36 };

/** Volume against depth at the chart's place, 90 and 95 %, what a level chart would tell, and where the depth line is. */
export function Curve({ tank, stick, width }: { tank: KnownTank; stick: TankPlace | undefined; width: number }) {
  const system = units.value;
  const { rows, place: what } = tank.chart;
  const last = rows.at(-1);
  if (!last || width <= 0) return null;
  const [deep, full] = [valueIn("bore", system, last.depth_m), valueIn("volume", system, tank.capacity_m3)];
  const across = ticks(deep, 6);
  const up = ticks(full, 5);
  const [most, high] = [deep, Math.max(full, up.at(-1) ?? full)];
  const x = (si: number) => box.left + (valueIn("bore", system, si) / most) * (width - box.left - box.right);
  const y = (si: number) => box.height - box.foot - (valueIn("volume", system, si) / high) * (box.height - box.top - box.foot);
  const line = (of: (row: (typeof rows)[number]) => number | null) => {
    let pen = "M";
    return rows
      .map((row) => {
        const value = of(row);
        if (value === null) return "";
        const out = `${pen}${x(row.depth_m).toFixed(1)} ${y(value).toFixed(1)}`;
        pen = "L";
        return out;
      })
      .join("");
  };
  const now = tank.now;
  const depth = stick?.what === what ? stick.depth_m : null;
  return (
    <svg class="chart tankcurve" width={width} height={box.height} role="img" aria-label={summary(tank)}>
      {up.map((value) => {
        const at = box.height - box.foot - (value / high) * (box.height - box.top - box.foot);
        return (
          <g key={value}>
            <path class="grid" d={`M${box.left} ${at}H${width - box.right}`} />
            <text x={box.left - 6} y={at + 4} text-anchor="end">
              {digits(value, 0)}
            </text>
          </g>
        );
      })}
      {across.filter((value) => value <= most).map((value) => (
        <text key={value} x={box.left + (value / most) * (width - box.left - box.right)} y={box.height - box.foot + 15} text-anchor="middle">
          {digits(value, 0)}
        </text>
      ))}
      <text x={width - box.right} y={box.height - 5} text-anchor="end">
        {unitOf("bore", system)}, at the {what.replaceAll(", ", " and ")}
      </text>
      {tank.rooms.map((room) => (
        <g class="shareline" key={room.share}>
          <path d={`M${box.left} ${y(room.volume_m3)}H${width - box.right}`} />
          <text x={box.left + 6} y={y(room.volume_m3) + (room.share > 0.92 ? -4 : 13)}>
            {figure("share", system, room.share, 0)} %, {amount(system, room.volume_m3)} {unitOf("volume", system)}
          </text>
        </g>
      ))}
      <path class="levelchart" d={line((row) => row.level_chart_m3)} />
      <path class="curveline" d={line((row) => row.volume_m3)} />
      {now && depth !== null && (
        <g class="depthnow">
          <path d={`M${x(depth)} ${box.height - box.foot}V${y(now.volume_m3)}H${box.left}`} />
          <circle cx={x(depth)} cy={y(now.volume_m3)} r="4.5" />
        </g>
      )}
    </svg>
  );
}

function summary(tank: KnownTank): string {
  const system = units.value;
  const said = (si: number) => `${amount(system, si)} ${unitOf("volume", system)}`;
  const last = tank.chart.rows.at(-1);
  return `Volume against depth at the ${tank.chart.place}: from nothing to ${said(tank.capacity_m3)} at ${figure("bore", system, last?.depth_m)} ${unitOf("bore", system)}.`;
}
