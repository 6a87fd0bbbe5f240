// What the page knows. Signals only; everything that shows them is elsewhere.

import { computed as derived, signal } from "@preact/signals";
import { askCure, askDrawing, askPlan, askTitles, GONE, type Problem, ProblemError } from "./api";
import { changes, type Change } from "./changes";
import type { Fields } from "./cure/fields";
import { figures, looksDown, rooms, type Drawing, type Figure, sideOf, type Title, toView } from "./drawing";
import { follow, type Link, type Progress } from "./events";
import type { Finding, Plan } from "./plan";

export type Side = "finished" | "form";

// CURE is the figure that is no drawing: maps of the cure, hour by hour.
export const CURE: Figure = { key: "cure", title: "Cure", room: "resin", names: {} };

export const plan = signal<Plan | undefined>(undefined);
export const problem = signal<Problem | undefined>(undefined);
export const link = signal<Link>("connecting");
export const progress = signal<Progress | undefined>(undefined);
export const changed = signal<Change[] | undefined>(undefined);
export const titles = signal<Title[]>([]);
export const drawings = signal<ReadonlyMap<string, Drawing>>(new Map());
export const fields = signal<Fields | undefined>(undefined);
export const figureKey = signal("");
export const side = signal<Side>("finished");
export const marked = signal<Finding | undefined>(undefined);
export const openStages = signal<ReadonlySet<string>>(new Set());

export const allFigures = derived<Figure[]>(() => (fields.value ? [...figures(titles.value), CURE] : figures(titles.value)));
export const figure = derived(() => allFigures.value.find((f) => f.key === figureKey.value) ?? allFigures.value[0]);
export const allRooms = derived(() => rooms(allFigures.value));
export const roomFigures = derived(() => allFigures.value.filter((f) => f.room === figure.value?.room));
export const chosen = derived(() => (figure.value ? sideOf(figure.value, side.value) : undefined));

let version = "";
let loading: Promise<void> | undefined;

// load fetches the plan and its drawings; a later call waits for an earlier one.
export function load(): Promise<void> {
  loading = (loading ?? Promise.resolve()).then(fetchAll);
  return loading;
}

async function fetchAll(): Promise<void> {
  try {
    const [p, t, c] = await Promise.all([askPlan(), askTitles(), askCure()]);
    const all = await Promise.all(t.value.map((d) => askDrawing(d.name)));
    if (plan.value && p.version !== version) changed.value = changes(plan.value, p.value);
    version = p.version;
    plan.value = p.value;
    titles.value = t.value;
    drawings.value = new Map(all.map((d) => [d.value.name, d.value]));
    fields.value = c;
    problem.value = undefined;
    keepMark(p.value);
  } catch (e) {
    problem.value = e instanceof ProblemError ? e.problem : { error: String(e), hint: "Load the page again." };
  }
}

// keepMark lets go of a marked finding that the new plan no longer makes.
function keepMark(p: Plan): void {
  const m = marked.value;
  if (m) marked.value = p.findings.find((f) => f.code === m.code && f.text === m.text);
}

const PATIENCE = 2500; // ms for the first event, before the plan is asked for without it

// start follows the server's events and loads what they offer.
export function start(): { stop(): void } {
  const timer = setTimeout(() => {
    if (!plan.value && !problem.value) void load();
  }, PATIENCE);
  const stream = follow({
    link(l) {
      link.value = l;
      if (l === "gone" || l === "closed") problem.value ??= GONE;
    },
    progress(p) {
      clearTimeout(timer);
      progress.value = p;
    },
    offer(o) {
      if (o.problem) problem.value = o.problem;
      else if (o.version === "" || o.version !== version || problem.value) void load();
    },
  });
  return {
    stop() {
      clearTimeout(timer);
      stream.stop();
    },
  };
}

export function toggleStage(name: string): void {
  const next = new Set(openStages.value);
  if (!next.delete(name)) next.add(name);
  openStages.value = next;
}

// showFigure turns to a drawing by its name.
export function showFigure(name: string): void {
  const f = allFigures.value.find((g) => Object.values(g.names).includes(name));
  if (!f) return;
  figureKey.value = f.key;
  if (f.names.form === name) side.value = "form";
  if (f.names.finished === name) side.value = "finished";
}

// mark shows a finding's place on the figure; on the plan, where the figure shown is
// not one that looks down on the piece.
export function mark(f: Finding): void {
  marked.value = marked.value === f ? undefined : f;
  if (marked.value && !spotOn(chosen.value?.name)) showFigure(planName());
}

function planName(): string {
  const flat = allFigures.value.find((f) => f.key === "plan") ?? allFigures.value.find((f) => f.names.finished !== undefined);
  return flat?.names[side.value] ?? flat?.names.finished ?? "";
}

// spotOn returns the marked place on a drawing, in its own view, or undefined where
// the drawing does not look down on the piece.
export function spotOn(name: string | undefined): [number, number] | undefined {
  const at = marked.value?.where.at_mm;
  const d = name === undefined ? undefined : drawings.value.get(name);
  if (!at || !d || !looksDown(d) || !plan.value) return undefined;
  return toView(at, marked.value?.where.view ?? "finished", d.view, plan.value.piece.length_mm);
}

// cancel asks the server to stop working; what was there before stays.
export function cancel(): void {
  void fetch("/api/cancel", { method: "POST" });
}

// again asks for the plan once more; the server takes up first what it was told to stop.
export async function again(): Promise<void> {
  if (!problem.value?.stopped) return load();
  try {
    await fetch("/api/again", { method: "POST" });
    problem.value = undefined; // its progress and its end come as events
  } catch {
    problem.value = GONE;
  }
  return undefined;
}
