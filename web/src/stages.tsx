// The stages in building order, each with its state and one line; a click opens it.

import { Mark } from "./parts";
import type { Plan, Stage } from "./plan";
import { openStages, toggleStage } from "./state";
import { Detail } from "./stage/detail";

export function Stages({ plan }: { plan: Plan }) {
  return (
    <section class="stages" aria-labelledby="stages-title">
      <h2 id="stages-title">In building order</h2>
      <ol>{plan.stages.map((s, i) => <One key={s.name} stage={s} number={i + 1} plan={plan} />)}</ol>
    </section>
  );
}

function One({ stage, number, plan }: { stage: Stage; number: number; plan: Plan }) {
  const empty = stage.state === "not computed";
  const open = openStages.value.has(stage.name) && !empty;
  const id = `stage-${stage.name}`;
  return (
    <li class={`stage stage-${stage.state.replace(" ", "-")}`}>
      <h3>
        <button type="button" aria-expanded={open} aria-controls={id} disabled={empty} onClick={() => toggleStage(stage.name)}>
          <span class="stage-number">{number}</span>
          <span class="stage-title">{stage.title}</span>
          <span class="stage-state"><Mark of={stage.state} /> {stage.state}</span>
          <span class="stage-summary">{stage.summary}</span>
        </button>
      </h3>
      <div id={id} class="detail" hidden={!open}>{open && <Detail name={stage.name} plan={plan} />}</div>
    </li>
  );
}
