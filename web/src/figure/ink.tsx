// Inks a display list: one component per kind of item.

import type { Dimension, Drawing, Item, Lettering, Path, Point, Spot, Style } from "../drawing";
import { letterSize, type Line } from "./lettering";
import { lines, rule, type Sheet } from "./sheet";

interface Inked<T> { of: T; style: Style; sheet: Sheet }

// Ink draws all items of a drawing in their order; lines holds its level texts, kept
// apart.
export function Ink({ drawing, sheet, lines: placed }: { drawing: Drawing; sheet: Sheet; lines: Map<number, Line> }) {
  return (
    <g>
      {(drawing.items ?? []).map((item, i) => (
        <One key={i} item={item} sheet={sheet} line={placed.get(i)} />
      ))}
    </g>
  );
}

function One({ item, sheet, line }: { item: Item; sheet: Sheet; line: Line | undefined }) {
  const { style } = item;
  if (item.path) return <Lines of={item.path} style={style} sheet={sheet} />;
  if (item.text) return <Letters of={item.text} style={style} sheet={sheet} line={line} />;
  if (item.dimension) return <Measured of={item.dimension} style={style} sheet={sheet} />;
  if (item.spot) return <Circled of={item.spot} style={style} sheet={sheet} />;
  return null;
}

function Lines({ of, style, sheet }: Inked<Path>) {
  const d = lines(of.rings, of.closed, sheet);
  return (
    <g class={`ink ${style}`} style={of.shade ? { "--shade": of.shade } : undefined}>
      <path class={of.fill ? "filled" : "line"} fill-rule="evenodd" d={d} />
      {of.hatch && <path class="hatched" fill-rule="evenodd" d={d} />}
    </g>
  );
}

const ANCHORS = new Set(["start", "middle", "end"]);

function Letters({ of, style, sheet, line }: Inked<Lettering> & { line: Line | undefined }) {
  const [x, y] = line ? [line.x, line.y] : sheet.at(of.at);
  const anchor = ANCHORS.has(of.anchor) ? of.anchor : "start";
  return (
    <text class={`ink letters ${style}`} x={x} y={y} font-size={letterSize(of.size, sheet)} text-anchor={anchor}
      transform={of.turn === 0 ? undefined : `rotate(${-of.turn} ${x} ${y})`}>
      {line && line.rows.length > 1 ? line.rows.map((row, i) => <tspan key={row} x={x} dy={i === 0 ? 0 : "1.2em"}>{row}</tspan>) : of.text}
    </text>
  );
}

function Measured({ of, style, sheet }: Inked<Dimension>) {
  const r = rule(of, sheet);
  if (!r) return null;
  const [x, y] = r.text;
  return (
    <g class={`ink dimension ${style}`}>
      <path class="line" d={`${segment(r.fromA, past(r.fromA, r.a))}${segment(r.fromB, past(r.fromB, r.b))}${segment(r.a, r.b)}`} />
      <path class="arrow" d={arrow(r.a, r.b) + arrow(r.b, r.a)} />
      <text class="letters" x={x} y={y} font-size={12.5} text-anchor="middle" transform={`rotate(${r.turn} ${x} ${y})`}>
        {of.text}
      </text>
    </g>
  );
}

function segment(a: Point, b: Point): string {
  return `M${a[0]} ${a[1]}L${b[0]} ${b[1]}`;
}

// past carries an extension line a little beyond the dimension line.
function past(from: Point, to: Point): Point {
  const len = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const k = len > 0 ? (len + 3) / len : 1;
  return [from[0] + (to[0] - from[0]) * k, from[1] + (to[1] - from[1]) * k];
}

// arrow is a slender head at `tip`, pointing away from `tail`.
function arrow(tip: Point, tail: Point): string {
  const len = Math.hypot(tail[0] - tip[0], tail[1] - tip[1]);
  const long = Math.min(8, len / 3);
  const [ux, uy] = [(tail[0] - tip[0]) / len, (tail[1] - tip[1]) / len];
  const [bx, by] = [tip[0] + ux * long, tip[1] + uy * long];
  const half = long / 5;
  return `M${tip[0]} ${tip[1]}L${bx - uy * half} ${by + ux * half}L${bx + uy * half} ${by - ux * half}Z`;
}

function Circled({ of, style, sheet }: Inked<Spot>) {
  const [x, y] = sheet.at(of.at);
  const r = Math.max(of.radius * sheet.scale, 9);
  return (
    <g class={`ink spot ${style}`}>
      <circle cx={x} cy={y} r={r} />
      {of.label && <text class="letters" x={x} y={y - r - 4} font-size={12} text-anchor="middle">{of.label}</text>}
    </g>
  );
}
