// What the cure does, in numbers, and the other ways of pouring.

import { about, count, duration, fixed, length, systemOf, temperature } from "../measure";
import { Facts, Table } from "../parts";
import type { Alternative, Plan } from "../plan";
import { Band } from "./band";
import { FigureLink } from "./figurelink";

export function CureFacts({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const { cure: k } = plan.resin;
  if (!k.computed) return <p class="quiet">The cure is not computed: waits are typical, and the data sheet and a touch test decide.</p>;
  const t = (c: number) => temperature(c, s).main;
  return (
    <>
      <h4>How hot, how long</h4>
      <Band plan={plan} />
      {k.rooms.length > 0 && (
        <Table caption="The same lifts in another room" rows={k.rooms} columns={[
          { head: "Room", words: true, cell: (r) => t(r.room_c) },
          { head: "Peak", cell: (r) => <>{t(r.peak_c)}{(r.within === undefined ? r.peak_c > k.limit_c : !r.within) && <small class="over"> beyond a limit</small>}</> },
          { head: "Dam face", cell: (r) => t(r.dam_face_c) },
          { head: "Hard after", cell: (r) => (r.hard_at_h > 0 ? about(r.hard_at_h) : "not within the run") },
        ]} />
      )}
      <Facts rows={[
        ["Warmest", `${about(k.peak_at_h)} after the first pour, in lift ${k.peak_in_lift}`],
        ["Dam face", contact(t, k.dam_face_c, k.dam_high_c, k.dam_limit_c, k.dam_weakest)],
        ...(k.foam_c ? [["Foam", contact(t, k.foam_c, k.foam_high_c, k.foam_limit_c, k.foam_name)] as [string, string]] : []),
        ...(k.column_peak_c ? [["An endless slab of the same lifts", `${t(k.column_peak_c)}, which the piece stays below`] as [string, string]] : []),
        ...(k.last_to_harden ? [["Hard last", `${about(k.last_to_harden.hard_at_h)}, ${fixed(k.last_to_harden.x_mm, 0)} mm from the left end, ${fixed(k.last_to_harden.y_mm, 0)} mm from the near side, where the resin is ${length(k.last_to_harden.resin_mm, s).main} deep`] as [string, string]] : []),
        ["Worked out on", `${count(k.numerics.cells, "cell")} of ${length(k.numerics.grid_mm, s).main}; a grid twice as wide differs by ${fixed(k.numerics.peak_uncertain_c, 1)} K`],
      ]} />
      <Influences plan={plan} />
      <p><FigureLink of="cure">Maps of the cure, hour by hour</FigureLink></p>
    </>
  );
}

// contact writes how hot a face gets, how hot at most, and what it bears.
function contact(t: (c: number) => string, c: number, high?: number, limit?: number, name?: string): string {
  return [t(c), ...(high ? [`up to ${t(high)}`] : []), ...(limit ? [`${name || "it"} bears ${t(limit)}`] : [])].join(", ");
}

// Influences lists what the peak hangs on most: what is worth measuring.
function Influences({ plan }: { plan: Plan }) {
  const list = plan.resin.cure.influences ?? [];
  if (list.length === 0) return null;
  return (
    <Table caption="What the peak hangs on, the most telling first" rows={list.slice(0, 5)} columns={[
      { head: "What is not known exactly", words: true, cell: (i) => i.name },
      { head: "may be off by", cell: (i) => `${Number(i.sd.toPrecision(2))} ${i.unit}` },
      { head: "Peak", cell: (i) => `${i.peak_by_k >= 0 ? "+" : "−"}${fixed(Math.abs(i.peak_by_k), 1)} K` },
    ]} />
  );
}

// liftsText writes the depths of a way of pouring.
export function liftsText(depths: number[], s: "mm" | "in"): string {
  return depths.map((d) => length(d, s).main.replace(/ (mm|in)$/, "")).join(" + ") + ` ${s}`;
}

// Ways lists the ways of pouring with what each costs; the maker may try one.
export function Ways({ plan, take }: { plan: Plan; take(a: Alternative): void }) {
  const s = systemOf(plan.piece.units);
  const list = plan.resin.alternatives;
  if (list.length < 2) return null;
  return (
    <section class="ways" aria-label="Ways of pouring">
      <h4>Ways of pouring, and what each costs</h4>
      <ul>
        {list.map((a) => (
          <li key={a.lifts_mm.join()}>
            <p><strong>{liftsText(a.lifts_mm, s)}</strong>{a.chosen ? <span class="quiet"> planned</span> : a.kind && <span class="quiet"> {a.kind}{a.kind === "other resin" && a.resin ? `, ${a.resin}` : ""}</span>}{a.within_limits === false && <span class="over"> beyond a limit</span>}</p>
            <p class="quiet">{wayText(a, s)}</p>
            {a.why && <p>{a.why}</p>}
            {!a.chosen && a.kind !== "other resin" && <button type="button" class="button" onClick={() => take(a)}>Try this way</button>}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function wayText(a: Alternative, s: "mm" | "in"): string {
  return [
    `peak ${temperature(a.peak_c, s).main}${a.peak_high_c ? `, up to ${temperature(a.peak_high_c, s).main}` : ""}`,
    a.hard_at_h > 0 ? `hard after ${about(a.hard_at_h)}` : "not hard within the run",
    a.scuff_lifts.length === 0 ? "no sanding between" : `sand before lift ${a.scuff_lifts.map((n) => n + 1).join(", ")}`,
    `${duration(a.hands_h)} of hands`,
    ...(a.buckets ? [count(a.buckets, "bucket")] : []),
    ...(a.price ? [`materials ${fixed(a.price, 2)}`] : []),
  ].join(" · ");
}
