import { area, count, length, mass, systemOf } from "../measure";
import { Q, Table } from "../parts";
import type { Plan } from "../plan";

export function KnockoutDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const k = plan.knockout;
  return (
    <>
      <Table caption="Foam parts, form view" rows={k.parts} columns={[
        { head: "Part", words: true, cell: (p) => p.id },
        { head: "Thickness", cell: (p) => <Q of={length(p.thickness_mm, s)} /> },
        { head: "Sheets thick", cell: (p) => p.thicknesses },
        { head: "Box x", cell: (p) => <Q of={length(p.box_x_mm, s)} /> },
        { head: "Box y", cell: (p) => <Q of={length(p.box_y_mm, s)} /> },
        { head: "Area", cell: (p) => <Q of={area(p.area_mm2, s)} /> },
        { head: "Mass", cell: (p) => mass(p.mass_kg, s).main },
      ]} total={`${mass(k.mass_kg, s).main} of foam, at least ${count(k.sheets_at_least, "sheet")}; the nesting decides.`} />
      {k.glue_order.length > 0 && (
        <p><span class="label">Glue in this order, largest outline first</span> {k.glue_order.join(", ")}</p>
      )}
    </>
  );
}
