// @vitest-environment node
// Reads cutting programs with readers from outside and judges where they send the cutter.
import { readFileSync } from "node:fs";
import { parseStringSync } from "gcode-parser";
import Toolpath from "gcode-toolpath";
import { describe, expect, it } from "vitest";

type Place = { x: number; y: number; z: number };
type Move = { motion: string; from: Place; to: Place; centre?: Place };
type Sample = {
  file: string; cutter_mm: number; tolerance_mm: number; bottom_z_mm: number; safe_z_mm: number; cut_length_mm: number; moves: number;
  box: { min: [number, number]; max: [number, number] }; rings: [number, number][][];
};

const folder = new URL("../../internal/stage/toolpath/testdata/", import.meta.url);
const text = (name: string) => readFileSync(new URL(name, folder), "utf8");
const samples = JSON.parse(text("programs.json")) as Sample[];

function movesOf(program: string): Move[] {
  const moves: Move[] = [];
  const add = (modal: { motion: string }, from: Place, to: Place, centre?: Place) =>
    moves.push({ motion: modal.motion, from: { ...from }, to: { ...to }, ...(centre && { centre: { ...centre } }) });
  new Toolpath({ addLine: add, addArcCurve: add }).loadFromStringSync(program);
  return moves;
}

/** Places along a move about every millimetre. */
function along(m: Move): Place[] {
  const c = m.centre;
  if (!c) {
    const n = 1 + Math.floor(Math.hypot(m.to.x - m.from.x, m.to.y - m.from.y));
    return Array.from({ length: n + 1 }, (_, k) => mix(m.from, m.to, k / n));
  }
  const start = Math.atan2(m.from.y - c.y, m.from.x - c.x);
  const end = Math.atan2(m.to.y - c.y, m.to.x - c.x);
  const full = 2 * Math.PI;
  const turn = m.motion === "G3" ? (end - start + full) % full || full : -((start - end + full) % full || full);
  const radius = Math.hypot(m.from.x - c.x, m.from.y - c.y);
  const n = 1 + Math.floor(Math.abs(turn) * radius);
  return Array.from({ length: n + 1 }, (_, k) => {
    const a = start + (turn * k) / n;
    return { x: c.x + radius * Math.cos(a), y: c.y + radius * Math.sin(a), z: m.from.z + ((m.to.z - m.from.z) * k) / n };
  });
}

const mix = (a: Place, b: Place, t: number) => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), z: a.z + t * (b.z - a.z) });

/** Distance from a place to the outlines, and whether it lies in foam that is to stay. */
function judge(p: Place, rings: [number, number][][]): { distance: number; inside: boolean } {
  let distance = Infinity;
  let winding = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [ax, ay] = ring[i]!;
      const [bx, by] = ring[(i + 1) % ring.length]!;
      const [vx, vy] = [bx - ax, by - ay];
      const t = Math.max(0, Math.min(1, ((p.x - ax) * vx + (p.y - ay) * vy) / (vx * vx + vy * vy)));
      distance = Math.min(distance, Math.hypot(ax + t * vx - p.x, ay + t * vy - p.y));
      const left = vx * (p.y - ay) - vy * (p.x - ax);
      if (ay <= p.y && by > p.y && left > 0) winding++;
      if (ay > p.y && by <= p.y && left < 0) winding--;
    }
  }
  return { distance, inside: winding > 0 };
}

describe.each(samples)("$file, read by a reader from outside", (s) => {
  const moves = movesOf(text(s.file)); // this reader turns inches into millimetres

  it("has only known words", () => {
    const words = parseStringSync(text(s.file)).flatMap((l) => l.words.map((w) => w[0]));
    expect([...new Set(words)].toSorted().join("")).toBe("FGIJMSXYZ");
  });

  it("has every move", () => expect(moves.length).toBe(s.moves + 1));

  it("keeps the cutter off the parts", () => {
    const radius = s.cutter_mm / 2;
    const low = moves.filter((q) => q.motion !== "G0" && Math.min(q.from.z, q.to.z) < s.bottom_z_mm / 2);
    for (const m of low) {
      const judged = along(m).map((p) => judge(p, s.rings));
      const near = Math.min(...judged.map((j) => j.distance));
      if (judged.some((j) => j.inside) || near < radius - s.tolerance_mm) expect.fail(`${JSON.stringify(m)} comes within ${near} mm`);
    }
    expect(low.length).toBeGreaterThan(100);
  }, 20_000);

  it("cuts as deep and as long as it says", () => {
    expect(Math.min(...moves.map((m) => m.to.z))).toBeCloseTo(s.bottom_z_mm, 3);
    let length = 0;
    for (const m of moves.filter((q) => q.motion !== "G0")) {
      const p = along(m);
      for (let i = 1; i < p.length; i++) length += Math.hypot(p[i]!.x - p[i - 1]!.x, p[i]!.y - p[i - 1]!.y, p[i]!.z - p[i - 1]!.z);
    }
    expect(length / s.cut_length_mm).toBeGreaterThan(0.98);
    expect(length / s.cut_length_mm).toBeLessThan(1.001);
  });

  it("moves rapidly only above the sheet, or straight up", () => {
    for (const m of moves.slice(2).filter((q) => q.motion === "G0")) {
      const level = Math.min(m.from.z, m.to.z) >= s.safe_z_mm - 1e-3;
      const up = m.from.x === m.to.x && m.from.y === m.to.y && m.to.z > m.from.z;
      expect(level || up, JSON.stringify(m)).toBe(true);
    }
  });
});
