// The numbers a maker looks for first, in the order they are asked for.

import { count, duration, fixed, length, mass, systemOf, volume } from "./measure";
import { computed, type Plan } from "./plan";

export interface KeyNumber {
  id: string;
  label: string;
  main: string;
  other: string;
  note: string; // one short line of context
  stage: string;
}

// keyNumbers lists them; stages that were not computed give none.
export function keyNumbers(plan: Plan): KeyNumber[] {
  return [...resinNumbers(plan), ...shellNumbers(plan), ...massNumbers(plan), ...timeNumbers(plan)].filter((k) => computed(plan, k.stage));
}

function resinNumbers({ piece, relief, resin }: Plan): KeyNumber[] {
  const s = systemOf(piece.units);
  const order = volume(resin.order_l, s);
  const basin = volume(relief.volume_l, s);
  return [
    {
      id: "order", label: "Resin to order", main: order.main, stage: "resin",
      other: `${order.other} · ${fixed(resin.order_imp_gal, 2)} imp gal`,
      note: `A and B together, ${mass(resin.order_kg, s).main}`,
    },
    {
      id: "basin", label: "Basin", main: basin.main, other: basin.other, stage: "relief",
      note: `${length(relief.depth_mm, s).main} deep, ${count(resin.lifts.length, "lift")}`,
    },
  ];
}

function shellNumbers({ piece, concrete }: Plan): KeyNumber[] {
  const shell = volume(concrete.shell_volume_l, systemOf(piece.units));
  return [{
    id: "shell", label: "Concrete in the shell", main: shell.main, other: shell.other, stage: "concrete",
    note: `${count(concrete.coats.length, "coat")}, ${count(concrete.batches.length, "batch", "batches")}`,
  }];
}

function massNumbers({ piece, structure }: Plan): KeyNumber[] {
  const s = systemOf(piece.units);
  const flip = mass(structure.flip_kg, s);
  const delivered = mass(structure.delivered_kg, s);
  return [
    { id: "flip", label: "Turned over in its form", ...flip, stage: "structure", note: people(structure.lifters) },
    { id: "delivered", label: "Delivered", ...delivered, stage: "structure", note: people(structure.carriers) },
  ];
}

function people(n: number): string {
  return n > 0 ? `${count(n, "person", "people")} to lift` : "";
}

function timeNumbers({ calendar, cost }: Plan): KeyNumber[] {
  const out: KeyNumber[] = [{
    id: "hands", label: "Hands-on work", main: duration(calendar.hands_h), other: "", stage: "calendar",
    note: calendar.finish === "" ? "no dates: no shop hours" : `done ${calendar.finish}`,
  }];
  if (cost.total > 0) {
    out.push({
      id: "cost", label: "Materials", main: fixed(cost.total, 2), other: "", stage: "cost",
      note: cost.unpriced > 0 ? `${count(cost.unpriced, "line")} without a price` : "whole packages",
    });
  }
  return out;
}
