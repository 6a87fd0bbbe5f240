// The page of one piece.

import type { Problem } from "./api";
import { sentence } from "./changes";
import { FigureView } from "./figure/view";
import { Findings, placeText, worst } from "./findings";
import { Foot, Head } from "./head";
import { MeasureFirst } from "./measurefirst";
import { Numbers } from "./numbers";
import { Mark } from "./parts";
import type { Severity } from "./plan";
import { again, cancel, changed, plan, problem, progress } from "./state";
import { Stages } from "./stages";

export function App() {
  const p = plan.value;
  const wrong = problem.value;
  if (!p) return wrong ? <Nothing problem={wrong} /> : <Waiting />;
  return (
    <div class="page">
      <a class="skip" href="#findings-title">Skip to the findings</a>
      <Head plan={p} />
      {wrong && <Trouble problem={wrong} />}
      <Working />
      <News />
      <main class="desk">
        <Findings plan={p} />
        <div class="piece">
          <Numbers plan={p} />
          <FigureView />
        </div>
        <Stages plan={p} />
        <MeasureFirst plan={p} />
      </main>
      <Jump worst={worst(p.findings)} />
      <Foot plan={p} />
    </div>
  );
}

const PLACES = [["Findings", "findings-title"], ["Numbers", "numbers"], ["Figure", "figure"], ["Stages", "stages-title"]];

// Jump brings any part of the page under one tap on a phone.
function Jump({ worst: sign }: { worst: Severity | undefined }) {
  return (
    <nav class="jump" aria-label="Parts of this page">
      {PLACES.map(([text, id]) => <a key={id} href={`#${id}`}>{id === "findings-title" && sign && <Mark of={sign} />}{text}</a>)}
    </nav>
  );
}

function Waiting() {
  return (
    <main class="alone" aria-busy="true">
      <p class="quiet">Working the piece out …</p>
      <Working />
    </main>
  );
}

// Working says which stage is computed and how far it is, and stops it.
function Working() {
  const p = progress.value;
  if (!p?.title) return null;
  return (
    <section class="working" aria-label="Working">
      <p><span class="label">Working on</span> {p.title}{p.doing && <span class="quiet"> · {p.doing}</span>}</p>
      <progress max="1" value={p.share}>{Math.round(100 * p.share)} %</progress>
      <button type="button" class="button quiet-button" onClick={cancel}>Stop</button>
    </section>
  );
}

function Nothing({ problem: p }: { problem: Problem }) {
  return (
    <main class="alone">
      <h1>{p.stopped ? "Stopped" : p.gone ? "Not connected" : "The piece cannot be shown"}</h1>
      <Reasons problem={p} />
    </main>
  );
}

// Trouble stands above a plan that is no longer the newest.
function Trouble({ problem: p }: { problem: Problem }) {
  return (
    <section class="trouble" role="alert" aria-label="Trouble">
      <h2>{p.stopped ? "Stopped before its end" : p.gone ? "Not connected" : "The document as it stands now cannot be read"}</h2>
      <Reasons problem={p} />
      <p class="quiet">Below is the plan as it was before.</p>
    </section>
  );
}

function Reasons({ problem: p }: { problem: Problem }) {
  const list = p.findings ?? [];
  return (
    <>
      {list.length === 0 && <p class="trouble-text">{p.error}</p>}
      {list.length === 0 && p.hint && <p class="trouble-hint">{p.hint}</p>}
      <ul class="trouble-list">
        {list.map((f) => (
          <li key={f.code + f.text}>
            <p class="trouble-text">{f.text}</p>
            <p class="trouble-hint">{f.remedy}</p>
            <code>{placeText(f.where)}</code>
          </li>
        ))}
      </ul>
      <button type="button" class="button" onClick={() => void again()}>{p.stopped ? "Take it up again" : "Try again"}</button>
    </>
  );
}

// News says what the last edit changed, in numbers.
function News() {
  const list = changed.value;
  return (
    <output class="news">
      {list && (
        <p>
          <span class="label">Changed</span> {sentence(list)}
          <button type="button" class="button quiet-button" aria-label="Put this line away" onClick={() => { changed.value = undefined; }}>Put away</button>
        </p>
      )}
    </output>
  );
}
