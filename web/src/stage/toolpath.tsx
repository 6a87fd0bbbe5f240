import { count, duration, fixed, length, systemOf } from "../measure";
import { Q, Table } from "../parts";
import type { Plan } from "../plan";
import type { Proof } from "../plancut";

export function ToolpathDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  return (
    <Table caption="Cutting programs, one a sheet" rows={plan.toolpath.programs} columns={[
      { head: "File", words: true, cell: (p) => <>cut/{p.file}<small class="q-other">{p.sheet}</small></> },
      { head: "Parts", words: true, cell: (p) => p.parts.join(", ") },
      { head: "Cutter", cell: (p) => <Q of={length(p.cutter_mm, s)} /> },
      { head: "Passes", cell: (p) => p.passes },
      { head: "Tabs", cell: (p) => p.tabs.length },
      { head: "Time", cell: (p) => duration(p.time_h) },
    ]} total={`${duration(plan.toolpath.time_h)} at the machine, speeding up and slowing down counted.`} />
  );
}

function worst(of: (p: Proof["parts"][number]) => number, file: Proof): number {
  return Math.max(0, ...file.parts.map(of));
}

export function ProofDetail({ plan }: { plan: Plan }) {
  return (
    <Table caption="Every program read back and run on paper, by a reader of its own" rows={plan.proof} columns={[
      { head: "File", words: true, cell: (p) => p.file },
      { head: "Verified", words: true, cell: (p) => (p.verified ? "yes" : "NO: not written") },
      { head: "Gouged, mm", cell: (p) => fixed(worst((x) => x.gouged_mm, p), 2) },
      { head: "Left uncut, mm", cell: (p) => fixed(worst((x) => x.uncut_mm, p), 2) },
      { head: "Tabs", cell: (p) => p.parts.reduce((n, x) => n + x.tabs.length, 0) },
      { head: "Lines", cell: (p) => p.lines },
    ]} total={count(plan.proof.filter((p) => p.verified).length, "program") + " may be run."} />
  );
}
