import type { ComponentChildren } from "preact";
import { allFigures, showFigure } from "../state";

// FigureLink turns the figure to the one of the given key, where there is one.
export function FigureLink({ of, children }: { of: string; children: ComponentChildren }) {
  const target = Object.values(allFigures.value.find((f) => f.key === of)?.names ?? {})[0];
  if (target === undefined) return <>{children}</>;
  return <button type="button" class="inline" onClick={() => showFigure(target)}>{children}</button>;
}
