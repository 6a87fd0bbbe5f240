// Values that decide the plan and that nobody has measured: they look assumed.

import type { Assumed, Plan } from "./plan";

export function MeasureFirst({ plan }: { plan: Plan }) {
  const list = plan.measure_first;
  return (
    <section class="measure" aria-labelledby="measure-title">
      <h2 id="measure-title">Measure first</h2>
      {list.length === 0
        ? <p class="quiet">Every value that decides this plan was measured or stands on a data sheet.</p>
        : <p class="quiet">These values are typical, not yours. Measure them, write them into the document, and the plan follows.</p>}
      <ul class="measure-list">{list.map((a) => <One key={a.field + a.what} of={a} />)}</ul>
    </section>
  );
}

function One({ of }: { of: Assumed }) {
  return (
    <li>
      <span class="measure-what">{of.what}</span>
      <span class="assumed">{of.value} <small>{of.origin}</small></span>
      <small class="measure-field">write it at <code>{of.field}</code>{of.source ? ` · from ${of.source}` : ""}</small>
    </li>
  );
}
