// Estimates a resin's cure from what its data sheet says, or from a test pour.

import { useEffect, useState } from "preact/hooks";
import { askFit, type Problem, ProblemError } from "../api";
import { fixed, temperature, type System } from "../measure";
import { Table } from "../parts";
import { contentOf, readingsOf, readingsText } from "./readings";

export interface Fitted {
  rate_25_per_s: number;
  rate_25_low_per_s: number;
  rate_25_high_per_s: number;
  ratio_of_rates: number;
  heat_kj_kg: number;
  heat_sd_kj_kg?: number;
  activation_kj_mol: number;
  glass_transition_c: number;
  data: { name: string; given: number; model: number; unit: string; off_by_sd: number }[];
  slab: { depth_mm: number; peak_c: number; low_c: number; high_c: number };
  measure_next: string;
  doubts?: string[]; // why the estimate may be no resin's
}

type Field = [name: string, label: string, example: string];

const GROUPS: [title: string, fields: Field[]][] = [
  ["A cup of it, on nearly every data sheet", [["pot_life", "Pot life", "4.5 h"], ["cup_mass", "of a mass of", "100 g"], ["cup_temperature", "at", "25 C"], ["gel", "Gel time of the same", "16 h"], ["cup_peak", "Its peak temperature", "31 C"]]],
  ["A thin film", [["film_set", "No longer tacky after", "41 h"], ["film_temperature", "at", "22 C"]]],
  ["A pour", [["rated_depth", "Greatest depth of one lift", "50 mm"]]],
  ["If the sheet says", [["density", "Density, mixed", "1100 kg/m3"], ["heat_kj_kg", "Heat of reaction, kJ/kg", "280"], ["epoxy_equivalent", "or epoxy equivalent of A, g", "188"], ["parts_b", "with B to 100 of A, by mass", "43.8"], ["glass_transition", "Glass transition, cured", "52 C"]]],
];

const TEST: Field[] = [["test_depth", "Depth of the test pour", "40 mm"], ["test_air", "Air around it", "21 C"]];

const FEWEST = 5; // readings that say something of a cure

// cardOf writes the estimate as it would stand on a shelf of one's own; its ranges are
// two standard deviations each way.
export function cardOf(f: Fitted): string {
  const [k, low, high, sd] = [f.rate_25_per_s, f.rate_25_low_per_s, f.rate_25_high_per_s, f.heat_sd_kj_kg ?? 0];
  const heat = sd > 0 ? `{value: ${fixed(f.heat_kj_kg, 0)}, range: [${fixed(Math.max(1, f.heat_kj_kg - 2 * sd), 0)}, ${fixed(f.heat_kj_kg + 2 * sd, 0)}]}` : fixed(f.heat_kj_kg, 0);
  return [
    "resins:", "  my resin:", `    origin: ${f.data.some((r) => r.name.startsWith("test pour")) ? "measured" : "data sheet"}`,
    `    rate_25_per_s: {value: ${fixed(k, 9)}, range: [${fixed((low * low) / k, 9)}, ${fixed((high * high) / k, 9)}]}`,
    `    rate_ratio: ${f.ratio_of_rates.toPrecision(3)}`, `    activation_kj_mol: ${fixed(f.activation_kj_mol, 1)}`, `    heat_kj_kg: ${heat}`, `    glass_transition: ${fixed(f.glass_transition_c, 0)} C`,
  ].join("\n");
}

export function FitForm({ system }: { system: System }) {
  const [texts, setTexts] = useState<Record<string, string>>({});
  const [log, setLog] = useState("");
  const [busy, setBusy] = useState<AbortController>();
  const [got, setGot] = useState<Fitted>();
  const [wrong, setWrong] = useState<Problem>();
  useEffect(() => () => busy?.abort(), [busy]);
  const put = (name: string, text: string) => setTexts({ ...texts, [name]: text });
  const run = async () => {
    const fields = Object.fromEntries(Object.entries(texts).filter(([, t]) => t.trim() !== ""));
    const { list, wrong: line } = readingsOf(log);
    const fault = line || (list.length > 0 && list.length < FEWEST ? `A test pour needs at least ${FEWEST} readings; these are ${list.length}.` : "");
    setGot(undefined);
    setWrong(fault ? { error: fault, hint: "Write hours after the pour, then degrees C." } : undefined);
    if (fault) return;
    const stop = new AbortController();
    setBusy(stop);
    try {
      setGot((await askFit({ ...fields, ...(list.length > 0 ? { test_pour_content: contentOf(list) } : {}), ...(Object.keys(fields).length + list.length === 0 ? { pot_life: "" } : {}) }, stop.signal)).value);
    } catch (e) {
      setWrong(e instanceof ProblemError ? e.problem : { error: String(e), hint: "" });
    }
    setBusy(undefined);
  };
  return (
    <details class="fit">
      <summary>Another resin? Estimate its cure</summary>
      <p class="quiet">From its data sheet, or better from a test pour with a thermocouple. Give what is known and leave the rest empty.</p>
      <form onSubmit={(e) => { e.preventDefault(); void run(); }}>
        {GROUPS.map(([title, fields]) => (
          <fieldset key={title} class="fit-fields"><legend>{title}</legend>{fields.map((f) => <Text key={f[0]} field={f} value={texts[f[0]] ?? ""} put={put} />)}</fieldset>
        ))}
        <fieldset class="fit-fields"><legend>A test pour, which says the most</legend>
          {TEST.map((f) => <Text key={f[0]} field={f} value={texts[f[0]] ?? ""} put={put} />)}
          <Log text={log} put={setLog} />
        </fieldset>
        <p class="try-buttons">
          {busy ? <><progress aria-label="Estimating" /><button type="button" class="button" onClick={() => busy.abort()}>Stop</button></> : <button type="submit" class="button strong">Estimate</button>}
        </p>
      </form>
      <output>
        {wrong && <div class="fit-wrong"><p class="trouble-text">{wrong.error}</p>{wrong.hint && <p class="quiet">{wrong.hint}</p>}</div>}
        {got && <Estimate of={got} system={system} />}
      </output>
    </details>
  );
}

function Text({ field: [name, label, example], value, put }: { field: Field; value: string; put(name: string, text: string): void }) {
  return <label>{label} <input type="text" name={name} placeholder={`such as ${example}`} value={value} onInput={(e) => put(name, e.currentTarget.value)} /></label>;
}

// Log takes the thermocouple's readings: pasted, dropped on it, or from a file.
function Log({ text, put }: { text: string; put(t: string): void }) {
  const [over, setOver] = useState(false);
  const { list, wrong } = readingsOf(text);
  const take = (file: File | null | undefined) => void file?.text().then(put);
  return (
    <div class={over ? "fit-wide fit-over" : "fit-wide"}
      onDragOver={(e) => { e.preventDefault(); setOver(true); }} onDragLeave={() => setOver(false)}
      onDrop={(e) => { e.preventDefault(); setOver(false); take(e.dataTransfer?.files[0]); }}>
      <label>Readings, hours after the pour and °C, a line each: paste them or drop a file here
        <textarea rows={4} placeholder={"0, 22\n1, 22.6\n2, 23.4"} value={text} onInput={(e) => put(e.currentTarget.value)} />
      </label>
      <label class="fit-file">or choose a file <input type="file" accept=".csv,.txt,text/csv,text/plain" onChange={(e) => take(e.currentTarget.files?.[0])} /></label>
      {text.trim() !== "" && <output class={wrong ? "trouble-text" : "quiet"}>{wrong || readingsText(list)}</output>}
      {list.length > 2 && <LogCurve list={list} />}
    </div>
  );
}

const W = 420;
const H = 120;

function LogCurve({ list }: { list: [number, number][] }) {
  const [hours, temps] = [list.map(([h]) => h), list.map(([, c]) => c)];
  const [h0, h1, c0, c1] = [hours[0] as number, hours.at(-1) as number, Math.min(...temps), Math.max(...temps)];
  const x = (h: number) => 40 + ((h - h0) / (h1 - h0 || 1)) * (W - 60);
  const y = (c: number) => H - 22 - ((c - c0) / (c1 - c0 || 1)) * (H - 36);
  return (
    <figure class="curve">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={readingsText(list)}>
        <path class="axis" d={`M40 8V${H - 22}H${W - 20}`} />
        <path class="curve-line" d={list.map(([h, c], i) => `${i === 0 ? "M" : "L"}${fixed(x(h), 1)} ${fixed(y(c), 1)}`).join("")} />
        {[c0, c1].map((c) => <text key={c} x={36} y={y(c) + 4} text-anchor="end">{fixed(c, 0)}</text>)}
        {[h0, h1].map((h) => <text key={h} x={x(h)} y={H - 6} text-anchor="middle">{fixed(h, 1)} h</text>)}
      </svg>
    </figure>
  );
}

const POOR = 2; // standard deviations from which a datum and the model disagree

function Estimate({ of: f, system }: { of: Fitted; system: System }) {
  const t = (c: number) => temperature(Math.round(c), system).main.replace(".0", "");
  const poor = f.data.filter((r) => Math.abs(r.off_by_sd) > POOR);
  return (
    <>
      <p class="fit-peak">A slab of {fixed(f.slab.depth_mm, 0)} mm on board in air of {t(22)} peaks at <strong>{t(f.slab.peak_c)}</strong>, between {t(f.slab.low_c)} and {t(f.slab.high_c)}.</p>
      {(f.doubts ?? []).length > 0 && (
        <div class="fit-wrong">
          {f.doubts?.map((d) => <p key={d}>{d}</p>)}
          <p><strong>Do not pour by this card before the sheet is checked.</strong></p>
        </div>
      )}
      {f.measure_next && (
        <div class="fit-next">
          <p><strong>To know it better, measure</strong></p>
          <ol>{f.measure_next.split("; ").map((m) => <li key={m}>{m}</li>)}</ol>
        </div>
      )}
      <Table caption="How well the estimate meets what was given" rows={f.data} columns={[
        { head: "Given", words: true, cell: (r) => r.name },
        { head: "Value", cell: (r) => `${fixed(r.given, 1)} ${r.unit}` },
        { head: "Estimate", cell: (r) => `${fixed(r.model, 1)} ${r.unit}` },
        { head: "Off by", cell: (r) => (Math.abs(r.off_by_sd) > POOR ? <strong class="over">{fixed(r.off_by_sd, 1)} sd, check it</strong> : `${fixed(r.off_by_sd, 1)} sd`) },
      ]} total={`sd: standard deviations of such a number. ${poor.length === 0 ? "All of it agrees." : "What is off by more than 2 sd does not go with the rest."}`} />
      <p class="quiet">Rate at 25 °C {f.rate_25_per_s.toPrecision(3)} per s, {f.rate_25_low_per_s.toPrecision(2)} to {f.rate_25_high_per_s.toPrecision(2)}; heat {fixed(f.heat_kj_kg, 0)} kJ/kg; activation {fixed(f.activation_kj_mol, 0)} kJ/mol.</p>
      <p class="quiet">On a card of your own shelf:</p>
      <pre class="wide">{cardOf(f)}</pre>
    </>
  );
}
