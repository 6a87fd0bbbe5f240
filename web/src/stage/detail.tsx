// What each stage worked out, as tables.

import type { Plan } from "../plan";
import { BaseDetail } from "./base";
import { CalendarDetail } from "./calendar";
import { ConcreteDetail } from "./concrete";
import { CostDetail } from "./cost";
import { FormDetail } from "./form";
import { KnockoutDetail } from "./knockout";
import { ReliefDetail } from "./relief";
import { ResinDetail } from "./resin";
import { StructureDetail } from "./structure";
import { ProofDetail, ToolpathDetail } from "./toolpath";

const ROOMS: Record<string, (p: { plan: Plan }) => preact.JSX.Element> = {
  relief: ReliefDetail,
  knockout: KnockoutDetail,
  toolpath: ToolpathDetail,
  proof: ProofDetail,
  form: FormDetail,
  base: BaseDetail,
  concrete: ConcreteDetail,
  resin: ResinDetail,
  structure: StructureDetail,
  calendar: CalendarDetail,
  cost: CostDetail,
};

export function Detail({ name, plan }: { name: string; plan: Plan }) {
  const Room = ROOMS[name];
  return Room ? <Room plan={plan} /> : <p class="quiet">This page does not know the stage “{name}” yet; the plan's JSON has it.</p>;
}
