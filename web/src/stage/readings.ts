// The readings of a test pour as a logger writes them: hours and degrees C, a line
// each, between commas, semicolons, tabs or spaces.

export interface Readings {
  list: [number, number][]; // hours after the pour, C
  wrong: string; // the first line that is none; "" where all are
}

const MOST = 400; // sent; the fit thins further

// readingsOf reads text; words in the first line are its heads.
export function readingsOf(text: string): Readings {
  const list: [number, number][] = [];
  const lines = text.split(/\r?\n/);
  let heads = true; // may still come
  for (const [n, raw] of lines.entries()) {
    const line = raw.trim();
    if (line === "" || line.startsWith("#")) continue;
    const pair = pairOf(line);
    if (!pair) {
      if (heads && /^["a-z°]/i.test(line)) {
        heads = false;
        continue;
      }
      return { list, wrong: `Line ${n + 1}, “${line.slice(0, 40)}”, is not a time in hours and a temperature.` };
    }
    const before = list.at(-1);
    if (before && pair[0] <= before[0]) return { list, wrong: `Line ${n + 1}: ${pair[0]} h does not come after ${before[0]} h.` };
    heads = false;
    list.push(pair);
  }
  return { list, wrong: "" };
}

// pairOf reads one line; a comma inside numbers is a decimal one where something else
// parts them.
function pairOf(typed: string): [number, number] | undefined {
  const line = typed.replaceAll(/(\d)\s*(?:h|°?C)(?=\W|$)/gi, "$1");
  const other = line.split(/[;\t]\s*/);
  const parts = (other.length > 1 ? other.map((p) => p.replace(",", ".")) : line.split(/\s*,\s*|\s+/)).filter((p) => p !== "");
  if (parts.length < 2) return undefined;
  const [h, c] = [numberOf(parts[0]), numberOf(parts[1])];
  return h === undefined || c === undefined ? undefined : [h, c];
}

function numberOf(text: string | undefined): number | undefined {
  const m = /^[+-]?(\d+\.?\d*|\.\d+)$/.exec((text ?? "").trim());
  return m ? Number(m[0]) : undefined;
}

// contentOf writes readings as they are sent, evenly thinned where there are many.
export function contentOf(list: [number, number][]): string {
  const n = Math.min(MOST, list.length);
  const some = Array.from({ length: n }, (_, i) => list[n < 2 ? i : Math.round((i * (list.length - 1)) / (n - 1))] as [number, number]);
  return some.map(([h, c]) => `${h},${c}`).join("\n");
}

// readingsText says what was read.
export function readingsText(list: [number, number][]): string {
  const [first, last] = [list[0], list.at(-1)];
  if (!first || !last) return "";
  const peak = list.reduce((a, b) => (b[1] > a[1] ? b : a));
  return `${list.length} reading${list.length === 1 ? "" : "s"}, ${first[0]} to ${last[0]} h; warmest ${peak[1]} °C at ${peak[0]} h.`;
}
