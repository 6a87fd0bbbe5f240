import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { follow, offerOf, progressOf, type Link, type Offer, type Progress } from "./events";

class Stream extends EventTarget {
  closed = false;
  close() { this.closed = true; }
  say(name: string, data = "") { this.dispatchEvent(new MessageEvent(name, { data })); }
}

describe("follow", () => {
  beforeEach(() => { vi.useFakeTimers(); });
  afterEach(() => { vi.useRealTimers(); });

  const begin = () => {
    const streams: Stream[] = [];
    const [links, offers]: [Link[], Offer[]] = [[], []];
    const steps: (Progress | undefined)[] = [];
    const stop = follow({ link: (l) => links.push(l), progress: (p) => steps.push(p), offer: (o) => offers.push(o) }, () => {
      const s = new Stream();
      streams.push(s);
      return s as unknown as EventSource;
    });
    return { streams, links, offers, steps, stop };
  };

  it("hands on what is offered", () => {
    const f = begin();
    f.streams[0]?.say("plan", '{"version":"a"}');
    f.streams[0]?.say("plan", '{"version":"","problem":{"error":"line 3","hint":"mend it"}}');
    expect(f.offers).toEqual([{ version: "a" }, { version: "", problem: { error: "line 3", hint: "mend it" } }]);
    expect(f.links).toEqual(["live", "live"]);
  });

  it("tells how far the work is, until there is a plan", () => {
    const f = begin();
    f.streams[0]?.say("progress", '{"stage":"resin","title":"Resin","share":0.5,"doing":"lift 2"}');
    f.streams[0]?.say("plan", '{"version":"a"}');
    expect(f.steps).toEqual([{ title: "Resin", share: 0.5, doing: "lift 2" }, undefined]);
    expect(f.links).toEqual(["live", "live"]);
  });

  it("connects again, more patiently each time, with one stream at a time", () => {
    const f = begin();
    for (const wait of [1000, 2000, 4000, 8000, 15_000, 15_000]) {
      const n = f.streams.length;
      f.streams.at(-1)?.say("error");
      expect(f.streams.at(-1)?.closed).toBe(true);
      vi.advanceTimersByTime(wait - 1);
      expect(f.streams).toHaveLength(n);
      vi.advanceTimersByTime(1);
      expect(f.streams).toHaveLength(n + 1);
    }
    f.streams.at(-1)?.say("plan", '{"version":"a"}');
    f.streams.at(-1)?.say("error");
    vi.advanceTimersByTime(1000);
    expect(f.streams).toHaveLength(8);
  });

  it("tells a program that ends from one that is gone, and stops when told", () => {
    const f = begin();
    f.streams[0]?.say("closing");
    expect(f.links).toEqual(["closed"]);
    f.stop.stop();
    vi.advanceTimersByTime(60_000);
    expect(f.streams).toHaveLength(1);
  });
});

describe("offerOf", () => {
  it.each(["", "{", "3", "null", '{"version":3}'])("%s offers nothing", (data) => expect(offerOf(data)).toEqual({ version: "" }));
});

describe("progressOf", () => {
  it.each(["", "{", "3", "null", '{"title":3,"share":"x"}'])("%s tells nothing", (data) => expect(progressOf(data)).toEqual({ title: "", share: 0, doing: "" }));
  it("holds the share between 0 and 1", () => {
    expect(progressOf('{"share":7}').share).toBe(1);
    expect(progressOf('{"share":-7}').share).toBe(0);
  });
});
