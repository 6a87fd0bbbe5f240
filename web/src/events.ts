// One stream of events per tab: which version there is to fetch, or why there is none.

import { type Problem, problemOf } from "./api";

export type Link = "connecting" | "live" | "gone" | "closed";

// An Offer says what the server has.
export interface Offer {
  version: string;
  problem?: Problem;
}

// Progress is how far the server is with working the piece out.
export interface Progress {
  title: string;
  share: number; // of the stage at work, 0 to 1
  doing: string;
}

interface Handlers {
  progress(p: Progress | undefined): void;
  offer(o: Offer): void;
  link(l: Link): void;
}

const SOONEST = 1000; // ms before the first try to connect again
const LATEST = 15_000;

// follow listens until stop is called, and connects again by itself, more patiently
// each time.
export function follow(on: Handlers, open: () => EventSource = () => new EventSource("/api/events")): { stop(): void } {
  let wait = SOONEST;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let source: EventSource | undefined;

  const again = (link: Link) => {
    source?.close();
    on.link(link);
    clearTimeout(timer);
    timer = setTimeout(connect, wait);
    wait = Math.min(wait * 2, LATEST);
  };
  const connect = () => {
    source = open();
    source.addEventListener("plan", (e) => {
      wait = SOONEST;
      on.link("live");
      on.progress(undefined);
      on.offer(offerOf((e as MessageEvent<string>).data));
    });
    source.addEventListener("progress", (e) => {
      wait = SOONEST;
      on.link("live");
      on.progress(progressOf((e as MessageEvent<string>).data));
    });
    source.addEventListener("closing", () => again("closed"));
    source.addEventListener("error", () => again("gone"));
  };
  connect();
  return {
    stop() {
      clearTimeout(timer);
      source?.close();
    },
  };
}

// progressOf reads an event; what cannot be read is no stage, at its beginning.
export function progressOf(data: string): Progress {
  const p: Progress = { title: "", share: 0, doing: "" };
  try {
    const v: unknown = JSON.parse(data);
    if (typeof v !== "object" || v === null) return p;
    if ("title" in v && typeof v.title === "string") p.title = v.title;
    if ("doing" in v && typeof v.doing === "string") p.doing = v.doing;
    if ("share" in v && typeof v.share === "number") p.share = Math.min(1, Math.max(0, v.share));
  } catch {
    // nothing to tell
  }
  return p;
}

// offerOf reads an event. One that cannot be read offers version "", which is no
// version: what is there is then asked for.
export function offerOf(data: string): Offer {
  try {
    const v: unknown = JSON.parse(data);
    if (typeof v !== "object" || v === null || !("version" in v) || typeof v.version !== "string") return { version: "" };
    return "problem" in v && v.problem ? { version: v.version, problem: problemOf(v.problem, 0) } : { version: v.version };
  } catch {
    return { version: "" };
  }
}
