// What program.test.ts uses of readers that come without types.
declare module "gcode-parser" {
  export function parseStringSync(text: string): { line: string; words: [string, number][] }[];
}
declare module "gcode-toolpath" {
  type Place = { x: number; y: number; z: number };
  type Handlers = {
    addLine: (modal: { motion: string }, from: Place, to: Place) => void;
    addArcCurve: (modal: { motion: string }, from: Place, to: Place, centre: Place) => void;
  };
  export default class Toolpath {
    constructor(handlers: Handlers);
    loadFromStringSync(text: string): void;
  }
}
