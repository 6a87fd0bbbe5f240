import type { ComponentChildren } from "preact";
import { allFigures, figureKey, showFigure } from "../state";

// FigureLink turns the figure to the one of the given key, where there is one.
export function FigureLink({ of, children }: { of: string; children: ComponentChildren }) {
  const figure = allFigures.value.find((f) => f.key === of);
  if (!figure) return <>{children}</>;
  const target = Object.values(figure.names)[0];
  const turn = () => (target === undefined ? (figureKey.value = figure.key) : showFigure(target));
  return <button type="button" class="inline" onClick={() => { turn(); }}>{children}</button>;
}
