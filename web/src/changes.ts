// What an edit changed, in numbers: "resin to order 5.9 → 6.2 l".

import { count, duration, fixed, length, mass, systemOf, volume } from "./measure";
import { computed, type Plan, type Severity } from "./plan";

export interface Change {
  what: string;
  from: string;
  to: string;
}

interface Fact { what: string; text: string }

const NONE = "none";

// facts lists what is compared, as the maker reads it, so that a change too small to
// be read is no change.
function facts(plan: Plan): Fact[] {
  const p = plan.piece;
  const s = systemOf(p.units);
  const when = (stage: string, text: string) => (computed(plan, stage) ? text : "not computed");
  return [
    { what: "length", text: length(p.length_mm, s).main },
    { what: "width", text: length(p.width_mm, s).main },
    { what: "height", text: length(p.height_mm, s).main },
    { what: "shell", text: length(p.shell_mm, s).main },
    { what: "board", text: length(p.board_mm, s).main },
    { what: "basin", text: when("relief", volume(plan.relief.volume_l, s).main) },
    { what: "basin depth", text: when("relief", length(plan.relief.depth_mm, s).main) },
    { what: "foam parts", text: when("knockout", String(plan.knockout.parts.length)) },
    { what: "concrete in the shell", text: when("concrete", volume(plan.concrete.shell_volume_l, s).main) },
    { what: "batches", text: when("concrete", String(plan.concrete.batches.length)) },
    { what: "resin to order", text: when("resin", volume(plan.resin.order_l, s).main) },
    { what: "lifts", text: when("resin", liftTexts(plan)) },
    { what: "turned over", text: when("structure", mass(plan.structure.flip_kg, s).main) },
    { what: "delivered", text: when("structure", mass(plan.structure.delivered_kg, s).main) },
    { what: "hands-on work", text: when("calendar", duration(plan.calendar.hands_h)) },
    { what: "done", text: when("calendar", plan.calendar.finish || "no date") },
    { what: "materials", text: when("cost", fixed(plan.cost.total, 2)) },
    ...(["stop", "caution"] as const).map((sev) => ({ what: `${sev} findings`, text: String(severityCount(plan, sev)) })),
  ];
}

function liftTexts(plan: Plan): string {
  const depths = plan.resin.lifts.map((l) => fixed(l.depth_mm, 1)).join(" + ");
  return depths === "" ? NONE : `${depths} mm`;
}

export function severityCount(plan: Plan, severity: Severity): number {
  return plan.findings.filter((f) => f.severity === severity).length;
}

// changes lists what differs between two plans.
export function changes(before: Plan, after: Plan): Change[] {
  const old = new Map(facts(before).map((f) => [f.what, f.text]));
  const out: Change[] = [];
  for (const { what, text } of facts(after)) {
    const from = old.get(what) ?? NONE;
    if (from !== text) out.push({ what, from: withoutUnit(from, text), to: text });
  }
  return out;
}

const NUMBER_UNIT = /^(-?[\d. +/]*\d) ?(\D*)$/;

// withoutUnit drops the unit of `from` where `to` repeats it.
export function withoutUnit(from: string, to: string): string {
  const [a, b] = [NUMBER_UNIT.exec(from), NUMBER_UNIT.exec(to)];
  return a?.[1] !== undefined && b && a[2] === b[2] ? a[1] : from;
}

// sentence says the changes in one line, the first `most` of them.
export function sentence(list: Change[], most = 6): string {
  if (list.length === 0) return "Read again: no number changed.";
  const parts = list.slice(0, most).map((c) => `${c.what} ${c.from} → ${c.to}`);
  if (list.length > most) parts.push(`and ${count(list.length - most, "more", "more")}`);
  return parts.join(", ");
}
