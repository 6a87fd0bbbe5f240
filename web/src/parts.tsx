// Small pieces that several parts of the page are made of.

import type { ComponentChildren } from "preact";
import type { Measure } from "./measure";
import type { Severity, StageState } from "./plan";

// Q shows a quantity in the maker's unit, with the other unit small beneath.
export function Q({ of }: { of: Measure }) {
  return (
    <span class="q">
      <span class="q-main">{of.main}</span>
      {of.other && <small class="q-other">{of.other}</small>}
    </span>
  );
}

const SHAPES: Record<Severity | "fine" | "none", string> = {
  stop: "M5.3 1h5.400L15 5.300v5.400L10.7 15H5.300L1 10.700V5.300Z",
  caution: "M8 1.3 15.5 14.500H.5Z",
  note: "M8 1.500a6.5 6.5 0 1 0 .01 0Z",
  fine: "M1.5 8.5 6 13 14.5 3.5",
  none: "M2 8h12",
};

// Mark is the sign of a severity or state. Its shape differs as well as its colour,
// and a word always stands beside it.
export function Mark({ of }: { of: Severity | StageState }) {
  const kind = of === "not computed" ? "none" : of;
  return (
    <svg class={`mark mark-${kind}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <path d={SHAPES[kind]} />
      {(kind === "caution" || kind === "stop") && <path class="mark-in" d={kind === "stop" ? "M4.5 8h7" : "M8 5.500v4.500M8 11.800v1.2"} />}
    </svg>
  );
}

export interface Column<T> {
  head: string;
  cell: (row: T) => ComponentChildren;
  words?: boolean; // text, set to the left
}

// stacks tells whether a table is too wide for a phone, where each row then becomes a
// block of named values.
export function stacks<T>(columns: Column<T>[]): boolean {
  return columns.length > 5 || (columns.length > 3 && columns.slice(1).some((c) => c.words));
}

// Table shows rows; the first column names the row. A table wider than the page
// scrolls by itself and can be reached by keyboard.
export function Table<T>({ caption, columns, rows, total }: { caption: string; columns: Column<T>[]; rows: T[]; total?: ComponentChildren }) {
  const kind = (c: Column<T>) => (c.words ? "words" : "figures");
  return (
    // A region that may scroll must take the keyboard.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section class="wide" aria-label={caption} tabIndex={0}>
      <table class={stacks(columns) ? "stack" : undefined}>
        <caption>{caption}</caption>
        <thead>
          <tr>{columns.map((c) => <th key={c.head} scope="col" class={kind(c)}>{c.head}</th>)}</tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={i}>
              {columns.map((c, n) => n === 0
                ? <th key={c.head} scope="row" class={kind(c)}>{c.cell(row)}</th>
                : <td key={c.head} class={kind(c)} data-head={c.head}>{c.cell(row)}</td>)}
            </tr>
          ))}
        </tbody>
      </table>
      {total && <p class="total">{total}</p>}
    </section>
  );
}

// Facts lists names and values; a name led by a dash is a part of what stands above.
export function Facts({ rows }: { rows: [string, ComponentChildren][] }) {
  return (
    <dl class="facts">
      {rows.map(([name, value]) => (
        <div key={name} class={name.startsWith("– ") ? "part" : undefined}>
          <dt>{name.replace(/^– /, "")}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
