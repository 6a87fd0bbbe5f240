import { area, count, duration, fixed, length, mass, systemOf, type System } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Form, Plan } from "../plan";
import { Cutting } from "./cutting";

export function FormDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const f = plan.form;
  return (
    <>
      <Table caption="Panels" rows={f.panels} columns={[
        { head: "Panel", words: true, cell: (p) => (p.bevel ? <>{p.name}<small class="q-other">{p.bevel}</small></> : p.name) },
        { head: "Marks", words: true, cell: (p) => p.marks.join(", ") },
        { head: "Length", cell: (p) => <Q of={length(p.length_mm, s)} /> },
        { head: "Width", cell: (p) => <Q of={length(p.width_mm, s)} /> },
        { head: "Thick", cell: (p) => <Q of={length(p.thickness_mm, s)} /> },
        { head: "Each", cell: (p) => mass(p.mass_kg, s).main },
      ]} />
      <Facts rows={[
        ["Corners", plan.piece.corner],
        ["Inside corners to caulk", <Q key="seam" of={length(f.seam_mm, s)} />],
        ["Faces to wax", <Q key="release" of={area(f.release_mm2, s)} />],
        ["Mass of the form", <Q key="mass" of={mass(f.mass_kg, s)} />],
        ["Screws", f.screws.count > 0 ? `${f.screws.count} of ${f.screws.name}` : "not worked out"],
        ...f.supplies.map((x): [string, string] => [x.name, `${fixed(x.need, 2)} ${x.unit}${x.pieces > 0 ? `, ${count(x.pieces, "cartridge")}` : ""}`]),
      ]} />
      <Cutting of={f.cutting} system={s} />
      <Walls of={f} system={s} />
      {f.assembly.length > 0 && (
        <section class="assembly"><h4>Put together</h4><ol>{f.assembly.map((x) => <li key={x.number}>{x.text}</li>)}</ol></section>
      )}
      <Dams of={f} system={s} />
      {f.readings.length > 0 && (
        <Table caption="Measure on the standing form" rows={f.readings} columns={[
          { head: "What", words: true, cell: (r) => <>{r.name}<small class="q-other">{r.how}</small></> },
          { head: "Reads", cell: (r) => <Q of={length(r.target_mm, s)} /> },
          { head: "Within", cell: (r) => length(r.limit_mm, s).main },
        ]} />
      )}
    </>
  );
}

function Walls({ of: f, system: s }: { of: Form; system: System }) {
  if (f.walls.length === 0) return null;
  return (
    <Table caption="Walls under the fresh mix" rows={f.walls} columns={[
      { head: "Wall", words: true, cell: (w) => `${w.mark}, ${w.panel}` },
      { head: "At its foot", cell: (w) => `${fixed(w.load_kpa, 2)} kPa` },
      { head: "Bows", cell: (w) => length(w.bow_mm, s).main },
      { head: "may bow", cell: (w) => length(w.bow_limit_mm, s).main },
      { head: "Battens", words: true, cell: (w) => (w.uprights === 0 && !w.rail ? "none" : [...(w.uprights > 0 ? [count(w.uprights, "upright")] : []), ...(w.rail ? ["a rail"] : [])].join(", ")) },
      { head: "Screws foot, ends", cell: (w) => `${w.foot_screws}, ${w.end_screws} each` },
    ]} />
  );
}

function Dams({ of: f, system: s }: { of: Form; system: System }) {
  if (f.dams.length === 0) return null;
  return (
    <>
      {f.dams.map((d) => (
        <Facts key={d.mark} rows={[
          [`Dam ${d.mark}, ${d.side} side`, `${length(d.length_mm, s).main} × ${length(d.height_mm, s).main} of ${d.board}`],
          ["– seal", <Q key="seal" of={length(d.seal_mm, s)} />],
          ["– pushed by", `${fixed(d.force_n, 0)} N, ${count(d.clamps, "clamp")}`],
          ["– water test", `${fixed(d.water_test_ml, 0)} ml lost at most in ${duration(d.water_test_h)}`],
          ["– liner", d.liner],
        ]} />
      ))}
    </>
  );
}
