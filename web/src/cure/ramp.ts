// Colours for numbers: steps rather than a smear, so that a value can be read off the
// legend; each ramp runs from light to dark, so that it also reads in grey.

export type RGB = [number, number, number];

export interface Ramp {
  steps: number[]; // borders between colours, rising
  colours: RGB[]; // one more than borders
}

// Chosen: pale straw to dark ember for heat, pale to deep teal for conversion, pale to
// dark slate for hours.
const ENDS: Record<"heat" | "cure" | "time", RGB[]> = {
  heat: [[247, 240, 220], [240, 190, 110], [205, 95, 55], [105, 20, 35], [45, 5, 25]],
  cure: [[243, 240, 226], [160, 205, 190], [60, 140, 140], [15, 70, 90]],
  time: [[240, 238, 232], [180, 185, 195], [110, 120, 150], [45, 45, 85]],
};

// statesRamp gives each whole number from 0 a colour of its own, light to dark.
export function statesRamp(n: number): Ramp {
  return { steps: Array.from({ length: n - 1 }, (_, i) => i + 0.5), colours: Array.from({ length: n }, (_, i) => between(ENDS.cure, n < 2 ? 0 : i / (n - 1))) };
}

// isDark tells whether lettering on a colour must be light.
export function isDark([r, g, b]: RGB): boolean {
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < 120;
}

// rampOf covers low to high in round steps.
export function rampOf(kind: keyof typeof ENDS, low: number, high: number): Ramp {
  const steps = ticks(low, high, 10);
  const ends = ENDS[kind];
  const colours = Array.from({ length: steps.length + 1 }, (_, i) => between(ends, steps.length === 0 ? 0 : i / steps.length));
  return { steps, colours };
}

// ticks returns round numbers strictly between low and high, at most `most` of them.
export function ticks(low: number, high: number, most: number): number[] {
  const span = high - low;
  if (!(span > 0) || !Number.isFinite(span)) return [];
  const raw = span / most;
  const size = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((m) => m * size).find((s) => s >= raw) ?? raw;
  const out: number[] = [];
  for (let k = Math.floor(low / step) + 1; k * step < high; k++) out.push(Number((k * step).toPrecision(12)));
  return out;
}

function between(ends: RGB[], share: number): RGB {
  const t = Math.min(Math.max(share, 0), 1) * (ends.length - 1);
  const i = Math.min(Math.floor(t), ends.length - 2);
  const [a, b] = [ends[i] as RGB, ends[i + 1] as RGB];
  return [0, 1, 2].map((k) => Math.round((a[k] as number) + ((b[k] as number) - (a[k] as number)) * (t - i))) as RGB;
}

// colourOf returns the colour of v.
export function colourOf(r: Ramp, v: number): RGB {
  let i = 0;
  while (i < r.steps.length && v >= (r.steps[i] as number)) i++;
  return r.colours[i] as RGB;
}
