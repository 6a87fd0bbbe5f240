import { count, mass, systemOf } from "../measure";
import { Facts, Q } from "../parts";
import type { Plan } from "../plan";

export function StructureDetail({ plan }: { plan: Plan }) {
  const s = systemOf(plan.piece.units);
  const w = plan.structure;
  const row = (name: string, kg: number): [string, preact.JSX.Element] => [name, <Q key={name} of={mass(kg, s)} />];
  return (
    <>
      <h4>Turned over in its form: {count(w.lifters, "person", "people")}</h4>
      <Facts rows={[row("Shell", w.shell_kg), row("Form", w.form_kg), row("Foam", w.foam_kg), row("Together", w.flip_kg)]} />
      <h4>Delivered: {count(w.carriers, "person", "people")}</h4>
      <Facts rows={[row("Shell", w.shell_kg), row("Resin", w.resin_kg), row("Supports, base and the like", w.extras_kg), row("Together", w.delivered_kg)]} />
    </>
  );
}
