// Keeps lettering apart on a small sheet: a drawing leaves room for its texts at the
// size they have on paper, and on a phone they are larger than that.

import type { Item } from "../drawing";
import type { Sheet } from "./sheet";

const SMALLEST = 11; // px
const LARGEST = 18;
const LEADING = 1.2; // line height in letter heights
const LETTER = 0.52; // mean width of a letter in letter heights

// letterSize turns a height in mm into pixels that can be read on this sheet.
export function letterSize(mm: number, sheet: Sheet): number {
  return Math.min(Math.max(mm * sheet.scale, SMALLEST), LARGEST);
}

// A Line is a text with its place on the sheet: x, and y of its base line.
export interface Line {
  index: number; // of its item in the drawing
  x: number;
  y: number;
  size: number;
  left: number;
  right: number;
}

// spread places the level texts of a drawing; one that would run into another above
// it moves down. It returns the lines and how far down the lowest now reaches.
export function spread(items: Item[], sheet: Sheet): { lines: Map<number, Line>; foot: number } {
  const all: Line[] = [];
  for (const [index, item] of items.entries()) {
    if (!item.text || item.text.turn !== 0) continue;
    const [x, y] = sheet.at(item.text.at);
    const size = letterSize(item.text.size, sheet);
    const width = size * LETTER * item.text.text.length;
    const before = { start: 0, middle: 0.5, end: 1 }[item.text.anchor] ?? 0;
    all.push({ index, x, y, size, left: x - width * before, right: x + width * (1 - before) });
  }
  all.sort((a, b) => a.y - b.y || a.index - b.index);
  for (const [i, line] of all.entries()) {
    for (const above of all.slice(0, i)) {
      const beside = line.left >= above.right || line.right <= above.left;
      if (!beside) line.y = Math.max(line.y, above.y + line.size * LEADING);
    }
  }
  const foot = all.reduce((low, l) => Math.max(low, l.y + l.size * 0.35), 0);
  return { lines: new Map(all.map((l) => [l.index, l])), foot };
}
