// The maker moves a lift and sees what it does, without touching the document.

import { useEffect, useRef, useState } from "preact/hooks";
import { askTry, ProblemError } from "../api";
import { about, count, fixed, length, systemOf, temperature, type System } from "../measure";
import type { Alternative, Plan } from "../plan";
import { Table } from "../parts";

export interface Row { depth: string; after: string }

function rowsOf(depths: number[], hours: number[]): Row[] {
  return depths.map((d, i) => ({ depth: fixed(d, 1), after: i === 0 ? "" : fixed((hours[i] ?? 0) - (hours[i - 1] ?? 0), 0) }));
}

function planned(plan: Plan): Row[] {
  return rowsOf(plan.resin.lifts.map((l) => l.depth_mm), plan.resin.lifts.map((l) => l.at_h));
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

// withDepth sets the depth of a lift; the last one takes what is left of the basin.
export function withDepth(rows: Row[], i: number, depth: string, basin: number): Row[] {
  const out = rows.with(i, { depth, after: rows[i]?.after ?? "" });
  const last = out.length - 1;
  if (i === last) return out;
  const rest = basin - out.slice(0, last).reduce((sum, r) => sum + (Number(r.depth) || 0), 0);
  return out.with(last, { depth: fixed(rest, 1), after: out[last]?.after ?? "" });
}

// split pours the last lift in two halves, merged the last two in one.
export function split(rows: Row[]): Row[] {
  const last = rows.at(-1);
  if (!last) return rows;
  const half = Math.round((Number(last.depth) || 0) * 5) / 10;
  return [...rows.slice(0, -1), { ...last, depth: fixed(half, 1) }, { depth: fixed((Number(last.depth) || 0) - half, 1), after: "24" }];
}

export function merged(rows: Row[]): Row[] {
  const [a, b] = [rows.at(-2), rows.at(-1)];
  if (!a || !b) return rows;
  return [...rows.slice(0, -2), { ...a, depth: fixed((Number(a.depth) || 0) + (Number(b.depth) || 0), 1) }];
}

// faultOf says why rows cannot be tried; "" where they can.
export function faultOf(rows: Row[], basin: number): string {
  const bad = rows.findIndex((r) => !(Number(r.depth) > 0));
  if (bad >= 0) return `Lift ${bad + 1} needs a depth above 0 mm.`;
  const soon = rows.findIndex((r, i) => i > 0 && !(Number(r.after) > 0));
  if (soon > 0) return `Lift ${soon + 1} needs the hours after lift ${soon}.`;
  const sum = rows.reduce((s, r) => s + Number(r.depth), 0);
  if (Math.abs(sum - basin) > 0.25) return `The lifts are ${fixed(sum, 1)} mm together, the basin is ${fixed(basin, 1)} mm deep.`;
  return "";
}

export function TryLifts({ plan, wanted }: { plan: Plan; wanted?: Alternative | undefined }) {
  const [rows, setRows] = useState(() => planned(plan));
  const [busy, setBusy] = useState<AbortController>();
  const [got, setGot] = useState<{ plan: Plan; rows: Row[] }>();
  const [wrong, setWrong] = useState("");
  const place = useRef<HTMLElement>(null);
  const basin = plan.relief.depth_mm;
  useEffect(() => {
    if (!wanted) return;
    setRows(rowsOf(wanted.lifts_mm, wanted.poured_at_h));
    setGot(undefined);
    place.current?.scrollIntoView({ block: "nearest" });
  }, [wanted]);
  useEffect(() => () => busy?.abort(), [busy]);
  if (!plan.resin.cure.computed) return null;
  const run = async () => {
    const stop = new AbortController();
    setBusy(stop);
    setGot(undefined);
    setWrong("");
    try {
      setGot({ plan: (await askTry(fieldsOf(rows), stop.signal)).value, rows });
    } catch (e) {
      setWrong(e instanceof ProblemError ? `${e.problem.error} ${e.problem.hint}` : String(e));
    }
    setBusy(undefined);
  };
  const fault = faultOf(rows, basin);
  return (
    <section class="try" aria-label="Try other lifts" ref={place}>
      <h4>Move a lift and see</h4>
      <p class="quiet">The last lift takes what is left of the {fixed(basin, 1)} mm. The document stays as it is.</p>
      <ol>{rows.map((r, i) => <LiftRow key={i} row={r} number={i + 1} depth={(d) => setRows(withDepth(rows, i, d, basin))} after={(h) => setRows(rows.map((x, k) => (k === i ? { ...x, after: h } : x)))} />)}</ol>
      <p class="try-buttons">
        <button type="button" class="button" onClick={() => setRows(split(rows))}>One more lift</button>
        {rows.length > 1 && <button type="button" class="button" onClick={() => setRows(merged(rows))}>One less</button>}
        <button type="button" class="button" onClick={() => { setRows(planned(plan)); setGot(undefined); setWrong(""); }}>As planned</button>
      </p>
      <output class="try-fault">{fault}</output>
      <p class="try-buttons">
        {busy
          ? <><progress aria-label="Computing the cure" /><button type="button" class="button" onClick={() => busy.abort()}>Stop</button></>
          : <button type="button" class="button strong" disabled={fault !== ""} onClick={() => void run()}>See what it does</button>}
      </p>
      <output>
        {wrong && <p class="trouble-text">{wrong}</p>}
        {got && <Seen plan={plan} tried={got.plan} yaml={yamlOf(got.rows)} />}
      </output>
    </section>
  );
}

function LiftRow({ row, number, depth, after }: { row: Row; number: number; depth(d: string): void; after(h: string): void }) {
  return (
    <li>
      <Stepper label={`Lift ${number}, depth in mm`} shown={`Lift ${number}`} unit="mm deep" value={row.depth} step={1} set={depth} />
      {number > 1 && <Stepper label={`hours after lift ${number - 1}`} shown="after" unit={`h from lift ${number - 1}`} value={row.after} step={1} set={after} />}
    </li>
  );
}

// Stepper is a number to type, or to move by a button each way.
function Stepper({ label, shown, unit, value, step, set }: { label: string; shown: string; unit: string; value: string; step: number; set(v: string): void }) {
  const move = (by: number) => set(fixed(Math.max(step, (Number(value) || 0) + by), Number.isInteger(Number(value)) ? 0 : 1));
  return (
    <div class="stepper">
      <span class="stepper-name" aria-hidden="true">{shown}</span>
      <button type="button" class="button" aria-label={`Less: ${label}`} onClick={() => move(-step)}>−</button>
      <input type="text" inputMode="decimal" aria-label={label} value={value} onInput={(e) => set(e.currentTarget.value)} />
      <button type="button" class="button" aria-label={`More: ${label}`} onClick={() => move(step)}>+</button>
      <span class="stepper-unit" aria-hidden="true">{unit}</span>
    </div>
  );
}

interface Line { what: string; before: string; now: string }

// linesOf compares two plans as the maker reads them.
export function linesOf(plan: Plan, tried: Plan, s: System): Line[] {
  const t = (c: number) => temperature(c, s).main;
  const facts = (p: Plan): [string, string][] => {
    const { cure: k, lifts } = p.resin;
    const last = lifts.at(-1);
    return [
      ["Lifts", lifts.map((l) => length(l.depth_mm, s).main.replace(/ (mm|in)$/, "")).join(" + ")],
      ["Peak", t(k.peak_c)],
      ["likely", `${t(k.peak_low_c)} to ${t(k.peak_high_c)}`],
      ["Dam face", t(k.dam_face_c)],
      ["Worked on after", about((last?.at_h ?? 0) + (last?.wait_h ?? 0))],
      ["Sanded between", lifts.filter((l) => l.scuff).map((l) => `after lift ${l.number}`).join(", ") || "no"],
      ["Buckets", String(lifts.reduce((n, l) => n + l.batches.length, 0))],
      ["Done", p.calendar.finish || "no date"],
    ];
  };
  const now = facts(tried);
  return facts(plan).map(([what, before], i) => ({ what, before, now: now[i]?.[1] ?? "" }));
}

function Seen({ plan, tried, yaml }: { plan: Plan; tried: Plan; yaml: string }) {
  const s = systemOf(plan.piece.units);
  const bad = tried.findings.filter((f) => f.code.startsWith("resin/") && f.severity !== "note");
  return (
    <>
      <Table caption="What it does" rows={linesOf(plan, tried, s)} columns={[
        { head: "What", words: true, cell: (l) => l.what },
        { head: "As planned", cell: (l) => l.before },
        { head: "Tried", cell: (l) => (l.now === l.before ? "the same" : <strong>{l.now}</strong>) },
      ]} />
      {bad.length === 0 ? <p>Nothing of the resin is beyond a limit.</p> : <p>{count(bad.length, "thing")} to look at:</p>}
      {bad.map((f) => <p key={f.text} class={`finding-${f.severity}`}><span class="severity">{f.severity}</span> {f.text} <span class="quiet">{f.remedy}</span></p>)}
      <p class="quiet">To keep it, write under resin: <code>{yaml}</code></p>
    </>
  );
}
