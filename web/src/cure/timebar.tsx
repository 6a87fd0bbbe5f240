// The hours of the cure on a bar: dragged, stepped by keys or buttons, or played.

import { useEffect, useState } from "preact/hooks";
import { duration } from "../measure";

// A Moment is something that happens: a pour, the peak.
export interface Moment { name: string; hour: number }

interface Props {
  hours: number[];
  now: number; // index
  moments: Moment[];
  clock(h: number): string;
  go(i: number | ((old: number) => number)): void;
}

const PLAY = 160; // ms a frame

export function TimeBar({ hours, now, moments, clock, go }: Props) {
  const [playing, setPlaying] = useState(false);
  useEffect(() => {
    if (!playing) return undefined;
    const timer = setInterval(() => go((i) => (i + 1) % hours.length), PLAY);
    return () => clearInterval(timer);
  }, [playing, hours]);
  const put = (i: number) => {
    setPlaying(false);
    go(Math.max(0, Math.min(hours.length - 1, i)));
  };
  const hour = hours[now] ?? 0;
  const time = clock(hour);
  return (
    <div class="scrub">
      <p class="scrub-hour">
        <strong>{hourText(hour)}</strong>{time && <span class="quiet">{time}</span>}
      </p>
      <div class="scrub-row">
        <button type="button" class="button" aria-label="Earlier" disabled={now === 0} onClick={() => put(now - 1)}>◂</button>
        <div class="scrub-bar">
          <input type="range" min="0" max={hours.length - 1} step="1" value={now} aria-label="Time after the first pour" aria-valuetext={hourText(hour)} onInput={(e) => put(Number(e.currentTarget.value))} />
          {moments.map((m) => <i key={m.name} aria-hidden="true" style={{ left: `calc(0.5rem + (100% - 1rem) * ${share(hours, m.hour)})` }} />)}
        </div>
        <button type="button" class="button" aria-label="Later" disabled={now === hours.length - 1} onClick={() => put(now + 1)}>▸</button>
        <button type="button" class="button scrub-play" onClick={() => setPlaying(!playing)}>{playing ? "Hold" : "Play"}</button>
      </div>
      <p class="moments">
        {moments.map((m) => <button key={m.name} type="button" class="button" onClick={() => put(nearest(hours, m.hour))}>{m.name} <small>{duration(Math.round(m.hour))}</small></button>)}
      </p>
    </div>
  );
}

export function hourText(h: number): string {
  return h === 0 ? "At the first pour" : `${duration(h)} after the first pour`;
}

function nearest(hours: number[], t: number): number {
  return hours.reduce((best, h, i) => (Math.abs(h - t) < Math.abs((hours[best] as number) - t) ? i : best), 0);
}

// share returns where an hour lies among frames that are not all as far apart, 0 to 1.
export function share(hours: number[], t: number): number {
  const last = hours.length - 1;
  const k = hours.findIndex((h) => h >= t);
  if (last < 1 || k === 0) return 0;
  if (k < 0) return 1;
  const [a, b] = [hours[k - 1] as number, hours[k] as number];
  return (k - 1 + (t - a) / (b - a)) / last;
}
