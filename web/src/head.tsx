// The title block: what piece this is, and what can be taken away on paper.

import { packAddress } from "./api";
import { inches, mm, systemOf } from "./measure";
import type { Piece, Plan } from "./plan";
import { severityCount } from "./changes";
import { link } from "./state";

export function Head({ plan }: { plan: Plan }) {
  const { piece } = plan;
  return (
    <header class="head">
      <div class="head-name">
        <h1>{piece.name}</h1>
        <p class="sub">
          {[piece.version && `version ${piece.version}`, piece.client && `for ${piece.client}`, piece.date && `starts ${piece.date}`].filter(Boolean).join(" · ")}
        </p>
      </div>
      <Size piece={piece} />
      <Paper stops={severityCount(plan, "stop")} />
    </header>
  );
}

function Size({ piece }: { piece: Piece }) {
  const sides = [piece.length_mm, piece.width_mm, piece.height_mm];
  const millimetres = `${sides.map((v) => mm(v).replace(/(\.0)? mm$/, "")).join(" × ")} mm`;
  const inch = `${sides.map((v) => inches(v).replace(/ in$/, "")).join(" × ")} in`;
  const [main, other] = systemOf(piece.units) === "mm" ? [millimetres, inch] : [inch, millimetres];
  return (
    <p class="head-size">
      <span class="label">Length × width × height</span>
      <span class="size-main">{main}</span>
      <small>{other}</small>
    </p>
  );
}

function Paper({ stops }: { stops: number }) {
  return (
    <nav class="head-paper" aria-label="Shop pack">
      <span class="label">Shop pack, PDF</span>
      <span class="paper-links">
        <a class="button" href={packAddress("a4")}>A4</a>
        <a class="button" href={packAddress("letter")}>Letter</a>
      </span>
      {stops > 0 && <small class="paper-stop">Its cover says STOP.</small>}
    </nav>
  );
}

const LINKS = {
  connecting: "connecting",
  live: "follows the document",
  gone: "not connected",
  closed: "the program has stopped",
};

export function Foot({ plan }: { plan: Plan }) {
  const { piece } = plan;
  return (
    <footer class="foot">
      <span>{piece.name}{piece.version && `, version ${piece.version}`}</span>
      <span>inputs {piece.fingerprint || "–"}</span>
      <span class={`link link-${link.value}`}>{LINKS[link.value]}</span>
      <span>Local codes and licensed practice decide; this page defers to them.</span>
    </footer>
  );
}
