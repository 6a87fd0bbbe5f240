// What the plan has to say, the worst first, each with numbers, place and remedy.

import { fixed, inches, length, systemOf } from "./measure";
import type { Finding, Plan, Severity, Where } from "./plan";
import { Mark } from "./parts";
import { count } from "./measure";
import { mark, marked } from "./state";

const ORDER: Severity[] = ["stop", "caution", "note"];

export function Findings({ plan }: { plan: Plan }) {
  const by = (s: Severity) => plan.findings.filter((f) => f.severity === s);
  const [stops, cautions, notes] = [by("stop"), by("caution"), by("note")];
  return (
    <section class="findings" aria-labelledby="findings-title">
      <h2 id="findings-title">Findings</h2>
      {stops.length > 0 && (
        <p class="stop-banner" role="alert">
          <strong>STOP.</strong> Do not cut, cast or pour before {stops.length === 1 ? "this is" : `these ${stops.length} are`} settled. The shop pack still opens, and says STOP on its cover.
        </p>
      )}
      {plan.findings.length === 0 && <p class="quiet">Nothing stands against this plan.</p>}
      <List of={stops} plan={plan} />
      <List of={cautions} plan={plan} />
      {notes.length > 0 && (
        <details class="notes" open={stops.length + cautions.length === 0}>
          <summary><Mark of="note" /> {count(notes.length, "note")}</summary>
          <List of={notes} plan={plan} />
        </details>
      )}
    </section>
  );
}

function List({ of, plan }: { of: Finding[]; plan: Plan }) {
  if (of.length === 0) return null;
  return (
    <ul class="finding-list">
      {alike(of).map((group) => <Group key={group.map((f) => f.code + f.text).join(" ")} of={group} units={plan.piece.units} />)}
    </ul>
  );
}

// alike joins findings in a row that say the same of several places and ask for the
// same.
export function alike(fs: Finding[]): Finding[][] {
  const out: Finding[][] = [];
  for (const f of fs) {
    const group = out.at(-1);
    const first = group?.[0];
    if (group && first && first.code === f.code && first.severity === f.severity && first.remedy === f.remedy) group.push(f);
    else out.push([f]);
  }
  return out;
}

function Group({ of, units }: { of: Finding[]; units: string }) {
  const [first] = of;
  if (!first) return null;
  return (
    <li class={`finding finding-${first.severity}`}>
      <p class="finding-head">
        <Mark of={first.severity} /> <span class="severity">{first.severity}</span> <code>{first.code}</code>
      </p>
      {of.map((f) => <One key={f.text} of={f} units={units} />)}
      <p class="finding-remedy"><span class="label">Do</span> {first.remedy}</p>
    </li>
  );
}

function One({ of, units }: { of: Finding; units: string }) {
  const small = [numbersOf(of, units), placeText(unsaid(of))].filter(Boolean).join(" · ");
  return (
    <div class="finding-one">
      <p class="finding-text">{of.text}</p>
      {small && <p class="finding-numbers">{small}</p>}
      {of.where.at_mm && <Show of={of} at={of.where.at_mm} units={units} />}
    </div>
  );
}

// numbersOf says what was found and what is allowed.
export function numbersOf(f: Finding, units: string): string {
  if (!f.unit || f.got === undefined || f.limit === undefined) return "";
  const show = (v: number) => (f.unit === "mm" ? both(v, units) : `${fixed(v, Math.abs(v) < 10 ? 2 : 1)} ${f.unit}`);
  return `found ${show(f.got)}, limit ${show(f.limit)}`;
}

function both(v: number, units: string): string {
  const m = length(v, systemOf(units));
  return `${m.main} (${m.other})`;
}

function Show({ of, at, units }: { of: Finding; at: [number, number]; units: string }) {
  const on = marked.value === of;
  return (
    <button type="button" class="button show" aria-pressed={on} onClick={() => mark(of)}>
      {on ? "Shown on the figure" : "Show on the figure"}
      <small>{spot(at, units)}{of.where.view ? `, ${of.where.view} view` : ""}</small>
    </button>
  );
}

function spot(at: [number, number], units: string): string {
  const one = (v: number) => (systemOf(units) === "in" ? inches(v) : fixed(v, 1));
  return `x ${one(at[0])}, y ${one(at[1])}${systemOf(units) === "in" ? "" : " mm"}`;
}

// unsaid leaves out the element that the finding's sentence already names.
function unsaid({ text, where: { element, ...rest } }: Finding): Where {
  return element === undefined || text.includes(element) ? rest : { ...rest, element };
}

// placeText says where in the files a finding stands.
export function placeText(w: Where): string {
  const line = w.line ? `:${w.line}${w.column ? `:${w.column}` : ""}` : "";
  return [w.file && `${w.file}${line}`, w.field, w.element].filter(Boolean).join(", ");
}

// worst returns the highest severity among findings.
export function worst(fs: Finding[]): Severity | undefined {
  return ORDER.find((s) => fs.some((f) => f.severity === s));
}
