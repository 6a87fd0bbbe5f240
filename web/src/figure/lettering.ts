// Keeps lettering apart on a small sheet: a drawing leaves room for its texts at the
// size they have on paper, and on a phone they are larger than that.

import type { Item, Lettering } from "../drawing";
import type { Sheet } from "./sheet";

const SMALLEST = 11; // px
const LARGEST = 18;
const LEADING = 1.2; // line height in letter heights
const LETTER = 0.52; // mean width of a letter in letter heights

// letterSize turns a height in mm into pixels that can be read on this sheet.
export function letterSize(mm: number, sheet: Sheet): number {
  return Math.min(Math.max(mm * sheet.scale, SMALLEST), LARGEST);
}

// A Line is a text with its place on the sheet: x, and y of its first base line. A
// text too long for the sheet stands in several rows.
export interface Line {
  index: number; // of its item in the drawing
  x: number;
  y: number;
  size: number;
  left: number;
  right: number;
  rows: string[];
}

// spread places the level texts of a drawing; one that would run into another above
// it moves down. It returns the lines and how far down the lowest now reaches.
export function spread(items: Item[], sheet: Sheet): { lines: Map<number, Line>; foot: number } {
  const all = items.flatMap((item, index) => (item.text && item.text.turn === 0 ? [placed(item.text, index, sheet)] : []));
  all.sort((a, b) => a.y - b.y || a.index - b.index);
  for (const [i, line] of all.entries()) {
    for (const above of all.slice(0, i)) {
      const beside = line.left >= above.right || line.right <= above.left;
      if (!beside) line.y = Math.max(line.y, above.y + above.rows.length * line.size * LEADING);
    }
  }
  const foot = all.reduce((low, l) => Math.max(low, l.y + ((l.rows.length - 1) * LEADING + 0.35) * l.size), 0);
  return { lines: new Map(all.map((l) => [l.index, l])), foot };
}

function placed(text: Lettering, index: number, sheet: Sheet): Line {
  const [x, y] = sheet.at(text.at);
  const size = letterSize(text.size, sheet);
  const before = { start: 0, middle: 0.5, end: 1 }[text.anchor] ?? 0;
  const rows = before === 0 ? wrapped(text.text, (sheet.width - x) / (size * LETTER)) : [text.text];
  const width = size * LETTER * Math.max(...rows.map((r) => r.length));
  return { index, x, y, size, left: x - width * before, right: x + width * (1 - before), rows };
}

// wrapped breaks a text between words into rows of at most `most` letters; a single
// longer word stays whole.
export function wrapped(text: string, most: number): string[] {
  const rows: string[] = [];
  for (const word of text.split(" ")) {
    const last = rows.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
  }
  return rows;
}
