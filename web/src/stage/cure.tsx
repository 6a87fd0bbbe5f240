// What the cure does, in numbers, and the other ways of pouring.

import { about, count, duration, fixed, length, systemOf, temperature } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Plan } from "../plan";
import { FigureLink } from "./figurelink";

export function CureFacts({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const { cure: k, lifts, alternatives } = plan.resin;
  if (!k.computed) return null;
  const t = (c: number) => temperature(c, s).main;
  return (
    <>
      <Table caption="The cure, hours after each pour" rows={lifts} columns={[
        { head: "Lift", words: true, cell: (l) => l.number },
        { head: "Peak", cell: (l) => <Q of={temperature(l.peak_c, s)} /> },
        { head: "at", cell: (l) => about(l.peak_at_h) },
        { head: "Gelled", cell: (l) => (l.gels_h > 0 ? about(l.gels_h) : "not yet") },
        { head: "Bonds until", cell: (l) => (l.scuff ? "scuff it" : l.bonds_until_h > 0 ? about(l.bonds_until_h) : l === lifts.at(-1) ? "–" : "past the next pour") },
        { head: "Tack-free", cell: (l) => (l.tack_free_h > 0 ? about(l.tack_free_h) : "not yet") },
      ]} total={<FigureLink of="cure">Maps of the cure, hour by hour</FigureLink>} />
      <Facts rows={[
        ["Peak", `${t(k.peak_c)}, ${about(k.peak_at_h)} after the first pour, in lift ${k.peak_in_lift}`],
        ["Peak, by what is not known exactly", `${t(k.peak_low_c)} to ${t(k.peak_high_c)}, ${count(k.band_members, "run")}`],
        ["Asked for at most", t(k.limit_c)],
        ["Dam face", t(k.dam_face_c)],
        ...k.rooms.map((r): [string, string] => [`– in a room of ${t(r.room_c)}`, `peak ${t(r.peak_c)}, dam ${t(r.dam_face_c)}, ${r.hard_at_h > 0 ? `hard after ${about(r.hard_at_h)}` : "not hard within the run"}`]),
        ["Computed with", `${count(k.numerics.cells, "cell")} of ${length(k.numerics.grid_mm, s).main}, ${count(k.numerics.steps, "step")}; ${fixed(k.numerics.peak_uncertain_c, 1)} K from the coarser grid`],
      ]} />
      {alternatives.length > 1 && (
        <Table caption="Ways of pouring" rows={alternatives} columns={[
          { head: "Lifts", words: true, cell: (a) => <>{a.lifts_mm.map((d) => length(d, s).main).join(" + ")}{a.chosen && <small> chosen</small>}</> },
          { head: "Peak", cell: (a) => t(a.peak_c) },
          { head: "Hard", cell: (a) => (a.hard_at_h > 0 ? about(a.hard_at_h) : "not within the run") },
          { head: "Scuff", cell: (a) => (a.scuff_lifts.length === 0 ? "none" : a.scuff_lifts.join(", ")) },
          { head: "Hands", cell: (a) => duration(a.hands_h) },
        ]} />
      )}
    </>
  );
}
