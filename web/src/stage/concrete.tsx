import { area, count, duration, fixed, grams, length, mass, percent, pounds, systemOf, volume, type System } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Batch, Hours, Ingredient, Plan } from "../plan";

export function ConcreteDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const c = plan.concrete;
  return (
    <>
      <Table caption="Coats, from the mould outwards" rows={c.coats} columns={[
        { head: "Coat", words: true, cell: (k) => <>{k.name}<small class="q-other">{k.mix}</small></> },
        { head: "Thick", cell: (k) => <Q of={length(k.thickness_mm, s)} /> },
        { head: "In place", cell: (k) => <Q of={volume(k.volume_l, s)} /> },
        { head: "Mass", cell: (k) => <Q of={mass(k.mass_kg, s)} /> },
        { head: "To mix", cell: (k) => <Q of={mass(k.to_mix_kg, s)} /> },
      ]} />
      <Facts rows={[
        ["Cast surface", <Q key="cast" of={area(c.cast_surface_mm2, s)} />],
        ["– show face", <Q key="face" of={area(c.surfaces.face_mm2, s)} />],
        ["– basin floors", <Q key="floor" of={area(c.surfaces.floor_mm2, s)} />],
        ["– risers", <Q key="riser" of={area(c.surfaces.riser_mm2, s)} />],
        ["– walls", <Q key="wall" of={area(c.surfaces.wall_mm2, s)} />],
        ["Shell by true offset", <Q key="shell" of={volume(c.shell_volume_l, s)} />],
        ["Area × thickness would say", <>{volume(c.area_times_thickness_l, s).main}, {over(c.area_times_thickness_over)}</>],
        ["Last refinement changed it by", `${fixed(c.converged_to * 100, 2)} %`],
      ]} />
      <Windows plan={plan} />
      <h4>Batches</h4>
      {runs(c.batches).map((r) => <Run key={r.first.number} run={r} system={s} />)}
      {c.recipes.map((r) => (
        <Table key={r.mix} caption={`${r.mix}, for 1 m³`} rows={r.parts_per_m3} columns={[
          { head: "Part", words: true, cell: (p) => p.name },
          { head: "Mass", cell: (p) => <Q of={mass(p.mass_kg, s)} /> },
        ]} total={`Wet ${fixed(r.wet_density_kg_m3, 0)} kg/m³ · water ratio ${fixed(r.water_to_cementitious, 3)} · polymer ${percent(r.polymer_solids_to_cementitious)} · fibre ${percent(r.fibre_of_total)} · air ${percent(r.air)}`} />
      ))}
    </>
  );
}

// Windows shows when what can be done, by both models, and who packs what when.
function Windows({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const { windows = [], strength = [], packing = [] } = plan.concrete;
  return (
    <>
      {windows.length > 0 && <Table caption="Windows at the shop's temperature" rows={windows} columns={[
        { head: "Window", words: true, cell: (w) => <>{w.name}<small class="q-other">{w.coat || `after ${w.of}`}</small></> },
        { head: "At 20 °C", cell: (w) => span(w.at_20_c) },
        { head: "Planned", cell: (w) => <>{span(w.planned)}{w.models_differ && <small class="q-other">Arrhenius {span(w.arrhenius)}<br />Nurse-Saul {span(w.nurse_saul)}</small>}</> },
        { head: "Touch decides", words: true, cell: (w) => w.touch_test },
      ]} />}
      {strength.length > 0 && <Facts rows={strength.map((x): [string, string] => [
        `Strong enough to ${x.for}, ${fixed(x.need_mpa, 0)} MPa`, `${duration(x.planned_h)} after the last coat`,
      ])} />}
      {packing.length > 0 && <Table caption="Packing, from the left edge in form view" rows={packing} columns={[
        { head: "Coat", words: true, cell: (z) => <span class="id">{z.coat}<small class="q-other">{`batch ${z.batch}, hand ${z.person}`}</small></span> },
        { head: "From", cell: (z) => <Q of={length(z.from_x_mm, s)} /> },
        { head: "To", cell: (z) => <Q of={length(z.to_x_mm, s)} /> },
        { head: "In place", cell: (z) => <Q of={mass(z.mass_kg, s)} /> },
        { head: "Start", cell: (z) => duration(z.start_h) },
        { head: "Done", cell: (z) => <>{duration(z.end_h)}{z.late && <small class="q-other over">{`late: shut at ${duration(z.window_closes_h)}`}</small>}</> },
      ]} />}
    </>
  );
}

function span(h: Hours): string {
  if (h.until_h === 0) return `from ${duration(h.from_h)}`;
  return h.from_h === 0 ? `until ${duration(h.until_h)}` : `${duration(h.from_h)} – ${duration(h.until_h)}`;
}

function over(f: number): string {
  return f >= 0 ? `${percent(f)} too much` : `${percent(-f)} too little`;
}

// A BatchRun is batches in a row that are weighed alike.
interface BatchRun { first: Batch; last: Batch; alike: number }

// runs joins batches that a maker weighs alike, to the gram.
export function runs(batches: Batch[]): BatchRun[] {
  const out: BatchRun[] = [];
  for (const b of batches) {
    const r = out.at(-1);
    if (r && weighed(r.first) === weighed(b)) {
      r.last = b;
      r.alike++;
    } else out.push({ first: b, last: b, alike: 1 });
  }
  return out;
}

function weighed(b: Batch): string {
  return [b.coat, ...b.parts.map((p) => `${p.name} ${grams(p.mass_kg)}`), grams(b.water_never_above_kg)].join("|");
}

function Run({ run, system }: { run: BatchRun; system: System }) {
  const b = run.first;
  const name = run.alike === 1 ? `Batch ${b.number}` : `Batches ${b.number} to ${run.last.number}, alike`;
  let sum = 0;
  const rows = b.parts.map((part) => ({ part, sum: (sum += part.mass_kg) }));
  return (
    <>
      <Table<{ part: Ingredient; sum: number }> caption={`${name}: ${b.coat}, ${mass(b.mass_kg, system).main} = ${volume(b.volume_l, system).main} ${run.alike > 1 ? "each" : ""}`} rows={rows} columns={[
        { head: "Weigh", words: true, cell: (r) => r.part.name },
        { head: "Mass", cell: (r) => <Q of={weight(r.part.mass_kg, system)} /> },
        { head: "Scale shows", cell: (r) => <Q of={weight(r.sum, system)} /> },
      ]} />
      <p class="water">
        Water: {weight(b.water_first_kg, system).main} first, up to {weight(b.water_up_to_kg, system).main}, <strong>never above {weight(b.water_never_above_kg, system).main}</strong>.
        {run.alike > 1 && ` ${count(run.alike, "batch", "batches")} of this.`}
      </p>
    </>
  );
}

// weight is what a scale shows: grams, or pounds and ounces.
function weight(kg: number, system: System) {
  return system === "mm" ? { main: grams(kg), other: pounds(kg) } : { main: pounds(kg), other: grams(kg) };
}
