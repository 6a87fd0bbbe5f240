// Litres against depth of resin, with its kinks and the levels of the lifts.

import { fixed, length, systemOf, volume } from "../measure";
import type { Lift, Plan } from "../plan";

const W = 420;
const H = 190;
const LEFT = 58;
const RIGHT = 78;
const TOP = 18;
const FOOT = 30;

export function FillCurve({ plan, lifts = [] }: { plan: Plan; lifts?: Lift[] }) {
  const s = systemOf(plan.piece.units);
  const { fill, depth_mm, volume_l } = plan.relief;
  if (fill.length < 2 || !(depth_mm > 0) || !(volume_l > 0)) return null;
  const x = (l: number) => LEFT + (l / volume_l) * (W - LEFT - RIGHT);
  const y = (d: number) => H - FOOT - (d / depth_mm) * (H - FOOT - TOP);
  const d = fill.map((f, i) => `${i === 0 ? "M" : "L"}${fixed(x(f.volume_l), 1)} ${fixed(y(f.depth_mm), 1)}`).join("");
  const title = `Fill curve: ${fill.map((f) => `${length(f.depth_mm, s).main} holds ${volume(f.volume_l, s).main}`).join(", ")}`;
  return (
    <figure class="curve">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={title}>
        <path class="axis" d={`M${LEFT} ${TOP}V${H - FOOT}H${W - RIGHT}`} />
        {lifts.map((l) => (
          <g key={l.number} class="level">
            <path d={`M${LEFT} ${y(l.to_mm)}H${W - RIGHT}`} />
            <text x={W - RIGHT + 5} y={y(l.to_mm) + 4}>lift {l.number}</text>
          </g>
        ))}
        <path class="curve-line" d={d} />
        {fill.map((f) => (
          <g key={f.depth_mm}>
            <circle class="kink" cx={x(f.volume_l)} cy={y(f.depth_mm)} r="3" />
            <text x={LEFT - 6} y={y(f.depth_mm) + 4} text-anchor="end">{length(f.depth_mm, s).main.replace(" mm", "")}</text>
          </g>
        ))}
        <text x={LEFT - 6} y={10} text-anchor="end">{s}</text>
        {[0, volume_l].map((l) => <text key={l} x={x(l)} y={H - FOOT + 16} text-anchor="middle">{l === 0 ? "0" : volume(l, s).main}</text>)}
      </svg>
      <figcaption>Fill curve: depth of resin above the deepest floor against its volume, kinks at the terraces{lifts.length > 0 ? ", a dashed line where each lift ends" : ""}.</figcaption>
    </figure>
  );
}
