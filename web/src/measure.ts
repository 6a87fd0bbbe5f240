// Numbers as the maker reads them. Each quantity has two texts: `main` in the units
// the maker works in, `other` in the other system.

export interface Measure {
  main: string;
  other: string;
}

export type System = "mm" | "in";

const MM_PER_INCH = 25.4; // exact
const L_PER_US_GAL = 3.785411784; // exact
const L_PER_US_FL_OZ = L_PER_US_GAL / 128;
const KG_PER_LB = 0.45359237; // exact
const NO_NUMBER = "–";

// systemOf reads the plan's unit word; anything but inches works in millimetres.
export function systemOf(units: string): System {
  return units === "in" ? "in" : "mm";
}

// fixed writes v with n decimals, never "-0", and a dash for what is no number.
export function fixed(v: number, n: number): string {
  if (!Number.isFinite(v)) return NO_NUMBER;
  const text = v.toFixed(n);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

// mm writes a length in millimetres to 0.1.
export function mm(v: number): string {
  return Number.isFinite(v) ? `${fixed(v, 1)} mm` : NO_NUMBER;
}

// inches writes a length given in mm to the nearest 1/32 in, in lowest terms.
export function inches(v: number): string {
  if (!Number.isFinite(v)) return NO_NUMBER;
  const all = Math.round((Math.abs(v) / MM_PER_INCH) * 32);
  const sign = v < 0 && all > 0 ? "-" : "";
  const whole = Math.floor(all / 32);
  let [part, of] = [all % 32, 32];
  while (part > 0 && part % 2 === 0) [part, of] = [part / 2, of / 2];
  if (part === 0) return `${sign}${whole} in`;
  return whole === 0 ? `${sign}${part}/${of} in` : `${sign}${whole} ${part}/${of} in`;
}

function pair(system: System, metric: string, customary: string): Measure {
  return system === "mm" ? { main: metric, other: customary } : { main: customary, other: metric };
}

// length shows a length given in mm.
export function length(v: number, s: System): Measure {
  return pair(s, mm(v), inches(v));
}

// volume shows a volume given in litres; gallons and ounces say whose.
export function volume(v: number, s: System): Measure {
  const small = Math.abs(v) < 1;
  const metric = small ? `${fixed(v * 1000, 0)} ml` : `${fixed(v, 2)} l`;
  const us = small ? `${fixed(v / L_PER_US_FL_OZ, 1)} US fl oz` : `${fixed(v / L_PER_US_GAL, 2)} US gal`;
  return Number.isFinite(v) ? pair(s, metric, us) : { main: NO_NUMBER, other: "" };
}

// mass shows a mass given in kg.
export function mass(v: number, s: System): Measure {
  if (!Number.isFinite(v)) return { main: NO_NUMBER, other: "" };
  const metric = Math.abs(v) < 1 ? grams(v) : `${fixed(v, 1)} kg`;
  return pair(s, metric, pounds(v));
}

// grams writes a mass given in kg in whole grams.
export function grams(v: number): string {
  return Number.isFinite(v) ? `${fixed(v * 1000, 0)} g` : NO_NUMBER;
}

// pounds writes a mass given in kg in pounds and tenths of an ounce.
export function pounds(v: number): string {
  if (!Number.isFinite(v)) return NO_NUMBER;
  const tenths = Math.round((Math.abs(v) / KG_PER_LB) * 160);
  const sign = v < 0 && tenths > 0 ? "-" : "";
  const [lb, oz] = [Math.floor(tenths / 160), fixed((tenths % 160) / 10, 1)];
  return lb === 0 ? `${sign}${oz} oz` : `${sign}${lb} lb ${oz} oz`;
}

// area shows an area given in mm2.
export function area(v: number, s: System): Measure {
  const foot = 12 * MM_PER_INCH;
  return Number.isFinite(v) ? pair(s, `${fixed(v / 1e6, 3)} m²`, `${fixed(v / (foot * foot), 2)} ft²`) : { main: NO_NUMBER, other: "" };
}

// temperature shows a temperature given in degrees Celsius.
export function temperature(c: number, s: System): Measure {
  return pair(s, `${fixed(c, 1)} °C`, `${fixed((c * 9) / 5 + 32, 1)} °F`);
}

// duration writes hours to the minute: "1 h 30 min", with days from 48 h on.
export function duration(hours: number): string {
  if (!Number.isFinite(hours)) return NO_NUMBER;
  let minutes = Math.round(Math.abs(hours) * 60);
  const sign = hours < 0 && minutes > 0 ? "-" : "";
  const parts: string[] = [];
  if (minutes >= 48 * 60) {
    parts.push(`${Math.floor(minutes / 1440)} d`);
    minutes %= 1440;
  }
  if (minutes >= 60) parts.push(`${Math.floor(minutes / 60)} h`);
  if (minutes % 60 > 0 || parts.length === 0) parts.push(`${minutes % 60} min`);
  return sign + parts.join(" ");
}

// about writes hours that are a forecast: to a quarter below six, to the hour above
// twelve, and never to the minute.
export function about(hours: number): string {
  if (!Number.isFinite(hours)) return NO_NUMBER;
  const step = Math.abs(hours) < 6 ? 0.25 : Math.abs(hours) < 12 ? 0.5 : 1;
  return duration(Math.round(hours / step) * step);
}

// percent writes a fraction as per cent to 0.1.
export function percent(f: number): string {
  return Number.isFinite(f) ? `${fixed(f * 100, 1)} %` : NO_NUMBER;
}

// count writes a number with its noun: "1 batch", "3 batches".
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}
