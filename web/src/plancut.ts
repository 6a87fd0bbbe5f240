// The parts of a plan that are cut: programs, panels, carcass, bars.

export interface Program {
  file: string;
  kind: string;
  sheet: string;
  parts: string[];
  cutter_mm: number;
  passes: number;
  time_h: number;
  cut_length_mm: number;
  travel_mm: number;
  lines: number;
  tabs: unknown[];
}

export interface Toolpath { programs: Program[]; time_h: number }

export interface Proof {
  file: string;
  verified: boolean;
  lines: number;
  parts: { part: string; gouged_mm: number; uncut_mm: number; left_mm: number; tabs: unknown[] }[];
}

export interface SawCut { number: number; sheet: string; part: string; fence_mm: number; tilt_deg: number; length_mm: number; makes: string; trim: boolean }

export interface Cutlist {
  board: string;
  kerf_mm: number;
  sheets: { id: string; name: string; owned: boolean; size_x_mm: number; size_y_mm: number; used: number; placements: { part: string }[] }[];
  cuts: SawCut[];
  settings: { fence_mm: number; tilt_deg: number; first: number; last: number; re_zero: string }[];
  remains: { name: string; length_mm: number; width_mm: number; count: number; new: boolean }[];
  buy_sheets: number;
  proven: boolean;
}

export interface BarList {
  bar: string;
  bars: { id: string; name: string; length_mm: number; owned: boolean; cuts: { at_mm?: number; makes?: string }[]; rest_mm: number; offcut?: string }[];
  buy_bars: number;
  proven: boolean;
}

export interface Wall {
  mark: string;
  panel: string;
  load_kpa: number;
  bow_mm: number;
  bow_limit_mm: number;
  bow_without_battens_mm: number;
  uprights: number;
  rail: boolean;
  foot_screws: number;
  end_screws: number;
  screw_spacing_mm: number;
}

export interface Dam {
  mark: string;
  side: string;
  length_mm: number;
  height_mm: number;
  seal_mm: number;
  force_n: number;
  leak_gap_mm: number;
  leak_ml: number;
  water_test_ml: number;
  water_test_h: number;
  clamps: number;
  board: string;
  liner: string;
}

export interface Base {
  wanted: boolean;
  length_mm: number;
  width_mm: number;
  height_mm: number;
  parts: { name: string; length_mm: number; width_mm: number; thickness_mm: number; count: number; mass_kg: number; note: string }[];
  fixings: { name: string; count: number; where: string }[];
  supports: { name: string; tube: string; length_mm: number; count: number; at_mm: number[]; holes: { face: string; at_mm: number; diameter_mm: number; for: string }[] }[];
  cutting: Cutlist;
  bars: BarList[];
  mass_kg: number;
}
