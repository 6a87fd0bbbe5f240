import { count, length, mass, percent, systemOf, type System } from "../measure";
import { Facts, Q, Table } from "../parts";
import type { FoamPart, Knockout, Plan } from "../plan";
import { FigureLink } from "./figurelink";
import { LayerLink } from "./layerlink";

export function KnockoutDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const k = plan.knockout;
  return (
    <>
      <Parts of={k} system={s} />
      {k.seams.length > 0 && <Seams of={k} system={s} />}
      {k.sheets.length > 0 && <Sheets of={k} system={s} />}
      <GlueMaps of={k} system={s} />
      <Facts rows={[
        ["Largest piece", k.limits.x_mm > 0 ? `${length(k.limits.x_mm, s).main} × ${length(k.limits.y_mm, s).main}, by the ${k.limits.by}` : "no limit"],
        ["Cut with", k.limits.route === "router" ? "a router, by the programs in cut/" : "a band saw, by the paper templates"],
        ["Between parts", <Q key="spacing" of={length(k.kept.spacing_mm, s)} />],
        ["Seams apart by", <Q key="stagger" of={length(k.kept.stagger_mm, s)} />],
        ["Dowels", k.parts.some((p) => p.dowels.length > 0) ? <Q key="dowel" of={length(k.kept.dowel_mm, s)} /> : "none"],
        ["Mass", mass(k.mass_kg, s).main],
      ]} />
    </>
  );
}

function Parts({ of: k, system: s }: { of: Knockout; system: System }) {
  return (
    <Table caption="Foam parts, form view" rows={k.parts} columns={[
      { head: "Part", words: true, cell: (p) => <LayerPart part={p} /> },
      { head: "Thickness", cell: (p) => <Q of={length(p.thickness_mm, s)} /> },
      ...(k.parts.some((p) => p.thicknesses > 1) ? [{ head: "Sheets thick", cell: (p: FoamPart) => p.thicknesses }] : []),
      { head: "Box x", cell: (p) => <Q of={length(p.box_x_mm, s)} /> },
      { head: "Box y", cell: (p) => <Q of={length(p.box_y_mm, s)} /> },
      { head: "Dowels", cell: (p) => p.dowels.length },
      { head: "Left by cutter", cell: (p) => (p.left_by_cutter.length === 0 ? "nothing" : count(p.left_by_cutter.length, "place")) },
    ]} />
  );
}

// LayerPart names a part and turns the figure to its layer.
function LayerPart({ part: p }: { part: FoamPart }) {
  return <><span class="id"><FigureLink of={`layer-${p.layer}`}>{p.id}</FigureLink></span>{p.cut && <small> cut</small>}</>;
}

function Seams({ of: k, system: s }: { of: Knockout; system: System }) {
  return (
    <section class="assembly" aria-label="Seams">
      <h4>Seams, and why they lie where they do</h4>
      {k.seams.map((m) => (
        <div key={m.id} class="seam">
          <p>
            <strong><LayerLink number={m.layer} name={m.id} /></strong> {m.kind}, {length(m.length_mm, s).main} long, {length(m.visible_mm, s).main} of it in sight
            {m.staggers.map((t) => `, ${length(t.distance_mm, s).main} from the seams of layer ${t.layer}`).join("")}
          </p>
          <p class="quiet">{m.why}</p>
        </div>
      ))}
    </section>
  );
}

function Sheets({ of: k, system: s }: { of: Knockout; system: System }) {
  return (
    <Table caption="Foam sheets" rows={k.sheets} columns={[
      { head: "Sheet", words: true, cell: (f) => <FigureLink of={(f.name.split(" blank")[0] ?? "").replaceAll(" ", "-")}>{f.name}</FigureLink> },
      { head: "Size", cell: (f) => `${length(f.size_x_mm, s).main} × ${length(f.size_y_mm, s).main}` },
      { head: "Parts", words: true, cell: (f) => f.placements.map((p) => p.part).join(", ") },
      { head: "Used", cell: (f) => percent(f.used_share) },
      { head: "Kept", words: true, cell: (f) => (f.offcut ? `${f.offcut.name}, ${length(f.offcut.size_x_mm, s).main} × ${length(f.offcut.size_y_mm, s).main}` : "nothing worth keeping") },
    ]} total={`${count(k.sheets_new, "new sheet")}; ${count(k.sheets_at_least, "sheet")} by area alone.`} />
  );
}

function GlueMaps({ of: k, system: s }: { of: Knockout; system: System }) {
  return (
    <>
      {k.glue_order.length > 0 && (
        <p><span class="label">Glue in this order, largest outline first</span> {k.glue_order.join(", ")}</p>
      )}
      {k.glue_maps.filter((m) => m.checks.length > 0).map((m) => (
        <Table key={m.layer} caption={`Check across the joints of layer ${m.layer}`} rows={m.checks} columns={[
          { head: "Check", words: true, cell: (c) => c.name },
          { head: "Parts", words: true, cell: (c) => c.parts.join(" to ") },
          { head: "Reads", cell: (c) => <Q of={length(c.length_mm, s)} /> },
        ]} />
      ))}
    </>
  );
}
