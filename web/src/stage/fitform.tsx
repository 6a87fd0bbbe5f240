// Estimates a resin's cure from what its data sheet says, or from a test pour.

import { useState } from "preact/hooks";
import { askFit, ProblemError } from "../api";
import { fixed, temperature, type System } from "../measure";
import { Table } from "../parts";

export interface Fitted {
  rate_25_per_s: number;
  rate_25_low_per_s: number;
  rate_25_high_per_s: number;
  ratio_of_rates: number;
  heat_kj_kg: number;
  activation_kj_mol: number;
  glass_transition_c: number;
  data: { name: string; given: number; model: number; unit: string; off_by_sd: number }[];
  slab: { depth_mm: number; peak_c: number; low_c: number; high_c: number };
  measure_next: string;
}

const FIELDS: [string, string, string][] = [
  ["pot_life", "Pot life", "4.5 h"], ["gel", "Gel time of the same mass", "16 h"], ["cup_peak", "Its peak temperature", "31 C"],
  ["cup_mass", "Mass tested", "100 g"], ["cup_temperature", "at", "25 C"], ["film_set", "A thin film is no longer tacky after", "41 h"],
  ["film_temperature", "at", "22 C"], ["rated_depth", "Greatest depth of one pour", "50 mm"], ["density", "Density, mixed", "1100 kg/m3"],
  ["heat_kj_kg", "Heat of reaction, kJ/kg", "280"], ["glass_transition", "Glass transition, fully cured", "52 C"],
  ["test_depth", "Depth of a test pour", "40 mm"], ["test_air", "Air at the test pour", "21 C"],
];

// cardOf writes the estimate as it would stand on a shelf of one's own.
export function cardOf(f: Fitted): string {
  return `rate_25_per_s: {value: ${fixed(f.rate_25_per_s, 9)}, origin: measured}\nrate_ratio: {value: ${f.ratio_of_rates.toPrecision(3)}, origin: measured}\n`
    + `activation_kj_mol: {value: ${fixed(f.activation_kj_mol, 1)}, origin: measured}\nheat_kj_kg: {value: ${fixed(f.heat_kj_kg, 0)}, origin: measured}`;
}

export function FitForm({ system }: { system: System }) {
  const [texts, setTexts] = useState<Record<string, string>>({});
  const [busy, setBusy] = useState(false);
  const [got, setGot] = useState<Fitted>();
  const [wrong, setWrong] = useState("");
  const put = (name: string, text: string) => setTexts({ ...texts, [name]: text });
  const run = async () => {
    setBusy(true);
    setWrong("");
    try {
      setGot((await askFit(Object.fromEntries(Object.entries(texts).filter(([, t]) => t.trim() !== "")))).value);
    } catch (e) {
      setWrong(e instanceof ProblemError ? `${e.problem.error}. ${e.problem.hint}` : String(e));
    }
    setBusy(false);
  };
  return (
    <details class="fit">
      <summary>Another resin? Estimate its cure from its data sheet</summary>
      <div class="fit-fields">
        {FIELDS.map(([name, label, example]) => (
          <label key={name}>{label} <input type="text" placeholder={example} value={texts[name] ?? ""} onInput={(e) => put(name, e.currentTarget.value)} /></label>
        ))}
        <label class="fit-wide">Thermocouple of the test pour, hours and °C, a line each
          <textarea rows={3} placeholder={"0, 22\n1, 22.6\n2, 23.4"} value={texts["test_pour_content"] ?? ""} onInput={(e) => put("test_pour_content", e.currentTarget.value)} />
        </label>
      </div>
      <p><button type="button" class="button" disabled={busy} onClick={() => void run()}>{busy ? "Working …" : "Estimate"}</button></p>
      <output>
        {wrong && <p class="trouble-text">{wrong}</p>}
        {got && !wrong && <Estimate of={got} system={system} />}
      </output>
    </details>
  );
}

function Estimate({ of: f, system }: { of: Fitted; system: System }) {
  const t = (c: number) => temperature(c, system).main;
  return (
    <>
      <Table caption="How well the estimate meets the data" rows={f.data} columns={[
        { head: "Datum", words: true, cell: (r) => r.name },
        { head: "Given", cell: (r) => `${fixed(r.given, 1)} ${r.unit}` },
        { head: "Model", cell: (r) => `${fixed(r.model, 1)} ${r.unit}` },
        { head: "Off, standard deviations", cell: (r) => (Math.abs(r.off_by_sd) > 2 ? `${fixed(r.off_by_sd, 1)}: check it` : fixed(r.off_by_sd, 1)) },
      ]} />
      <p>A slab of {fixed(f.slab.depth_mm, 0)} mm on board at {t(22)} peaks at <strong>{t(f.slab.peak_c)}</strong>, between {t(f.slab.low_c)} and {t(f.slab.high_c)}.</p>
      {f.measure_next && <p class="quiet">To know it better, measure: {f.measure_next}.</p>}
      <p class="quiet">On a card of your own shelf:</p>
      <pre class="wide">{cardOf(f)}</pre>
    </>
  );
}
