// One stream of events per tab: which version there is to fetch.

export type Link = "connecting" | "live" | "gone" | "closed";

interface Handlers {
  version(v: string): void;
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
      on.version(versionOf((e as MessageEvent<string>).data));
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

// versionOf reads an event's version; "" stands for a piece that cannot be shown.
export function versionOf(data: string): string {
  try {
    const v: unknown = JSON.parse(data);
    return typeof v === "object" && v !== null && "version" in v && typeof v.version === "string" ? v.version : "";
  } catch {
    return "";
  }
}
