import { allFigures, showFigure } from "../state";

// LayerLink names a layer and turns the figure to it, where it has one.
export function LayerLink({ number, name }: { number: number; name: string }) {
  const figure = allFigures.value.find((f) => f.key === `layer-${number}`);
  const target = figure && Object.values(figure.names)[0];
  const text = name ? `${number}, ${name}` : String(number);
  if (target === undefined) return <>{text}</>;
  return <button type="button" class="inline" onClick={() => showFigure(target)}>{text}</button>;
}
