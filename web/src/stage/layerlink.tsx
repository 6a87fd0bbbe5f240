import { FigureLink } from "./figurelink";

// LayerLink names a layer and turns the figure to it, where it has one.
export function LayerLink({ number, name }: { number: number; name: string }) {
  return <FigureLink of={`layer-${number}`}>{name ? `${number}, ${name}` : String(number)}</FigureLink>;
}
