// The cure of the resin, looked down upon and cut lengthwise, hour by hour.

import { useMemo, useState } from "preact/hooks";
import { count, fixed } from "../measure";
import { extreme, type Fields, frameAt, hasResin, type Kind, type KindInfo, infoOf, KINDS, NO_VALUE, rangeOf } from "./fields";
import { type Grid, HeatMap, type Pin } from "./heatmap";
import { isDark, type Ramp, rampOf, statesRamp } from "./ramp";
import type { Shores } from "./shores";
import { hourText, type Moment, TimeBar } from "./timebar";

interface Props {
  fields: Fields;
  moments: Moment[]; // what happens when: pours, the peak
  shores?: Shores | undefined;
  peakAt: number;
  clock(h: number): string; // "" where the hours have no time of day
}

export function Cure({ fields: f, moments, shores, peakAt, clock }: Props) {
  const [kind, setKind] = useState<Kind>("temperature");
  const [frame, setFrame] = useState(() => frameAt(f, peakAt));
  const info = infoOf(kind);
  const ramp = useMemo(() => rampFor(f, info), [f, info]);
  const now = Math.min(frame, f.hours.length - 1);
  return (
    <section class="cure" aria-label="Cure of the resin">
      <Kinds shown={kind} choose={setKind} />
      {info.moves && <TimeBar hours={f.hours} now={now} moments={moments} clock={clock} go={setFrame} />}
      {ramp ? <Maps f={f} info={info} frame={now} ramp={ramp} shores={shores} /> : <p class="quiet">{info.title}: nowhere within the {count(f.hours.at(-1) ?? 0, "hour")} that were computed.</p>}
    </section>
  );
}

function rampFor(f: Fields, info: KindInfo): Ramp | undefined {
  if (info.states) return statesRamp(info.states.length);
  const range = rangeOf(f, info);
  if (!range) return undefined;
  if (info.kind === "conversion") return rampOf("cure", 0, 100);
  return rampOf(info.kind === "temperature" ? "heat" : "time", range[0] - 0.01, range[1] + 0.01);
}

function Kinds({ shown, choose }: { shown: Kind; choose(k: Kind): void }) {
  return (
    <fieldset class="kinds">
      <legend class="out-of-sight">What the maps show</legend>
      {KINDS.map((k) => (
        <label key={k.kind}>
          <input type="radio" name="cure-kind" value={k.kind} checked={k.kind === shown} onChange={() => choose(k.kind)} />
          <span>{k.title}</span>
        </label>
      ))}
    </fieldset>
  );
}

// valueText writes a raw value of a map with its unit.
function valueText(info: KindInfo, raw: number | undefined): string {
  if (raw === undefined || raw === NO_VALUE) return "";
  const v = info.read(raw);
  return info.states ? (info.states[v] ?? "") : `${fixed(v, info.digits)} ${info.unit}`;
}

// A Read is a cell that is read out.
interface Read { i: number; j: number; cut: boolean }

// readingText says what a cell holds and where it is.
export function readingText(f: Fields, info: KindInfo, { i, j, cut }: Read, values: number[] | undefined): string {
  if (!values) return "";
  const cell = j * f.nx + i;
  const none = !cut && !info.moves && hasResin(f, cell) ? `not within ${f.hours.at(-1)} h` : "no resin";
  const value = valueText(info, values[cell]) || none;
  const along = `${fixed(f.x0_mm + (i + 0.5) * f.step_mm, 0)} mm from the left end`;
  if (!cut) return `${value}, ${along}, ${fixed(f.y0_mm + (j + 0.5) * f.step_mm, 0)} mm from the near side`;
  return `${value}, ${along}, ${fixed(((f.levels_mm[j] ?? 0) + (f.levels_mm[j + 1] ?? 0)) / 2, 0)} mm above the deepest floor`;
}

// levelText writes the level of a line.
function levelText(v: number): string {
  return fixed(v, 1).replace(/\.0$/, "");
}

function Maps({ f, info, frame, ramp, shores }: { f: Fields; info: KindInfo; frame: number; ramp: Ramp; shores: Shores | undefined }) {
  const [read, setRead] = useState<Read>(); // stays where it is when the hour moves on
  const { plan, section } = info.of(f);
  const [flat, cut] = [plan[info.moves ? frame : 0] ?? [], section?.[frame]];
  const smooth = !info.states;
  const planGrid = useMemo<Grid>(() => ({ cols: f.nx, rows: f.ny, values: flat, read: info.read, smooth, ...(info.moves ? {} : { wet: (n: number) => hasResin(f, n) }) }), [f, flat, info]);
  const cutGrid = useMemo<Grid | undefined>(() => cut && { cols: f.nx, rows: f.levels_mm.length - 1, values: cut, read: info.read, smooth, heights: f.levels_mm }, [f, cut, info]);
  const pin = useMemo(() => pinOf(f, info, flat), [f, info, flat]);
  const place = { x0: f.x0_mm, y0: f.y0_mm, x1: f.x0_mm + f.nx * f.step_mm, y1: f.y0_mm + f.ny * f.step_mm };
  return (
    <>
      <p class="map-name"><strong>Looking down</strong>, finished view: {captionOf(info)}</p>
      <HeatMap grid={planGrid} ramp={ramp} ratio={f.nx / f.ny} place={place} shores={shores} cut={cutGrid && f.section_y_mm} pin={pin} words={levelText} label={`${info.title}, looking down, ${captionOf(info)}`} onPlace={(i, j) => setRead(i === undefined || j === undefined ? undefined : { i, j, cut: false })} />
      {cutGrid && (
        <>
          <p class="map-name"><strong>Cut lengthwise</strong> along the dashed line, {fixed(f.section_y_mm, 0)} mm from the near side; heights drawn larger</p>
          <HeatMap grid={cutGrid} ramp={ramp} ratio={6} place={place} words={levelText} label={`${info.title}, cut lengthwise`} onPlace={(i, j) => setRead(i === undefined || j === undefined ? undefined : { i, j, cut: true })} />
        </>
      )}
      {info.states ? <States names={info.states} ramp={ramp} /> : <Legend ramp={ramp} unit={info.unit} />}
      {!info.moves && flat.some((v, n) => v === NO_VALUE && hasResin(f, n)) && <p class="never"><i /> not within the {f.hours.at(-1)} h that were computed</p>}
      <output class="map-said" aria-live="polite">{(read && readingText(f, info, read, read.cut ? cut : flat)) || summary(f, info, flat, frame)}</output>
    </>
  );
}

// pinOf marks the place that matters most: the warmest, the least cured, the last.
function pinOf(f: Fields, info: KindInfo, flat: number[]): Pin | undefined {
  if (info.states) return undefined;
  const cell = extreme(flat, info.kind !== "conversion");
  return cell === undefined ? undefined : { col: cell % f.nx, row: Math.floor(cell / f.nx), text: valueText(info, flat[cell]) };
}

// summary says a map in one sentence.
export function summary(f: Fields, info: KindInfo, flat: number[], frame: number): string {
  if (info.states) {
    const parts = info.states.map((name, n) => [name, flat.filter((v) => v === n).length] as const);
    const all = parts.reduce((sum, [, n]) => sum + n, 0);
    return `${hourText(f.hours[frame] ?? 0)}, of the resin's surface: ${parts.filter(([, n]) => n > 0).map(([name, n]) => `${fixed((100 * n) / all, 0)} % ${name}`).join(", ")}.`;
  }
  const [low, high] = [extreme(flat, false), extreme(flat, true)];
  if (low === undefined || high === undefined) return "";
  const most = info.kind === "conversion" ? low : high;
  const word = info.kind === "temperature" ? "warmest" : info.kind === "conversion" ? "least" : "last";
  const at = `${fixed(f.x0_mm + ((most % f.nx) + 0.5) * f.step_mm, 0)} mm from the left end, ${fixed(f.y0_mm + (Math.floor(most / f.nx) + 0.5) * f.step_mm, 0)} mm from the near side`;
  return `${valueText(info, flat[low])} to ${valueText(info, flat[high])}; ${word} ${at}.`;
}

function captionOf(info: KindInfo): string {
  if (info.kind === "temperature") return "the warmest resin over each place";
  if (info.kind === "conversion") return "the least cured resin over each place";
  if (info.kind === "again") return "whether the surface takes another lift";
  return info.kind === "hard" ? "through the whole depth, hours after the first pour" : "at the surface, hours after the first pour";
}

const css = (c: readonly number[]) => `rgb(${c.join(" ")})`;

function Legend({ ramp, unit }: { ramp: Ramp; unit: string }) {
  return (
    <div class="legend" aria-hidden="true">
      {ramp.colours.map((c, i) => <span key={i} style={{ background: css(c) }}>{i > 0 && <small>{ramp.steps[i - 1]}</small>}</span>)}
      <em>{unit}</em>
    </div>
  );
}

function States({ names, ramp }: { names: string[]; ramp: Ramp }) {
  return (
    <ul class="states">
      {names.map((n, i) => {
        const c = ramp.colours[i] ?? [0, 0, 0];
        return <li key={n} style={{ background: css(c), color: isDark([c[0], c[1], c[2]]) ? "#fff" : "#1b1916" }}>{n}</li>;
      })}
    </ul>
  );
}
