import { fixed, length, mass, systemOf } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Plan } from "../plan";
import { Bars, Cutting } from "./cutting";

export function BaseDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const b = plan.base;
  return (
    <>
      {b.wanted && (
        <Facts rows={[
          ["Carcass, outside", `${length(b.length_mm, s).main} × ${length(b.width_mm, s).main} × ${length(b.height_mm, s).main}`],
          ["Mass", <Q key="mass" of={mass(b.mass_kg, s)} />],
          ...b.fixings.map((f): [string, string] => [f.name, `${f.count}, ${f.where}`]),
        ]} />
      )}
      {b.parts.length > 0 && (
        <Table caption="Parts of the carcass" rows={b.parts} columns={[
          { head: "Part", words: true, cell: (p) => (p.note ? <>{p.name}<small class="q-other">{p.note}</small></> : p.name) },
          { head: "Count", cell: (p) => p.count },
          { head: "Length", cell: (p) => <Q of={length(p.length_mm, s)} /> },
          { head: "Width", cell: (p) => <Q of={length(p.width_mm, s)} /> },
          { head: "Thick", cell: (p) => <Q of={length(p.thickness_mm, s)} /> },
        ]} />
      )}
      <Cutting of={b.cutting} system={s} />
      {b.supports.length > 0 && (
        <Table caption="Cross supports" rows={b.supports} columns={[
          { head: "Support", words: true, cell: (t) => <>{t.name}<small class="q-other">{t.tube}</small></> },
          { head: "Count", cell: (t) => t.count },
          { head: "Length", cell: (t) => <Q of={length(t.length_mm, s)} /> },
          { head: "Stand at", cell: (t) => t.at_mm.map((x) => fixed(x, 0)).join(", ") },
          { head: "Holes, mm from the left end", words: true, cell: (t) => t.holes.map((h) => <span key={`${h.face} ${h.at_mm}`} class="line">{`Ø ${fixed(h.diameter_mm, 1)} at ${fixed(h.at_mm, 1)}, ${h.face}`}</span>) },
        ]} />
      )}
      {b.bars.map((x) => <Bars key={x.bar} of={x} system={s} />)}
    </>
  );
}
