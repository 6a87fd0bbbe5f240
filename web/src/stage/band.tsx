// How hot, on one line: the band, the limit, and what other rooms do.

import { count, fixed, systemOf, temperature } from "../measure";
import type { Plan } from "../plan";

const W = 360;
const LEFT = 92; // room for the names of the rows
const RIGHT = 4;
const ROW = 22;

// scaleOf returns round temperatures around everything that is shown, C.
export function scaleOf(values: number[]): { low: number; high: number; step: number } {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const step = most - least > 60 ? 20 : 10;
  return { low: Math.floor((least - 1) / step) * step, high: Math.ceil((most + 1) / step) * step, step };
}

export function Band({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const k = plan.resin.cure;
  const rooms = k.rooms;
  const { low, high, step } = scaleOf([plan.piece.room_temp_c, k.peak_low_c, k.peak_high_c, k.limit_c, ...rooms.map((r) => r.peak_c)]);
  const x = (c: number) => LEFT + ((c - low) / (high - low)) * (W - LEFT - RIGHT);
  const t = (c: number) => temperature(Math.round(c), s).main.replace(".0", "");
  const ticks = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step);
  const foot = 30 + rooms.length * ROW;
  const words = `Peak ${t(k.peak_c)}, likely ${t(k.peak_low_c)} to ${t(k.peak_high_c)} over ${count(k.band_members, "run")} with other rooms, rates, films and depths; ${t(k.limit_c)} is the limit asked for.`;
  return (
    <figure class="band">
      <figcaption>{words}</figcaption>
      <svg viewBox={`0 0 ${W} ${foot + 22}`} role="img" aria-label={`${words} ${rooms.map((r) => `In a room of ${t(r.room_c)}: ${t(r.peak_c)}.`).join(" ")}`}>
        <path class="band-over" d={`M${x(k.limit_c)} 4H${W - RIGHT}V${foot}H${x(k.limit_c)}Z`} />
        <path class="band-limit" d={`M${x(k.limit_c)} 4V${foot}`} />
        <path class="band-bar" d={`M${x(k.peak_low_c)} 16H${Math.max(x(k.peak_high_c), x(k.peak_low_c) + 2)}`} />
        <circle class="band-peak" cx={x(k.peak_c)} cy="16" r="6" />
        <text class="band-tick" x="0" y="20.5">as planned</text>
        <text x={x(k.peak_high_c) + 6} y="20.5">{t(k.peak_c)}</text>
        {rooms.map((r, i) => (
          <g key={r.room_c}>
            <text class="band-tick" x="0" y={42.5 + i * ROW}>room {t(r.room_c)}</text>
            <circle class="band-room" cx={x(r.peak_c)} cy={38 + i * ROW} r="4.5" />
            <text x={x(r.peak_c) + (x(r.peak_c) > W - 60 ? -9 : 9)} y={42.5 + i * ROW} text-anchor={x(r.peak_c) > W - 60 ? "end" : "start"}>{t(r.peak_c)}</text>
          </g>
        ))}
        <path class="band-axis" d={`M${LEFT} ${foot + 2}H${W - RIGHT}`} />
        {ticks.map((c, i) => <text key={c} class="band-tick" x={x(c)} y={foot + 17} text-anchor={i === ticks.length - 1 ? "end" : "middle"}>{fixed(s === "in" ? (c * 9) / 5 + 32 : c, 0)}{i === ticks.length - 1 ? (s === "in" ? " °F" : " °C") : ""}</text>)}
      </svg>
    </figure>
  );
}
