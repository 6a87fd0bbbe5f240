// The plan as the server sends it: the same keys as `pourwright plan --json`. Units
// stand in the names. This page shows these numbers and works none out.

import type { Base, Cutlist, Dam, Proof, Toolpath, Wall } from "./plancut";

export type Severity = "note" | "caution" | "stop";
export type View = "finished" | "form" | "";
export type StageState = "fine" | "caution" | "stop" | "not computed";

export interface Piece {
  name: string;
  version: string;
  client?: string;
  units: string;
  length_mm: number;
  width_mm: number;
  height_mm: number;
  shell_mm: number;
  board_mm: number;
  corner: string;
  mixes: string[];
  resin: string;
  room_temp_c: number;
  date: string;
  fingerprint: string;
}

export interface Layer {
  number: number;
  name: string;
  from_mm: number;
  to_mm: number;
  area_mm2: number;
  perimeter_mm: number;
  volume_l: number;
  islands: number;
}

export interface Mouth {
  side: string;
  width_mm: number;
  depth_mm: number;
  opening_mm2: number;
  from_mm: number;
}

export interface FillPoint {
  depth_mm: number;
  volume_l: number;
  area_mm2: number;
}

export interface Narrow {
  kind: string;
  layer: number;
  x_mm: number;
  y_mm: number;
  width_mm: number;
  limit_mm: number;
}

export interface Relief {
  volume_l: number;
  depth_mm: number;
  layers: Layer[];
  mouths: Mouth[];
  fill: FillPoint[];
  narrow: Narrow[];
}

export interface FoamPart {
  id: string;
  layer: number;
  thickness_mm: number;
  area_mm2: number;
  box_x_mm: number;
  box_y_mm: number;
  mass_kg: number;
  thicknesses: number;
  mark: string;
  cut: boolean;
  neighbours: { part: string; where: string }[];
  dowels: { x_mm: number; y_mm: number; diameter_mm: number; with: string; shows: boolean }[];
  left_by_cutter: { kind: string; x_mm: number; y_mm: number; width_mm: number; area_mm2: number }[];
}

export interface Seam {
  id: string;
  layer: number;
  parts: string[];
  kind: string;
  length_mm: number;
  visible_mm: number;
  width_mm: number;
  keys: number;
  staggers: { layer: number; distance_mm: number }[];
  why: string;
}

export interface FoamSheet {
  name: string;
  stock: string;
  size_x_mm: number;
  size_y_mm: number;
  placements: { part: string; copy: number; turn_deg: number }[];
  used_length_mm: number;
  used_share: number;
  offcut?: { name: string; size_x_mm: number; size_y_mm: number };
}

export interface GlueMap {
  layer: number;
  order: string[];
  checks: { name: string; parts: string[]; length_mm: number }[];
}

export interface Knockout {
  parts: FoamPart[];
  seams: Seam[];
  sheets: FoamSheet[];
  glue_maps: GlueMap[];
  glue_order: string[];
  mass_kg: number;
  volume_l: number;
  sheets_at_least: number;
  sheets_new: number;
  limits: { x_mm: number; y_mm: number; by: string; route: string };
  kept: { margin_mm: number; spacing_mm: number; stagger_mm: number; smallest_mm: number; clearance_mm: number; dowel_mm: number; seam: string; turns: string };
}

export interface Panel {
  name: string;
  length_mm: number;
  width_mm: number;
  thickness_mm: number;
  count: number;
  mass_kg: number;
  bevel: string;
  marks: string[];
}

export interface Form {
  panels: Panel[];
  mass_kg: number;
  seam_mm: number;
  release_mm2: number;
  sheets_at_least: number;
  walls: Wall[];
  screws: { name: string; count: number };
  assembly: { number: number; panel: string; text: string }[];
  supplies: { name: string; role: string; need: number; unit: string; pieces: number }[];
  readings: { name: string; target_mm: number; limit_mm: number; how: string }[];
  dams: Dam[];
  cutting: Cutlist;
}

export interface Ingredient {
  name: string;
  role: string;
  mass_kg: number;
}

export interface Coat {
  name: string;
  mix: string;
  thickness_mm: number;
  volume_l: number;
  mass_kg: number;
  to_mix_kg: number;
}

export interface Recipe {
  mix: string;
  parts_per_m3: Ingredient[];
  wet_density_kg_m3: number;
  water_to_cementitious: number;
  polymer_solids_to_cementitious: number;
  fibre_of_total: number;
  air: number;
}

export interface Batch {
  number: number;
  coat: string;
  of: number;
  mass_kg: number;
  volume_l: number;
  parts: Ingredient[];
  water_first_kg: number;
  water_up_to_kg: number;
  water_never_above_kg: number;
}

export interface Concrete {
  cast_surface_mm2: number;
  surfaces: { face_mm2: number; floor_mm2: number; riser_mm2: number; wall_mm2: number };
  shell_thickness_mm: number;
  shell_volume_l: number;
  area_times_thickness_l: number;
  area_times_thickness_over: number;
  converged_to: number;
  coats: Coat[];
  recipes: Recipe[];
  batches: Batch[];
  shell_kg: number;
  windows?: CastWindow[];
  strength?: Strength[];
  packing?: PackZone[];
}

// Hours; until 0 is open.
export interface Hours { from_h: number; until_h: number }

export interface CastWindow {
  models_differ: boolean;
  name: string;
  coat: string;
  of: string;
  at_20_c: Hours;
  arrhenius: Hours;
  nurse_saul: Hours;
  planned: Hours;
  touch_test: string;
}

export interface Strength { for: string; need_mpa: number; aci_209_h: number; en_1992_h: number; planned_h: number }

export interface PackZone {
  coat: string; batch: number; person: number; from_x_mm: number; to_x_mm: number; mass_kg: number;
  start_h: number; end_h: number; window_closes_h: number; late: boolean;
}

export interface Structure {
  shell_kg: number;
  resin_kg: number;
  extras_kg: number;
  delivered_kg: number;
  form_kg: number;
  foam_kg: number;
  flip_kg: number;
  lifters: number;
  carriers: number;
}

export interface Bucket {
  number: number;
  volume_l: number;
  a_kg: number;
  b_kg: number;
  scale_a_kg: number;
  scale_ab_kg: number;
  stir_h?: number;
  keeps_h?: number; // from mixing on, in the bucket
}

// A Moment is hours after something; later where it does not come within the hours
// that were computed, which h then is the last of.
export interface Moment { h: number; later: boolean }

// A Zone is the part of a surface over resin of much the same depth.
export interface Zone {
  name: string;
  resin_from_mm: number;
  resin_to_mm: number;
  share_of_surface: number;
  gels: Moment;
  tack_free: Moment;
  bonds_until: Moment;
  hard: Moment;
  sandable: Moment;
  scuff: boolean;
}

export interface Lift {
  number: number;
  from_mm: number;
  to_mm: number;
  depth_mm: number;
  volume_l: number;
  pour_l: number;
  mass_kg: number;
  a_kg: number;
  b_kg: number;
  batches: Bucket[];
  wait_h: number;
  bonds_until_h: number;
  at_h: number;
  peak_c: number;
  peak_at_h: number;
  gels_h: number;
  tack_free_h: number;
  scuff: boolean;
  tint_kg: number;
  torch_h: number[];
  zones?: Zone[];
  recoat_from?: Moment;
  recoat_until?: Moment;
  hold_back_l?: number;
}

export interface Cure {
  computed: boolean;
  limit_c: number;
  peak_c: number;
  peak_low_c: number;
  peak_high_c: number;
  band_members: number;
  peak_at_h: number;
  peak_in_lift: number;
  dam_face_c: number;
  last_to_harden?: { x_mm: number; y_mm: number; resin_mm: number; hard_at_h: number } | null;
  dam_high_c?: number;
  dam_limit_c?: number;
  dam_weakest?: string;
  foam_c?: number;
  foam_high_c?: number;
  foam_limit_c?: number;
  foam_name?: string;
  column_peak_c?: number;
  influences?: { name: string; sd: number; unit: string; peak_by_k: number }[];
  zones?: Zone[];
  rooms: { room_c: number; peak_c: number; dam_face_c: number; hard_at_h: number; within?: boolean }[];
  numerics: { cells: number; steps: number; grid_mm: number; peak_uncertain_c: number };
}

export interface Alternative {
  lifts_mm: number[];
  poured_at_h: number[];
  peak_c: number;
  hard_at_h: number;
  scuff_lifts: number[];
  hands_h: number;
  within_limits?: boolean;
  peak_low_c?: number;
  peak_high_c?: number;
  resin?: string;
  kind?: string;
  why?: string;
  buckets?: number;
  price?: number;
  chosen: boolean;
}

export interface Resin {
  volume_l: number;
  shrink_l: number;
  overfill_l: number;
  film_l: number;
  reserve_l: number;
  order_l: number;
  order_kg: number;
  order_us_gal: number;
  order_imp_gal: number;
  resin: string;
  b_per_100_a_by_mass: number;
  lifts: Lift[];
  cure: Cure;
  alternatives: Alternative[];
  degas: { pot_l: number; most_at_once_l: number; rise_factor: number } | null;
  shim: { reading_mm_per_m: number; shim_mm: number } | null;
  tint_shades: { depth_mm: number; colour: string }[];
  stick?: { height_mm: number; below_rim_mm: number; litres_l: number; lift: number }[];
  cautions?: string[];
}

export interface Step {
  number: number;
  id: string;
  title: string;
  room: string;
  hands?: number;
  who?: string[];
  off_hours?: boolean; // some of it when nobody is there by the hours
  work_h: number;
  wait_h: number;
  wait_for: string;
  latest_h: number;
  start_h: number;
  start: string;
  end: string;
  cautions: string[];
}

export interface Calendar {
  steps: Step[];
  hands_h: number;
  elapsed_h: number;
  finish: string;
}

export interface Line {
  name: string;
  room: string;
  need: number;
  unit: string;
  buy: { count: number; size: number; price?: number }[] | null;
  bought: number;
  left: number;
  price: number;
  priced: boolean;
}

export interface Cost {
  lines: Line[];
  total: number;
  unpriced: number;
}

export interface Stage {
  name: string;
  title: string;
  state: StageState;
  summary: string;
}

export interface Assumed {
  what: string;
  value: string;
  origin: string;
  source: string;
  field: string;
}

export interface Where {
  file?: string;
  line?: number;
  column?: number;
  field?: string;
  element?: string;
  view?: View;
  at_mm?: [number, number];
}

export interface Finding {
  code: string;
  severity: Severity;
  stage: string;
  where: Where;
  text: string;
  got?: number;
  limit?: number;
  unit?: string;
  remedy: string;
  source?: string;
}

export interface Plan {
  piece: Piece;
  relief: Relief;
  knockout: Knockout;
  toolpath: Toolpath;
  proof: Proof[];
  form: Form;
  base: Base;
  concrete: Concrete;
  structure: Structure;
  resin: Resin;
  calendar: Calendar;
  cost: Cost;
  stages: Stage[];
  measure_first: Assumed[];
  findings: Finding[];
}

// stageOf returns a stage by name, and undefined where the plan has none.
export function stageOf(plan: Plan, name: string): Stage | undefined {
  return plan.stages.find((s) => s.name === name);
}

// computed tells whether a stage's numbers may be shown: a stage that was not
// computed holds zeros that mean nothing.
export function computed(plan: Plan, name: string): boolean {
  const state = stageOf(plan, name)?.state;
  return state !== undefined && state !== "not computed";
}
