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
      { head: "Left", cell: (l) => amount(l.left, l.unit) },
      { head: "Price", cell: (l) => (l.priced ? fixed(l.price, 2) : "–") },
    ]} total={`${fixed(total, 2)} together${unpriced > 0 ? `, ${count(unpriced, "line")} without a price` : ""}.`} />
  );
}

function amount(v: number, unit: string): string {
  return `${fixed(v, Number.isInteger(v) ? 0 : 2)} ${unit}`;
}

// buy says how many packages of which size; loose where none is known.
export function buy(l: Line): string {
  if (!l.buy || l.buy.length === 0) return `${amount(l.bought, l.unit)}, package size not stated`;
  return l.buy.map((b) => `${b.count} × ${amount(b.size, l.unit)}`).join(" + ");
}
