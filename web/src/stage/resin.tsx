import { useState } from "preact/hooks";
import { fixed, length, mass, systemOf, volume } from "../measure";
import { Facts, Q } from "../parts";
import type { Alternative, Plan } from "../plan";
import { CureFacts, Ways } from "./cure";
import { FillCurve } from "./fillcurve";
import { FitForm } from "./fitform";
import { LiftCards } from "./liftcards";
import { TryLifts } from "./trylifts";

export function ResinDetail({ plan }: { plan: Plan }) {
  const [wanted, want] = useState<Alternative>();
  return (
    <>
      <LiftCards plan={plan} />
      {(plan.resin.cautions ?? []).map((c) => <p key={c} class="step-caution">{c}</p>)}
      <CureFacts plan={plan} />
      <Ways plan={plan} take={want} />
      <TryLifts plan={plan} wanted={wanted} />
      <Order plan={plan} />
      <Handling plan={plan} />
      <FillCurve plan={plan} lifts={plan.resin.lifts} />
      <FitForm system={systemOf(plan.piece.units)} />
    </>
  );
}

function Order({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const r = plan.resin;
  return (
    <>
      <h4>To order: {volume(r.order_l, s).main}</h4>
      <Facts rows={[
        ["Resin", r.resin],
        ["By mass", `${fixed(r.b_per_100_a_by_mass, 1)} of B to 100 of A`],
        ["Basin to the rim", <Q key="net" of={volume(r.volume_l, s)} />],
        ["Shrink", <Q key="shrink" of={volume(r.shrink_l, s)} />],
        ["Overfill", <Q key="over" of={volume(r.overfill_l, s)} />],
        ["Film", <Q key="film" of={volume(r.film_l, s)} />],
        ["Reserve", <Q key="reserve" of={volume(r.reserve_l, s)} />],
        ["To order", <strong key="order"><Q of={volume(r.order_l, s)} /></strong>],
        ["that is", `${mass(r.order_kg, s).main} · ${fixed(r.order_us_gal, 2)} US gal · ${fixed(r.order_imp_gal, 2)} imperial gal`],
      ]} />
    </>
  );
}

// Handling tells of the vacuum pot, the level and the tint, where there are any.
function Handling({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const { degas, shim, tint_shades: shades } = plan.resin;
  const rows: [string, string][] = [];
  if (degas) rows.push(["Vacuum pot", `${volume(degas.pot_l, s).main}, at most ${volume(degas.most_at_once_l, s).main} at once: it rises ${fixed(degas.rise_factor, 0)} times`]);
  if (shim) rows.push(["Shim under the low end", `${length(shim.shim_mm, s).main}: the level reads ${fixed(shim.reading_mm_per_m, 1)} mm per metre`]);
  return (
    <>
      {rows.length > 0 && <Facts rows={rows} />}
      {shades.length > 0 && (
        <ul class="shades" aria-label="Tint over a pale floor">
          {shades.map((t) => (
            <li key={t.depth_mm}><span style={{ background: t.colour }} />{length(t.depth_mm, s).main} <code>{t.colour}</code></li>
          ))}
        </ul>
      )}
    </>
  );
}
