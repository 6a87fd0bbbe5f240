// A plan of cuts on boards: the sheets, the saw's settings in their order, what remains.

import { count, fixed, length, percent, type System } from "../measure";
import { Q, Table } from "../parts";
import type { BarList, Cutlist } from "../plancut";

export function Cutting({ of: c, system: s }: { of: Cutlist; system: System }) {
  if (c.sheets.length === 0) return null;
  const same = sameWords(c.settings);
  return (
    <>
      <Table caption={`Sheets of ${c.board}`} rows={c.sheets} columns={[
        { head: "Sheet", words: true, cell: (x) => <>{x.id}, {x.name}{x.owned && <small> owned</small>}</> },
        { head: "Size", cell: (x) => `${length(x.size_x_mm, s).main} × ${length(x.size_y_mm, s).main}` },
        { head: "Parts", words: true, cell: (x) => x.placements.map((p) => p.part).join(", ") },
        { head: "Used", cell: (x) => percent(x.used) },
      ]} total={`${count(c.buy_sheets, "sheet")} to buy${c.proven ? ", and no plan needs fewer" : ""}; kerf ${length(c.kerf_mm, s).main}.`} />
      {c.settings.length > 0 && (
        <Table caption="At the saw, in this order: set, check, cut" rows={c.settings} columns={[
          { head: "Cuts", words: true, cell: (x) => (x.first === x.last ? x.first : `${x.first} to ${x.last}`) },
          { head: "Fence", cell: (x) => <Q of={length(x.fence_mm, s)} /> },
          { head: "Blade", cell: (x) => (x.tilt_deg === 0 ? "upright" : `${fixed(x.tilt_deg, 1)}° tilted`) },
          ...(same ? [] : [{ head: "Before", words: true, cell: (x: Setting) => x.re_zero }]),
        ]} total={same && `Before each: ${same}`} />
      )}
      {c.remains.length > 0 && (
        <Table caption="Stock that remains" rows={c.remains} columns={[
          { head: "Piece", words: true, cell: (x) => <>{x.name}{x.new && <small> new offcut</small>}</> },
          { head: "Size", cell: (x) => `${length(x.length_mm, s).main} × ${length(x.width_mm, s).main}` },
          { head: "Count", cell: (x) => x.count },
        ]} />
      )}
    </>
  );
}

type Setting = Cutlist["settings"][number];

// sameWords is what is done before every setting, where the texts differ in the
// fence's reading alone; "" where they differ in more.
export function sameWords(settings: Setting[]): string {
  const words = settings.map((x) => x.re_zero.replace(/to [\d.]+ mm/, "to its reading"));
  const [first = ""] = words;
  if (settings.length < 2 || words.some((w) => w !== first)) return "";
  return first.slice(0, 1).toLowerCase() + first.slice(1);
}

export function Bars({ of: b, system: s }: { of: BarList; system: System }) {
  if (b.bars.length === 0) return null;
  return (
    <Table caption={`Bars of ${b.bar}`} rows={b.bars} columns={[
      { head: "Bar", words: true, cell: (x) => <>{x.id}, {x.name}{x.owned && <small> owned</small>}</> },
      { head: "Length", cell: (x) => <Q of={length(x.length_mm, s)} /> },
      { head: "Cuts", cell: (x) => x.cuts.length },
      { head: "Left", cell: (x) => <Q of={length(x.rest_mm, s)} /> },
      { head: "Kept as", words: true, cell: (x) => x.offcut ?? "waste" },
    ]} total={`${count(b.buy_bars, "bar")} to buy${b.proven ? ", and no plan needs fewer" : ""}.`} />
  );
}
