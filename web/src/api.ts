// What the server is asked for, and what it answers when it cannot.

import type { Fields } from "./cure/fields";
import type { Drawing, Title } from "./drawing";
import type { Finding, Plan } from "./plan";
import type { Fitted } from "./stage/fitform";

// A Problem is the reason there is no answer.
export interface Problem {
  error: string;
  hint: string;
  findings?: Finding[];
  gone?: boolean; // the server did not answer at all
  stopped?: boolean; // by the maker: nothing is wrong
}

export class ProblemError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.error);
    this.problem = problem;
  }
}

export const GONE: Problem = {
  error: "The program does not answer.",
  hint: "Start it again where it ran; this page connects by itself.",
  gone: true,
};

interface Answer<T> { value: T; version: string }

// STOPPED is the answer to a question that was taken back.
export const STOPPED: Problem = { error: "Stopped.", hint: "Nothing was changed." };

async function ask<T>(path: string, signal?: AbortSignal): Promise<Answer<T>> {
  let response: Response;
  try {
    response = await fetch(path, signal ? { signal } : {});
  } catch {
    throw new ProblemError(signal?.aborted ? STOPPED : GONE);
  }
  const body: unknown = await response.json().catch(() => undefined);
  if (signal?.aborted) throw new ProblemError(STOPPED);
  if (!response.ok || body === undefined) throw new ProblemError(problemOf(body, response.status));
  return { value: body as T, version: (response.headers.get("ETag") ?? "").replaceAll('"', "") };
}

// problemOf reads an answer that is no result.
export function problemOf(body: unknown, status: number): Problem {
  if (typeof body === "object" && body !== null && "error" in body && typeof body.error === "string") {
    const p: Problem = { error: body.error, hint: "hint" in body && typeof body.hint === "string" ? body.hint : "" };
    if ("stopped" in body && body.stopped === true) p.stopped = true;
    if ("findings" in body && Array.isArray(body.findings)) p.findings = body.findings as Finding[];
    return p;
  }
  return { error: `The program answered ${status} and nothing that can be read.`, hint: "Load the page again." };
}

export function askPlan(): Promise<Answer<Plan>> {
  return ask<Plan>("/api/plan");
}

// askCure asks for the cure in space and time; undefined where it was not computed.
export async function askCure(): Promise<Fields | undefined> {
  const answer = await ask<Fields | null>("/api/cure");
  return answer.value ?? undefined;
}

export function askTitles(): Promise<Answer<Title[]>> {
  return ask<Title[]>("/api/drawings");
}

export function askDrawing(name: string): Promise<Answer<Drawing>> {
  return ask<Drawing>(`/api/drawings/${encodeURIComponent(name)}`);
}

// askTry asks what the plan would be with some fields typed otherwise.
export function askTry(fields: Record<string, string>, signal?: AbortSignal): Promise<Answer<Plan>> {
  return ask<Plan>(`/api/try?${new URLSearchParams(fields).toString()}`, signal);
}

// askFit asks for a resin's cure as estimated from the fields of its data sheet.
export function askFit(fields: Record<string, string>, signal?: AbortSignal): Promise<Answer<Fitted>> {
  return ask<Fitted>(`/api/fit?${new URLSearchParams(fields).toString()}`, signal);
}

export function svgAddress(name: string): string {
  return `/api/drawings/${encodeURIComponent(name)}.svg`;
}

export function packAddress(paper: "a4" | "letter"): string {
  return `/api/pack.pdf?paper=${paper}`;
}
