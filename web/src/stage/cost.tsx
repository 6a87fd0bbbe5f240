import { count, fixed } from "../measure";
import { Table } from "../parts";
import type { Line, Plan } from "../plan";

export function CostDetail({ plan }: { plan: Plan }) {
  const { lines, total, unpriced } = plan.cost;
  return (
    <Table caption="Shopping list, in whole packages" rows={lines} columns={[
      { head: "What", words: true, cell: (l) => l.name },
      { head: "Need", cell: (l) => amount(l.need, l.unit) },
      { head: "Buy", words: true, cell: (l) => buy(l) },
      { head: "Left", cell: (l) => (l.buy && l.buy.length > 0 ? amount(l.left, l.unit) : "–") },
      { head: "Price", cell: (l) => (l.priced ? fixed(l.price, 2) : "–") },
    ]} total={totalText(total, unpriced, lines.length)} />
  );
}

// totalText says what it costs, and how much of it is not known.
export function totalText(total: number, unpriced: number, lines: number): string {
  if (lines > 0 && unpriced === lines) return "No line has a price yet: write prices on the shelf cards.";
  return `${fixed(total, 2)} together${unpriced > 0 ? `, ${count(unpriced, "line")} without a price` : ""}.`;
}

// Units that are words take an s; signs do not.
const WORDS = new Set(["sheet", "bar", "piece", "cartridge", "roll", "tube", "can", "pack", "board", "bottle", "bag"]);

// amount writes a need with its unit.
export function amount(v: number, unit: string): string {
  const number = fixed(v, Number.isInteger(v) ? 0 : 2);
  return `${number} ${WORDS.has(unit) && v !== 1 ? `${unit}s` : unit}`;
}

// buy says how many packages of which size; loose where none is known.
export function buy(l: Line): string {
  if (!l.buy || l.buy.length === 0) return `${amount(l.bought > 0 ? l.bought : l.need, l.unit)}, package size not stated`;
  return l.buy.map((b) => (b.size === 1 && WORDS.has(l.unit) ? amount(b.count, l.unit) : `${b.count} × ${amount(b.size, l.unit)}`)).join(" + ");
}
