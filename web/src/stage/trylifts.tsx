// The maker moves a lift and sees what it does, without touching the document.

import { useState } from "preact/hooks";
import { askTry, ProblemError } from "../api";
import { about, fixed, systemOf, temperature } from "../measure";
import type { Plan } from "../plan";

interface Row { depth: string; after: string }

function rowsOf(plan: Plan): Row[] {
  const lifts = plan.resin.lifts;
  return lifts.map((l, i) => ({ depth: fixed(l.depth_mm, 1), after: i === 0 ? "" : fixed(l.at_h - (lifts[i - 1]?.at_h ?? 0), 0) }));
}

// fieldsOf writes rows as fields of the document.
export function fieldsOf(rows: Row[]): Record<string, string> {
  const out: Record<string, string> = {};
  rows.forEach((r, i) => {
    out[`resin.lifts[${i}].depth`] = `${r.depth} mm`;
    if (i > 0 && r.after !== "") out[`resin.lifts[${i}].after`] = `${r.after} h`;
  });
  out[`resin.lifts[${rows.length}]`] = "";
  return out;
}

// yamlOf writes rows as they would stand in the document.
export function yamlOf(rows: Row[]): string {
  return `lifts: [${rows.map((r, i) => `{depth: ${r.depth} mm${i > 0 && r.after !== "" ? `, after: ${r.after} h` : ""}}`).join(", ")}]`;
}

export function TryLifts({ plan }: { plan: Plan }) {
  const [rows, setRows] = useState(() => rowsOf(plan));
  const [busy, setBusy] = useState(false);
  const [got, setGot] = useState<Plan>();
  const [wrong, setWrong] = useState("");
  if (!plan.resin.cure.computed) return null;
  const change = (i: number, part: Partial<Row>) => setRows(rows.map((r, k) => (k === i ? { ...r, ...part } : r)));
  const run = async () => {
    setBusy(true);
    setWrong("");
    try {
      setGot((await askTry(fieldsOf(rows))).value);
    } catch (e) {
      setWrong(e instanceof ProblemError ? `${e.problem.error} ${e.problem.hint}` : String(e));
    }
    setBusy(false);
  };
  return (
    <section class="try" aria-label="Try other lifts">
      <h4>Try other lifts</h4>
      <ol>
        {rows.map((r, i) => (
          <li key={i}>
            <label>Lift {i + 1}, depth in mm <input type="number" min="1" step="0.1" value={r.depth} onInput={(e) => change(i, { depth: e.currentTarget.value })} /></label>
            {i > 0 && <label>hours after lift {i} <input type="number" min="1" step="1" value={r.after} onInput={(e) => change(i, { after: e.currentTarget.value })} /></label>}
          </li>
        ))}
      </ol>
      <p class="try-buttons">
        <button type="button" class="button" disabled={busy} onClick={() => void run()}>{busy ? "Working …" : "See what it does"}</button>
        <button type="button" class="button quiet-button" onClick={() => setRows([...rows, { depth: "10", after: "24" }])}>One more lift</button>
        {rows.length > 1 && <button type="button" class="button quiet-button" onClick={() => setRows(rows.slice(0, -1))}>One less</button>}
        <button type="button" class="button quiet-button" onClick={() => { setRows(rowsOf(plan)); setGot(undefined); }}>As planned</button>
      </p>
      <output>
        {wrong && <p class="trouble-text">{wrong}</p>}
        {got && !wrong && <Seen plan={plan} tried={got} yaml={yamlOf(rows)} />}
      </output>
    </section>
  );
}

function hard(p: Plan): string {
  const last = p.resin.lifts.at(-1);
  return about((last?.at_h ?? 0) + (last?.wait_h ?? 0));
}

function Seen({ plan, tried, yaml }: { plan: Plan; tried: Plan; yaml: string }) {
  const s = systemOf(plan.piece.units);
  const [a, b] = [plan.resin.cure, tried.resin.cure];
  const bad = tried.findings.filter((f) => f.code.startsWith("resin/") && f.severity !== "note");
  return (
    <>
      <p>Peak <strong>{temperature(b.peak_c, s).main}</strong> in place of {temperature(a.peak_c, s).main}; dam face {temperature(b.dam_face_c, s).main}; worked on after {hard(tried)} in place of {hard(plan)}.</p>
      {bad.map((f) => <p key={f.text} class={`finding-${f.severity}`}><span class="severity">{f.severity}</span> {f.text}</p>)}
      <p class="quiet">To keep it, write under resin: <code>{yaml}</code></p>
    </>
  );
}
