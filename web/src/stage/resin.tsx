import { about, count, fixed, grams, length, mass, pounds, systemOf, volume, type System } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Lift, Plan } from "../plan";
import { CureFacts } from "./cure";
import { FillCurve } from "./fillcurve";
import { FitForm } from "./fitform";
import { TryLifts } from "./trylifts";

export function ResinDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const r = plan.resin;
  return (
    <>
      <Table caption="Lifts, in the order they are poured" rows={r.lifts} columns={[
        { head: "Lift", words: true, cell: (l) => l.number },
        { head: "Depth", cell: (l) => <Q of={length(l.depth_mm, s)} /> },
        { head: "Level", cell: (l) => <Q of={length(l.to_mm, s)} /> },
        { head: "Volume", cell: (l) => <Q of={volume(l.volume_l, s)} /> },
        { head: "A", cell: (l) => <Q of={weight(l.a_kg, s)} /> },
        { head: "B", cell: (l) => <Q of={weight(l.b_kg, s)} /> },
        { head: "Wait", cell: (l) => about(l.wait_h) },
      ]} total={`${fixed(r.b_per_100_a_by_mass, 1)} of B to 100 of A, by mass.`} />
      <CureFacts plan={plan} />
      <TryLifts plan={plan} />
      {r.lifts.map((l) => <Buckets key={l.number} lift={l} system={s} />)}
      <Facts rows={[
        ["Resin", r.resin],
        ["Basin to the rim", <Q key="net" of={volume(r.volume_l, s)} />],
        ["Shrink", <Q key="shrink" of={volume(r.shrink_l, s)} />],
        ["Overfill", <Q key="over" of={volume(r.overfill_l, s)} />],
        ["Film", <Q key="film" of={volume(r.film_l, s)} />],
        ["Reserve", <Q key="reserve" of={volume(r.reserve_l, s)} />],
        ["To order", <strong key="order"><Q of={volume(r.order_l, s)} /></strong>],
        ["that is", `${mass(r.order_kg, s).main} · ${fixed(r.order_us_gal, 2)} US gal · ${fixed(r.order_imp_gal, 2)} imperial gal`],
      ]} />
      {r.tint_shades.length > 0 && <Shades plan={plan} />}
      <FillCurve plan={plan} lifts={r.lifts} />
      <FitForm system={s} />
    </>
  );
}

// Shades shows the tint over a pale floor at three depths.
function Shades({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  return (
    <ul class="shades" aria-label="Tint over a pale floor">
      {plan.resin.tint_shades.map((t) => (
        <li key={t.depth_mm}><span style={{ background: t.colour }} />{length(t.depth_mm, s).main} <code>{t.colour}</code></li>
      ))}
    </ul>
  );
}

function Buckets({ lift, system }: { lift: Lift; system: System }) {
  if (lift.batches.length === 0) return null;
  return (
    <Table caption={`Lift ${lift.number}: ${count(lift.batches.length, "bucket")}`} rows={lift.batches} columns={[
      { head: "Bucket", words: true, cell: (b) => b.number },
      { head: "Volume", cell: (b) => <Q of={volume(b.volume_l, system)} /> },
      { head: "Scale after A", cell: (b) => <Q of={weight(b.scale_a_kg, system)} /> },
      { head: "after A and B", cell: (b) => <Q of={weight(b.scale_ab_kg, system)} /> },
    ]} />
  );
}

function weight(kg: number, system: System) {
  return system === "mm" ? { main: grams(kg), other: pounds(kg) } : { main: pounds(kg), other: grams(kg) };
}
