// The maps of the cure as a figure of the page: with what is poured when.

import { later } from "../clock";
import type { Plan } from "../plan";
import { drawings, fields, plan } from "../state";
import { Cure } from "./cure";
import { shoresOf } from "./shores";
import type { Moment } from "./timebar";

export function CureFigure() {
  const [f, p] = [fields.value, plan.value];
  if (!f || !p) return null;
  const poured = p.calendar.steps.find((s) => s.id === "lift-1")?.end ?? "";
  const clock = (h: number) => (asPlanned(p) ? later(poured, h) : "");
  return <Cure fields={f} moments={momentsOf(p)} shores={shoresOf(drawings.value.get("plan-finished"))} peakAt={p.resin.cure.peak_at_h} clock={clock} />;
}

export function momentsOf(p: Plan): Moment[] {
  const pours = p.resin.lifts.map((l) => ({ name: `Lift ${l.number}`, hour: l.at_h }));
  return [...pours, { name: "Peak", hour: p.resin.cure.peak_at_h }];
}

const SLACK = 1; // h by which the calendar may pour at another time than was computed

// asPlanned tells whether the calendar pours every lift when the cure was computed for.
export function asPlanned(p: Plan): boolean {
  return p.resin.lifts.every((l) => Math.abs(lateness(p, l.number)) <= SLACK);
}

// lateness returns by how many hours the calendar pours a lift later than the cure was
// computed for, counted from the first pour; 0 where one of the two has no time.
export function lateness(p: Plan, lift: number): number {
  const hourOf = (n: number) => p.calendar.steps.find((s) => s.id === `lift-${n}` && s.start !== "")?.start_h;
  const [first, own] = [hourOf(1), hourOf(lift)];
  const at = p.resin.lifts.find((l) => l.number === lift)?.at_h;
  return first === undefined || own === undefined || at === undefined ? 0 : own - first - at;
}
