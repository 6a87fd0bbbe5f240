import { area, inches, length, mm, systemOf, volume } from "../measure";
import { Q, Table } from "../parts";
import type { Plan } from "../plan";
import { FillCurve } from "./fillcurve";
import { LayerLink } from "./layerlink";

export function ReliefDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const { layers, mouths, narrow } = plan.relief;
  return (
    <>
      <Table caption="Layers, from the show face down" rows={layers} columns={[
        { head: "Layer", words: true, cell: (l) => <LayerLink number={l.number} name={l.name} /> },
        { head: "From", cell: (l) => <Q of={length(l.from_mm, s)} /> },
        { head: "To", cell: (l) => <Q of={length(l.to_mm, s)} /> },
        { head: "Area", cell: (l) => <Q of={area(l.area_mm2, s)} /> },
        { head: "Volume", cell: (l) => <Q of={volume(l.volume_l, s)} /> },
        { head: "Islands", cell: (l) => l.islands },
      ]} />
      {mouths.length > 0 && (
        <Table caption="Mouths, where the basin runs off" rows={mouths} columns={[
          { head: "Side", words: true, cell: (m) => m.side },
          { head: "Width", cell: (m) => <Q of={length(m.width_mm, s)} /> },
          { head: "Depth", cell: (m) => <Q of={length(m.depth_mm, s)} /> },
          { head: "Starts at", cell: (m) => <Q of={length(m.from_mm, s)} /> },
          { head: "Opening", cell: (m) => <Q of={area(m.opening_mm2, s)} /> },
        ]} />
      )}
      {narrow.length > 0 && (
        <Table caption="Narrow places, finished view" rows={narrow} columns={[
          { head: "What", words: true, cell: (n) => `${n.kind}, layer ${n.layer}` },
          { head: "At x, y", cell: (n) => (s === "mm" ? `${mm(n.x_mm)}, ${mm(n.y_mm)}` : `${inches(n.x_mm)}, ${inches(n.y_mm)}`) },
          { head: "Width", cell: (n) => <Q of={length(n.width_mm, s)} /> },
          { head: "Limit", cell: (n) => <Q of={length(n.limit_mm, s)} /> },
        ]} />
      )}
      <FillCurve plan={plan} />
    </>
  );
}
