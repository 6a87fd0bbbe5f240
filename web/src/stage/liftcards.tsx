// One card a lift: when, how much, on the scale, and what comes after.

import { forecast, later } from "../clock";
import { lateness } from "../cure/figure";
import { about, count, fixed, grams, length, mass, pounds, systemOf, temperature, volume, type System } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Lift, Moment, Plan, Zone } from "../plan";

export function LiftCards({ plan }: { plan: Plan }) {
  const lifts = plan.resin.lifts;
  return <ol class="lifts" aria-label="Lifts, in the order they are poured">{lifts.map((l) => <li key={l.number}><Card plan={plan} lift={l} of={lifts.length} /></li>)}</ol>;
}

function Card({ plan, lift: l, of }: { plan: Plan; lift: Lift; of: number }) {
  const s = systemOf(plan.piece.units);
  const step = plan.calendar.steps.find((x) => x.id === `lift-${l.number}`);
  const start = later(step?.start ?? "", 0);
  return (
    <>
      <h4>Lift {l.number} of {of}{start && <span class="lift-when">{start}</span>}</h4>
      <dl class="lift-numbers">
        <div><dt>Fill to</dt><dd><b>{length(l.to_mm, s).main}</b><small>{length(l.to_mm, s).other}, {length(l.depth_mm, s).main} deep</small></dd></div>
        <div><dt>Pour</dt><dd><b>{volume(l.pour_l, s).main}</b><small>{volume(l.pour_l, s).other}, {mass(l.mass_kg, s).main}</small></dd></div>
        {l.peak_c > 0 && <div><dt>Peak</dt><dd><b>{temperature(l.peak_c, s).main}</b><small>{about(l.peak_at_h)} after its pour</small></dd></div>}
      </dl>
      <Buckets lift={l} system={s} />
      <Facts rows={afterwards(plan, l, step?.end ?? "")} />
      <Zones list={l.zones ?? []} system={s} caption={`Lift ${l.number} by depth of resin, hours after its pour`} />
    </>
  );
}

// afterwards lists what is done and looked for once a lift is in, as times of day
// where the calendar has one: poured is when the last bucket is in.
export function afterwards(plan: Plan, l: Lift, poured: string): [string, string][] {
  const when = (h: number) => [later(poured, forecast(h)), about(h)].filter((t) => t !== "").join(", ");
  const out: [string, string][] = [];
  const [bucket] = l.batches;
  if (bucket?.stir_h) out.push(["Stir each bucket", `${fixed(bucket.stir_h * 60, 0)} min${bucket.keeps_h ? `, and pour it within ${about(bucket.keeps_h)}` : ""}`]);
  if (l.hold_back_l) out.push(["Hold back", `${volume(l.hold_back_l, systemOf(plan.piece.units)).main} of it for topping up`]);
  if (l.tint_kg > 0) out.push(["Tint in all", `${fixed(1000 * l.tint_kg, 1)} g, the same share in every bucket`]);
  if (l.torch_h.length > 0) out.push(["Flame over it", l.torch_h.map((h) => (poured ? later(poured, forecast(h)).split(" ").at(-1) : about(h))).join(", ")]);
  const next = plan.resin.lifts.find((x) => x.number === l.number + 1);
  if (next) out.push(...recoat(plan, l, next, when));
  else out.push([l.gels_h > 0 ? "Worked on from" : "Typical wait", when(l.wait_h)]);
  return out;
}

// recoat says when the next lift goes on, what the calendar plans, and what to do late.
function recoat(plan: Plan, l: Lift, next: Lift, when: (h: number) => string): [string, string][] {
  const out: [string, string][] = [];
  const from = l.recoat_from && !l.recoat_from.later ? l.recoat_from.h : l.wait_h;
  if (l.scuff) out.push(["Next lift from", `${when(from)}: sand this one dull first`]);
  else {
    out.push(["Next lift from", when(from)]);
    out.push(["Bonds by itself until", untilText(l, when)]);
    out.push(["If later", "let it harden, sand it dull, wipe it, then pour"]);
  }
  const late = lateness(plan, next.number) - lateness(plan, l.number);
  if (Math.abs(late) > 1) out.push(["Not as computed", `the calendar pours lift ${next.number} ${about(Math.abs(late))} ${late > 0 ? "later" : "earlier"} than the cure was computed for`]);
  return out;
}

function untilText(l: Lift, when: (h: number) => string): string {
  if (l.recoat_until) return l.recoat_until.later ? `longer than ${about(l.recoat_until.h)}` : when(l.recoat_until.h);
  if (l.bonds_until_h > 0) return when(l.bonds_until_h);
  return l.gels_h > 0 ? "the next pour and past it" : "what the data sheet says";
}

// momentText writes hours, or that they do not come within those that were computed.
export function momentText(m: Moment): string {
  return m.later ? `> ${about(m.h)}` : about(m.h);
}

// Zones tells deep and shallow parts of a surface apart.
export function Zones({ list, system: s, caption }: { list: Zone[]; system: System; caption: string }) {
  if (list.length === 0) return null;
  return (
    <Table caption={caption} rows={list} columns={[
      { head: "Part", words: true, cell: (z) => <>{z.name}<small class="q-other">{length(z.resin_from_mm, s).main.replace(/ (mm|in)$/, "")} to {length(z.resin_to_mm, s).main}</small></> },
      { head: "Gelled", cell: (z) => momentText(z.gels) },
      { head: "Bonds until", cell: (z) => (z.scuff ? "sand it" : momentText(z.bonds_until)) },
      { head: "Hard", cell: (z) => momentText(z.hard) },
      { head: "Sandable", cell: (z) => momentText(z.sandable) },
    ]} />
  );
}

function Buckets({ lift, system }: { lift: Lift; system: System }) {
  if (lift.batches.length === 0) return null;
  return (
    <Table caption={`${count(lift.batches.length, "bucket")}, the scale at zero with the empty one on it`} rows={lift.batches} columns={[
      { head: "Bucket", words: true, cell: (b) => b.number },
      { head: "Volume", cell: (b) => <Q of={volume(b.volume_l, system)} /> },
      { head: "Scale after A", cell: (b) => <strong><Q of={weight(b.scale_a_kg, system)} /></strong> },
      { head: "after A and B", cell: (b) => <strong><Q of={weight(b.scale_ab_kg, system)} /></strong> },
    ]} />
  );
}

export function weight(kg: number, system: System) {
  return system === "mm" ? { main: grams(kg), other: pounds(kg) } : { main: pounds(kg), other: grams(kg) };
}
