// The cure of the resin, looked down upon and cut lengthwise, hour by hour.

import { useEffect, useMemo, useState } from "preact/hooks";
import { duration, fixed } from "../measure";
import { at, type Fields, type Kind, type KindInfo, infoOf, KINDS, NO_VALUE, rangeOf } from "./fields";
import { type Grid, HeatMap } from "./heatmap";
import { colourOf, type Ramp, rampOf } from "./ramp";

const PLAY = 160; // ms a frame

export function Cure({ fields: f, peakAt }: { fields: Fields; peakAt: number }) {
  const [kind, setKind] = useState<Kind>("temperature");
  const [frame, setFrame] = useState(() => nearest(f.hours, peakAt));
  const [playing, setPlaying] = useState(false);
  const info = infoOf(kind);
  const ramp = useMemo(() => rampFor(f, info), [f, info]);
  const now = Math.min(frame, f.hours.length - 1);
  useEffect(() => {
    if (!playing || !info.moves) return undefined;
    const timer = setInterval(() => setFrame((i) => (i + 1) % f.hours.length), PLAY);
    return () => clearInterval(timer);
  }, [playing, info, f]);
  return (
    <section class="cure" aria-label="Cure of the resin">
      <Kinds shown={kind} choose={setKind} />
      {ramp ? <Maps f={f} info={info} frame={now} ramp={ramp} /> : <p class="quiet">{info.title}: nowhere within the time that was computed.</p>}
      {info.moves && (
        <div class="scrub">
          <button type="button" class="button quiet-button" onClick={() => setPlaying(!playing)}>{playing ? "Hold" : "Play"}</button>
          <label>
            <span>{hourText(f.hours[now] as number)}</span>
            <input type="range" min="0" max={f.hours.length - 1} step="1" value={now} aria-label="Time after the first pour" aria-valuetext={hourText(f.hours[now] as number)}
              onInput={(e) => { setPlaying(false); setFrame(Number(e.currentTarget.value)); }} />
          </label>
        </div>
      )}
    </section>
  );
}

function nearest(hours: number[], t: number): number {
  return hours.reduce((best, h, i) => (Math.abs(h - t) < Math.abs((hours[best] as number) - t) ? i : best), 0);
}

export function hourText(h: number): string {
  return h === 0 ? "at the first pour" : `${duration(h)} after the first pour`;
}

function rampFor(f: Fields, info: KindInfo): Ramp | undefined {
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

function Maps({ f, info, frame, ramp }: { f: Fields; info: KindInfo; frame: number; ramp: Ramp }) {
  const [said, say] = useState("");
  const { plan, section } = info.of(f);
  const [flat, cut] = [plan[info.moves ? frame : 0] ?? [], section?.[frame]];
  const planGrid = useMemo<Grid>(() => ({ cols: f.nx, rows: f.ny, values: flat, read: info.read }), [f, flat, info]);
  const cutGrid = useMemo<Grid | undefined>(() => cut && { cols: f.nx, rows: f.levels_mm.length - 1, values: cut, read: info.read, heights: f.levels_mm }, [f, cut, info]);
  const text = (raw: number | undefined) => (raw === undefined || raw === NO_VALUE ? "" : `${fixed(info.read(raw), info.digits)} ${info.unit}`);
  const place = (i: number, y: string) => `${fixed(f.x0_mm + (i + 0.5) * f.step_mm, 0)} mm from the left, ${y}`;
  const overPlan = (i?: number, j?: number) => {
    if (i === undefined || j === undefined) return say("");
    const [x, y] = [f.x0_mm + (i + 0.5) * f.step_mm, f.y0_mm + (j + 0.5) * f.step_mm];
    const v = text(at(f, flat, x, y));
    return say(v && `${v}, ${place(i, `${fixed(y, 0)} mm from the front`)}`);
  };
  const overCut = (i?: number, k?: number) => {
    if (i === undefined || k === undefined) return say("");
    const v = text(cut?.[k * f.nx + i]);
    return say(v && `${v}, ${place(i, `${fixed(((f.levels_mm[k] ?? 0) + (f.levels_mm[k + 1] ?? 0)) / 2, 0)} mm above the deepest floor`)}`);
  };
  return (
    <>
      <HeatMap grid={planGrid} ramp={ramp} ratio={f.nx / f.ny} label={`${info.title}, looking down, ${captions(info)[0]}`} onPlace={overPlan} />
      <p class="map-name">Looking down, finished view: {captions(info)[0]}</p>
      {cutGrid && (
        <>
          <HeatMap grid={cutGrid} ramp={ramp} ratio={6} label={`${info.title}, cut lengthwise`} onPlace={overCut} />
          <p class="map-name">Cut lengthwise {fixed(f.section_y_mm, 0)} mm from the front, heights drawn larger</p>
        </>
      )}
      <Legend ramp={ramp} unit={info.unit} />
      <output class="map-said">{said || "Point at a place to read it."}</output>
    </>
  );
}

function captions(info: KindInfo): [string] {
  if (info.kind === "temperature") return ["the warmest resin over each place"];
  if (info.kind === "conversion") return ["the least cured resin over each place"];
  if (info.kind === "hard") return ["through the whole depth"];
  return ["at the surface"];
}

function Legend({ ramp, unit }: { ramp: Ramp; unit: string }) {
  const colour = (v: number) => `rgb(${colourOf(ramp, v).join(" ")})`;
  const first = ramp.steps[0] ?? 0;
  return (
    <div class="legend" aria-hidden="true">
      <span style={{ background: colour(first - 1e9) }} />
      {ramp.steps.map((s) => <span key={s} style={{ background: colour(s) }}><small>{s}</small></span>)}
      <em>{unit}</em>
    </div>
  );
}
