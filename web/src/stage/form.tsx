import { area, count, length, mass, systemOf } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { Plan } from "../plan";

export function FormDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const f = plan.form;
  return (
    <>
      <Table caption="Panels" rows={f.panels} columns={[
        { head: "Panel", words: true, cell: (p) => (p.bevel ? <>{p.name}<small class="q-other">{p.bevel}</small></> : p.name) },
        { head: "Count", cell: (p) => p.count },
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
        ["Board", `at least ${count(f.sheets_at_least, "sheet")}`],
      ]} />
    </>
  );
}
