// The figure: always in sight, with a row of drawings and a switch that turns the
// piece over.

import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { svgAddress } from "../api";
import { turns, type Drawing, type Figure } from "../drawing";
import { CureFigure } from "../cure/figure";
import { allRooms, chosen, CURE, drawings, fields, figure, figureKey, marked, roomFigures, side, spotOn, type Side } from "../state";
import { Ink } from "./ink";
import { spread } from "./lettering";
import { extent, fit, type Sheet } from "./sheet";
import { turnOver } from "./turn";

export function FigureView() {
  const f = figure.value;
  const name = chosen.value?.name;
  const wanted = name === undefined ? undefined : drawings.value.get(name);
  return (
    <section id="figure" class="figure" aria-label="The piece">
      <Rooms shown={f?.room} />
      <div class="figure-bar">
        <Tabs list={roomFigures.value} shown={f?.key} />
        {f?.key !== CURE.key && <Switch figure={f} />}
      </div>
      <div class="figure-panel" id="figure-panel" role="tabpanel" aria-labelledby={f && `tab-${f.key}`}>
        {f?.key === CURE.key && fields.value ? <CureFigure /> : wanted ? <Sheeted wanted={wanted} /> : <p class="quiet figure-empty">No drawing yet: the basin could not be read from the drawing.</p>}
      </div>
      {wanted && (
        <p class="figure-foot">
          <span class="stamp">{wanted.view === "" ? wanted.title : `${wanted.view.toUpperCase()} VIEW`}</span>
          <span class="quiet">{wanted.view === "" ? "" : wanted.title}</span>
          <a href={svgAddress(wanted.name)}>this figure as SVG</a>
        </p>
      )}
    </section>
  );
}

// Rooms chooses which part of the work the figures below are of.
function Rooms({ shown }: { shown: string | undefined }) {
  if (allRooms.value.length < 2) return null;
  return (
    <nav class="rooms" aria-label="Drawings of">
      {allRooms.value.map((r) => (
        <button key={r.name} type="button" aria-current={r.name === shown ? "true" : undefined} onClick={() => { figureKey.value = r.first.key; }}>{r.title}</button>
      ))}
    </nav>
  );
}

function Tabs({ list, shown }: { list: Figure[]; shown: string | undefined }) {
  const row = useRef<HTMLDivElement>(null);
  const move = (e: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowLeft: -1, Home: -list.length, End: list.length }[e.key];
    if (step === undefined || list.length === 0) return;
    e.preventDefault();
    const from = list.findIndex((f) => f.key === shown);
    const to = Math.abs(step) === 1 ? (from + step + list.length) % list.length : step < 0 ? 0 : list.length - 1;
    figureKey.value = list[to]?.key ?? "";
    row.current?.querySelectorAll<HTMLElement>("[role=tab]")[to]?.focus();
  };
  // The keys are those of the tab in focus; the row itself takes none.
  return (
    // oxlint-disable-next-line jsx-a11y/interactive-supports-focus
    <div class="tabs" role="tablist" aria-label="Drawings" ref={row} onKeyDown={move}>
      {list.map((f, i) => (
        <button key={f.key} class={again(f, list[i - 1]) ? "tab-again" : undefined} id={`tab-${f.key}`} type="button" role="tab" aria-selected={f.key === shown} aria-controls="figure-panel"
          tabIndex={f.key === shown ? 0 : -1} onClick={() => { figureKey.value = f.key; }}>
          <Words of={f.title} />
        </button>
      ))}
    </div>
  );
}

// wordsOf is a title without the number it ends with.
function wordsOf(title: string): string {
  return title.replace(/ \d+$/, "");
}

// again tells whether a title repeats the words of the one before it and differs in
// its number only: then the number is enough where room is short.
function again(f: Figure, before: Figure | undefined): boolean {
  const words = wordsOf(f.title);
  return before !== undefined && words !== f.title && words === wordsOf(before.title);
}

function Words({ of }: { of: string }) {
  const words = wordsOf(of);
  return <><span class="tab-word">{words === of ? of : `${words} `}</span>{of.slice(words.length + 1)}</>;
}

const SIDES: [Side, string][] = [["finished", "Finished view"], ["form", "Form view"]];

function Switch({ figure: f }: { figure: Figure | undefined }) {
  const can = f !== undefined && turns(f);
  const now = can ? side.value : chosen.value?.view;
  return (
    <fieldset class="switch" disabled={!can}>
      <legend class="out-of-sight">Side the piece is seen from</legend>
      {SIDES.map(([value, text]) => (
        <label key={value}>
          <input type="radio" name="side" value={value} checked={now === value} onChange={() => { side.value = value; }} />
          <span>{text}</span>
        </label>
      ))}
    </fieldset>
  );
}

// Sheeted shows a drawing on a sheet as wide as there is room, and turns the sheet
// over when the next drawing is of the other side.
function Sheeted({ wanted }: { wanted: Drawing }) {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const [shown, setShown] = useState(wanted);
  useLayoutEffect(() => {
    const flips = shown !== wanted && shown.view !== wanted.view && shown.view !== "" && wanted.view !== "";
    if (!flips || !frame.current) {
      setShown(wanted);
      return undefined;
    }
    return turnOver(frame.current, () => setShown(wanted));
  }, [wanted]);
  const sheet = fit(shown.box, size.width, size.tallest);
  const { lines, foot } = spread(shown.items ?? [], sheet);
  const e = extent(shown.items ?? [], sheet, foot);
  return (
    <div class="sheet" ref={frame}>
      <svg class="drawing" width={sheet.width} height={(e.height * sheet.width) / e.width} viewBox={`${e.left} ${e.top} ${e.width} ${e.height}`} role="img" aria-label={labelOf(shown)}>
        <Hatching />
        <Ink drawing={shown} sheet={sheet} lines={lines} />
        <Spotted drawing={shown} sheet={sheet} />
      </svg>
    </div>
  );
}

function labelOf(d: Drawing): string {
  return d.view === "" || d.title.toLowerCase().includes("view") ? d.title : `${d.title}, ${d.view} view`;
}

function Hatching() {
  return (
    <defs>
      <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="hatch-line" d="M0 0V7" />
      </pattern>
    </defs>
  );
}

// Spotted circles the place of the marked finding.
function Spotted({ drawing, sheet }: { drawing: Drawing; sheet: Sheet }) {
  const at = spotOn(drawing.name);
  const ring = useRef<SVGGElement>(null);
  const finding = marked.value;
  useEffect(() => {
    ring.current?.closest(".figure")?.scrollIntoView({ block: "nearest" });
  }, [finding]);
  if (!at || !finding) return null;
  const [x, y] = sheet.at(at);
  return (
    <g class={`found found-${finding.severity}`} ref={ring}>
      <circle cx={x} cy={y} r="16" />
      <path d={`M${x - 26} ${y}h14M${x + 12} ${y}h14M${x} ${y - 26}v14M${x} ${y + 12}v14`} />
      <title>{finding.text}</title>
    </g>
  );
}

// useSize follows the width of an element and the height a figure may take.
function useSize(ref: { current: HTMLElement | null }): { width: number; tallest: number } {
  const [size, setSize] = useState({ width: 700, tallest: 420 });
  useLayoutEffect(() => {
    const el = ref.current;
    if (!el) return undefined;
    const look = () => {
      const width = el.clientWidth;
      if (width > 0) setSize({ width, tallest: Math.max(220, Math.min(window.innerHeight * 0.52, width * 1.2)) });
    };
    look();
    if (typeof ResizeObserver === "undefined") return undefined;
    const watch = new ResizeObserver(look);
    watch.observe(el);
    return () => watch.disconnect();
  }, []);
  return size;
}
