// Generated from the Go types by `go run ./cmd/dev types`; do not edit.

export interface AdjustChoice {
  off?: boolean;
}

export interface AdjustRate {
  cause: string;
  title: string;
  off: boolean;
  says: string;
  from_data: number;
  used: boolean;
}

export interface Adjustment {
  cause: string;
  title: string;
  factor: number;
}

export interface AirNeed {
  pressure: number;
  flow: number;
}

export interface AllIn {
  price: number;
  tax: number;
  fees: number;
  landing: number;
  repair: number;
  hidden: number;
  total: number;
}

export interface AppraiseRequest {
  file: unknown;
  price?: number;
  minutes?: number;
  locale?: string;
}

export interface Approach {
  centre: number;
  low: number;
  high: number;
  log_sd: number;
  weight: number;
  count: number;
  steps: string[];
}

export interface Body {
  weight: Span;
  length: Span;
  width: Span;
  height: Span;
  power: Span;
  pieces: Piece[];
}

export interface Bounds {
  least: number;
  most: number;
}

export interface Capacity {
  title: string;
  unit: string;
  other?: string[];
  exponent: number;
}

export interface Care {
  prior: Record<string, [number, number, number]>;
  bad: [number, number, number];
  failed: number;
  older?: Older;
}

export interface CareBelief {
  well: number;
  ordinary: number;
  neglected: number;
}

export interface Catalogue {
  language: string;
  words?: Record<string, string>;
  locales: Locale[];
  rubrics: Rubric[];
  parts: Part[];
  parts_dated: string;
  limits: LimitDefinition[];
  subjects: LimitSubject[];
  shop: Shop;
  grades: string[];
  reasons: Choice[];
  sellers: Choice[];
  trades: Choice[];
  conditions: Choice[];
  completeness: Choice[];
  currencies: string[];
  criteria: Criterion[];
  compared: Bounds;
  measures: Measure[];
  floors: Choice[];
  tie_downs: Choice[];
  hazards: Choice[];
  standings: Choice[];
  findings: Choice[];
  miles: Record<string, number>;
}

export interface Change {
  kind: string;
  of: string;
  id: string;
  sentence: string;
  finding?: boolean;
}

export interface Check {
  id: string;
  title: string;
  kind: string;
  hazard: string;
  weight: Weight;
  minutes: number;
  instrument?: string[];
  how: string;
  caution?: string;
  grades: Grades;
  remedies: Remedies;
  limit?: Limit;
  when?: Record<string, string[]>;
  bad?: [number, number, number];
}

export interface CheckRequest {
  shop?: Shop;
  listing?: Listing;
  locale?: string;
}

export interface CheckResult {
  check: string;
  applies: boolean;
  grade: number | null;
  skipped?: string;
  limit?: LimitResult;
  problem?: string;
  remedy?: string;
  held?: string;
  chance?: number;
}

export interface Choice {
  id: string;
  title: string;
}

export interface Comparable {
  id: string;
  title: string;
  maker?: string;
  price: number;
  basis: string;
  date?: string;
  made?: number;
  capacity?: Quantity;
  hours?: number;
  condition?: string;
  complete?: string;
  place?: string;
  distance?: Quantity;
  seen?: string;
  note?: string;
  off?: boolean;
}

export interface ComparableRow {
  id: string;
  title: string;
  price: number;
  adjusted: number;
  weight: number;
  used: boolean;
  adjustments: Adjustment[];
  outlier?: boolean;
  same?: string;
  note?: string;
}

export interface CompareRequest {
  files: unknown[];
  prices?: (number | null)[];
  locale?: string;
}

export interface Comparison {
  currency: string;
  sides: Side[];
  better: (number | null)[][];
  overtake: (number | null)[][];
  order: number[];
  criteria: Criterion[];
  moves: Move[];
  sentences: string[];
}

export interface Criterion {
  id: string;
  title: string;
  scale: string;
  weight: number;
}

export interface CurvePoint {
  price: number;
  odds: number;
}

export interface Cut {
  title: string;
  diameter: number;
  length: number;
  speed: number;
  feed: number;
  passes: number;
}

export interface Days {
  low: number;
  likely: number;
  high: number;
  steps: string[];
}

export interface Depreciation {
  class?: string;
  survivor: string;
  inutility: number;
}

export interface Derivation {
  title: string;
  figure: string;
  steps: DerivationStep[];
}

export interface DerivationStep {
  text: string;
  of?: string;
}

export interface Document {
  kind: string;
  language: string;
  title: string;
  date: string;
  blocks: DocumentBlock[];
  foot: string;
  page: string;
  absent?: string;
  answers?: DocumentAnswerWords;
}

export interface DocumentAnswerWords {
  lead: string;
  agree: string;
  disagree: string;
  done: string;
  word: string;
  photo: string;
  send: string;
  sent: string;
  yours: string;
  expires: string;
  too_long: string;
  no_photo: string;
  no_answer: string;
}

export interface DocumentAsk {
  kind: string;
  locale: string;
  units: string;
  from?: string;
  contact?: string;
  to?: string;
  word?: string;
  price?: number;
  leave_lines?: string[];
  leave_checks?: string[];
  leave_photos?: string[];
  notes?: string[];
  missing?: string[];
}

export interface DocumentBlock {
  kind: string;
  id?: string;
  level?: number;
  text?: string;
  tone?: string;
  signal?: string;
  word?: string;
  facts?: DocumentFact[];
  items?: string[];
  table?: DocumentTable;
  photos?: DocumentPhoto[];
  blocks?: DocumentBlock[];
  answer?: boolean;
}

export interface DocumentColumn {
  title: string;
  right?: boolean;
  share: number;
}

export interface DocumentFact {
  name: string;
  value: string;
}

export interface DocumentPhoto {
  key: string;
  caption: string;
  pair?: boolean;
  missing?: boolean;
}

export interface DocumentRequest {
  file?: unknown;
  files?: unknown[];
  prices?: (number | null)[];
  ask: DocumentAsk;
}

export interface DocumentRow {
  cells: string[];
  kind?: string;
}

export interface DocumentTable {
  title: string;
  columns: DocumentColumn[];
  rows: DocumentRow[];
}

export interface Doubt {
  check: string;
  title: string;
  chance: number;
  remedy: string;
  mean: number;
}

export interface Estimate {
  lines: Line[];
  mean: number;
  sd: number;
  low: number;
  median: number;
  high: number;
  hours: Hours;
}

export interface Fact {
  id: string;
  ask: string;
  options: Option[];
}

export interface File {
  format: string;
  version: number;
  rubric: RubricRef;
  made_with?: Rubric;
  parts?: Part[];
  date: string;
  listing: Listing;
  facts?: Record<string, string>;
  asked?: Record<string, string>;
  findings?: Record<string, Finding>;
  ways?: Record<string, string>;
  prices?: Record<string, Range>;
  landing?: Record<string, LandingChoice>;
  comparables?: Comparable[];
  adjust?: Record<string, AdjustChoice>;
  new_price?: NewPrice;
  lost?: Lost;
  care?: CareBelief;
  shop: Shop;
}

export interface Finding {
  grade?: number;
  skipped?: string;
  measured?: Record<string, Quantity>;
  words?: Record<string, string>;
  maker?: Quantity;
  note?: string;
  photos?: Photo[];
  pairs?: PhotoPair[];
}

export interface Fit {
  finding: string;
  sentence: string;
  points: FitPoint[];
  cautions: string[];
}

export interface FitPoint {
  id: string;
  title: string;
  finding: string;
  text: string;
  landing?: string;
  limit?: LimitResult;
  missing?: string[];
}

export interface Grades {
  as_new?: string;
  sound: string;
  worn?: string;
  bad?: string;
  failed: string;
}

export interface Haulage {
  truck?: Truck;
  trailer?: Trailer;
  per_distance?: number;
  lifting?: Quantity;
  tie_downs?: Record<string, number>;
}

export interface Hidden {
  care: [number, number, number];
  prior: [number, number, number];
  from: string;
  points: Doubt[];
  mean: number;
  high: number;
  sentence: string;
}

export interface Home {
  finding: string;
  sentence: string;
  weight: Span;
  told: boolean;
  pieces: HomePiece[];
  points: HomePoint[];
  gear: HomeGear[];
  steps: string[];
  cautions: string[];
}

export interface HomeGear {
  title: string;
  count: number;
  own: boolean;
  part?: string;
}

export interface HomePiece {
  id: string;
  title: string;
  count: number;
  weight: Span;
  size: string;
  top_heavy?: boolean;
  handling: string;
}

export interface HomePoint {
  id: string;
  title: string;
  finding: string;
  text: string;
  limit?: LimitResult;
  landing?: string;
  missing?: string[];
}

export interface Hours {
  low: number;
  likely: number;
  high: number;
}

export interface Import {
  columns: ImportColumn[];
  fields: Choice[];
  rows: Comparable[];
  lines: number[];
  problems: ImportProblem[];
  total: number;
  read: number;
  decimal_comma: boolean;
  day_first: boolean;
  separator: string;
  basis: string;
  unit: string;
  currency: string;
}

export interface ImportChoice {
  columns?: Record<string, string>;
  basis?: string;
  unit?: string;
  decimal_comma?: boolean;
  day_first?: boolean;
}

export interface ImportColumn {
  name: string;
  sample: string[];
  field: string;
}

export interface ImportProblem {
  line: number;
  column: string;
  text: string;
}

export interface Index {
  series?: string;
  then: number;
  now: number;
}

export interface Landing {
  id: string;
  title: string;
  cost: Range;
  per_distance?: number;
  hours: Hours;
  rate?: string;
  stays?: boolean;
  fit?: string;
  assumed?: boolean;
  haul?: string;
  when?: Record<string, string[]>;
}

export interface LandingChoice {
  off?: boolean;
  cost?: Range;
}

export interface Limit {
  name: string;
  ask: string[];
  fixed?: Record<string, string>;
  within: string;
  watch: string;
  beyond: string;
}

export interface LimitDefinition {
  name: string;
  title: string;
  called?: string[];
  subject: string;
  quantities: LimitInput[];
  formula: string;
  source: string;
  status: string;
  caution?: string;
  maker?: string;
}

export interface LimitFigure {
  group?: string;
  title: string;
  short?: string;
  value?: number;
  unit?: string;
  text?: string;
  part?: string;
}

export interface LimitInput {
  name: string;
  title: string;
  dimension: string;
  unit?: string;
  metric?: string;
  words?: string[];
  titles?: string[];
  optional?: boolean;
  default?: string;
  either?: string;
}

export interface LimitRequest {
  name: string;
  given: Record<string, string>;
  locale?: string;
}

export interface LimitResult {
  name: string;
  value: number;
  unit: string;
  limit: number | null;
  finding: string;
  text: string;
  formula: string;
  source: string;
  status: string;
  notes?: string[];
  caution?: string;
  more?: LimitFigure[];
}

export interface LimitSubject {
  id: string;
  title: string;
  limits: string[];
}

export interface Line {
  id: string;
  kind: string;
  title: string;
  because: string[];
  way?: string;
  ways?: WayChoice[];
  parts?: PartLine[];
  hours: Hours;
  rate?: string;
  per_hour?: number;
  minutes?: number;
  cost: Range;
  mean: number;
  sd: number;
  caution?: string;
  stays?: boolean;
  own?: boolean;
  off?: boolean;
  says?: string;
}

export interface Listing {
  title: string;
  maker?: string;
  model?: string;
  serial?: string;
  made?: number;
  capacity?: Quantity;
  hours?: number;
  effective_age?: number;
  weight?: Quantity;
  length?: Quantity;
  width?: Quantity;
  height?: Quantity;
  power?: Quantity;
  voltage?: Quantity;
  phases?: number;
  current?: Quantity;
  place?: string;
  distance?: Quantity;
  asking?: number;
  seller?: string;
  seen?: string;
  text?: string;
  note?: string;
  photos?: Photo[];
}

export interface Locale {
  id: string;
  language: string;
  title: string;
  decimal: string;
  group: string;
  group_from: number;
  date: string;
}

export interface Lost {
  functional?: number;
  functional_why?: string;
  economic?: number;
  economic_why?: string;
  used?: number;
  rated?: number;
}

export interface Make {
  setup: number;
  load: number;
  finish: number;
  pieces: number;
  cuts: Cut[];
  spread: number;
}

export interface Measure {
  field: string;
  dimension: string;
  unit: string;
  metric: string;
  low: number;
  high: number;
}

export interface Measured {
  n: number;
  unit: string;
}

export interface Move {
  criterion: string;
  from: number;
  to: number;
  winner: number;
  sentence: string;
}

export interface Needs {
  slab?: SlabNeed;
  rise?: number;
  arms?: number;
  air?: AirNeed;
  clear: number;
  start?: string;
  pads?: number;
  pad_area?: number;
}

export interface NewPrice {
  price: Range;
  capacity?: Quantity;
  seen?: string;
  index?: Index;
}

export interface Next {
  check: string;
  title: string;
  hazard: string;
  minutes: number;
  gain: number;
  per_minute: number;
  must: boolean;
  held?: string;
}

export interface Notice {
  proposals: Proposal[];
}

export interface NoticeRequest {
  text: string;
  rubric?: string;
  currency: string;
  units: string;
  date?: string;
  own?: Rubric[];
  locale?: string;
}

export interface Odds {
  opening: number;
  fair: number;
  walk_away: number;
}

export interface Offer {
  known: boolean;
  missing?: string;
  curve: CurvePoint[];
  opening: PricePoint;
  fair: PricePoint;
  walk_away: PricePoint;
  at: PricePoint | null;
  all_in: AllIn | null;
  ahead: number | null;
  waterfall: Step[];
  sentences: string[];
  step: number;
  error: number;
}

export interface Older {
  after: number;
  odds: [number, number, number];
}

export interface Option {
  id: string;
  title: string;
  words?: string[];
}

export interface Overrun {
  mean: number;
  sd: number;
}

export interface PDFRequest {
  document: Document;
  page: string;
  keys: string[];
}

export interface Part {
  id: string;
  title: string;
  unit: string;
  price: Range;
}

export interface PartLine {
  part: string;
  title: string;
  unit: string;
  quantity: number;
  price: Range;
  own: boolean;
}

export interface PartUse {
  part: string;
  quantity: number;
}

export interface Photo {
  hash: string;
  at?: string;
  marks?: PhotoMark[];
}

export interface PhotoMark {
  id: string;
  kind: string;
  from: [number, number];
  to: [number, number];
  label?: string;
  length?: Quantity;
}

export interface PhotoPair {
  before: string;
  after: string;
}

export interface Piece {
  id: string;
  title: string;
  count: number;
  share: number;
  length: number;
  width: number;
  height: number;
  top_heavy?: boolean;
  handling: string;
  when?: Record<string, string[]>;
}

export interface Plan {
  minutes: number;
  used: number;
  points: PlanPoint[];
  gain: number;
  sentence: string;
}

export interface PlanPoint {
  check: string;
  title: string;
  hazard: string;
  minutes: number;
  must: boolean;
}

export interface Point {
  check: string;
  title: string;
  hazard: string;
  grade: number | null;
}

export interface Preparation {
  id: string;
  title: string;
  parts?: PartUse[];
  hours: Hours;
  rate: string;
  needs?: string[];
  caution?: string;
}

export interface PriceImport {
  rows: PriceRow[];
  problems: ImportProblem[];
  total: number;
  empty: number;
  decimal_comma: boolean;
  separator: string;
}

export interface PricePoint {
  price: number;
  odds: number;
  none: boolean;
}

export interface PriceRow {
  line: number;
  id: string;
  title: string;
  unit: string;
  price: Range;
  now: Range;
  own: boolean;
  changes: boolean;
  note?: string;
}

export interface PricesWriteRequest {
  own: Record<string, Range>;
  parts: Part[];
  currency: string;
  date: string;
  locale?: string;
}

export interface PricesWritten {
  text: string;
}

export interface Problem {
  file: string;
  line: number;
  column: number;
  field?: string;
  what: string;
  right: string;
}

export interface Progress {
  applies: number;
  graded: number;
  skipped: number;
  open: number;
  minutes_left: number;
}

export interface Proposal {
  field: string;
  cents?: number;
  quantity?: Measured;
  number?: number;
  text?: string;
  title?: string;
  foreign?: string;
  sure: string;
  because: string;
  start: number;
  end: number;
  before: string;
  words: string;
  after: string;
}

export interface Quantity {
  n: number;
  unit: string;
}

export interface Question {
  id: string;
  ask: string;
  why?: string;
  answers?: string[];
  when?: Record<string, string[]>;
}

export interface Range {
  low: number;
  likely: number;
  high: number;
}

export interface Remedies {
  worn?: string;
  bad?: string;
  failed?: string;
}

export interface Remedy {
  id: string;
  title: string;
  ways: Way[];
}

export interface Reply {
  value?: unknown;
  error?: string;
  field?: string;
}

export interface Report {
  id: string;
  kind: string;
  version: number;
  checks: number;
  danger: number;
  minutes: number;
  limits: number;
  grade: number;
  sections: SectionReport[];
  without_remedy: string[];
  without_price: string[];
  unused: string[];
}

export interface Result {
  rubric: RubricRef;
  currency: string;
  notes: string[];
  verdict: Verdict;
  safety: Score;
  condition: Score;
  progress: Progress;
  checks: CheckResult[];
  estimate: Estimate;
  hidden: Hidden;
  landing: Estimate;
  worth: Worth;
  offer: Offer;
  next: Next[];
  fit: Fit | null;
  home: Home | null;
  plan: Plan | null;
  swings: Swing[];
  why: Record<string, Derivation>;
}

export interface Rubric {
  id: string;
  version: number;
  kind: string;
  words?: string[];
  about: string;
  cautions: string[];
  capacity: Capacity;
  life: Years;
  depreciation: Depreciation;
  scrap: Scrap;
  care: Care;
  body?: Body;
  needs?: Needs;
  visit?: Visit;
  facts?: Fact[];
  landing: Landing[];
  preparations: Preparation[];
  remedies: Remedy[];
  sections: Section[];
}

export interface RubricRead {
  rubric: Rubric | null;
  problems: Problem[];
  report: Report | null;
}

export interface RubricRef {
  id: string;
  version: number;
}

export interface Score {
  value: number | null;
  low: number;
  high: number;
  coverage: number;
  checked: number;
  applies: number;
}

export interface Scrap {
  value: Range;
  haul: Range;
}

export interface Section {
  id: string;
  title: string;
  state: string;
  caution?: string;
  checks: Check[];
}

export interface SectionReport {
  id: string;
  title: string;
  state: string;
  checks: number;
  danger: number;
  safety: number;
  condition: number;
  minutes: number;
}

export interface SheetColumn {
  title: string;
  kind: "text" | "number" | "money" | "date";
}

export interface SheetDecision {
  date: string;
  chosen?: string;
  price?: number;
  currency?: string;
  reason?: string;
  sides?: string[];
  withdrawn?: string;
}

export interface SheetTable {
  name: string;
  title: string;
  columns: SheetColumn[];
  rows: (string | number | null)[][];
}

export interface Shop {
  currency: string;
  units: string;
  rates: Record<string, number>;
  tax: number;
  fees: number;
  odds: Odds;
  overrun: Overrun;
  kept: number;
  weights?: Record<string, number>;
  region?: number;
  site?: Site;
  haulage?: Haulage;
  day?: number;
}

export interface Side {
  letter: string;
  title: string;
  verdict: Verdict;
  safety: Score;
  condition: Score;
  price: number | null;
  odds: number | null;
  ahead: number | null;
  ahead_low: number | null;
  ahead_high: number | null;
  all_in: AllIn | null;
  opening: PricePoint | null;
  fair: PricePoint | null;
  walk_away: PricePoint | null;
  hours: number;
  days: Days | null;
  distance: Quantity | null;
  hides: number;
  open: number;
  dearest: Doubt[];
  rubric: RubricRef;
  gate: string;
  score: number | null;
  parts: (number | null)[];
  missing?: string;
}

export interface Site {
  ceiling?: Quantity;
  door_width?: Quantity;
  door_height?: Quantity;
  floor_length?: Quantity;
  floor_width?: Quantity;
  floor?: string;
  slab?: Quantity;
  slab_strength?: Quantity;
  voltage?: Quantity;
  phases?: number;
  current?: Quantity;
  circuit?: Quantity;
  run?: Quantity;
  generator?: Quantity;
  air_flow?: Quantity;
  air_pressure?: Quantity;
  vehicle?: Vehicle;
}

export interface SlabNeed {
  thickness: number;
  strength: number;
}

export interface Span {
  low: number;
  likely: number;
  high: number;
}

export interface Step {
  cause: string;
  title: string;
  amount: number;
  total: number;
  lines: StepLine[];
}

export interface StepLine {
  title: string;
  amount: number;
}

export interface Swing {
  input: string;
  title: string;
  low: number;
  high: number;
  low_at: string;
  high_at: string;
  sentence: string;
}

export interface TablesRequest {
  files: unknown[];
  prices?: (number | null)[];
  compared?: boolean;
  decisions?: SheetDecision[];
  locale?: string;
}

export interface Trailer {
  rated?: Quantity;
  empty?: Quantity;
  deck?: Quantity;
  tongue?: Quantity;
  axle?: Quantity;
}

export interface Truck {
  rated?: Quantity;
  empty?: Quantity;
  people?: Quantity;
  tow?: Quantity;
}

export interface UncoveredRequest {
  document: Document;
}

export interface Vehicle {
  title?: string;
  weight?: Quantity;
  height?: Quantity;
  front?: number;
}

export interface Verdict {
  code: string;
  title: string;
  sentence: string;
  hazard: string;
  points: Point[];
  always: string[];
}

export interface Visit {
  questions: Question[];
  wear: string[];
  bring: string[];
}

export interface VisitCheck {
  id: string;
  title: string;
  danger: boolean;
}

export interface VisitNeed {
  id: string;
  title: string;
  sentence: string;
  minutes: number;
  checks: VisitCheck[];
  safety: number;
  certain?: boolean;
}

export interface VisitPlan {
  sentence: string;
  questions: VisitQuestion[];
  message: string;
  instruments: VisitNeed[];
  wear: string[];
  bring: string[];
  minutes: number;
  sections: VisitSection[];
  without: VisitNeed[];
  cautions: string[];
}

export interface VisitQuestion {
  id: string;
  ask: string;
  why?: string;
  told?: string;
  asked: boolean;
  answer?: string;
}

export interface VisitRequest {
  file: unknown;
  locale?: string;
}

export interface VisitSection {
  id: string;
  title: string;
  state: string;
  checks: number;
  minutes: number;
}

export interface Way {
  id: string;
  kind: string;
  title: string;
  parts?: PartUse[];
  hours: Hours;
  rate: string;
  make?: Make;
  preparations?: string[];
  caution?: string;
}

export interface WayChoice {
  id: string;
  kind: string;
  title: string;
  mean: number;
  hours: Hours;
}

export interface Weighed {
  weights: number[];
  largest: number;
  ratio: number;
  accept: number;
  worst: [number, number];
  worst_fits: number;
}

export interface Weight {
  safety: number;
  condition: number;
}

export interface Worth {
  known: boolean;
  missing?: string;
  centre: number;
  low: number;
  high: number;
  log_sd: number;
  in_place: number;
  widened: boolean;
  sentence: string;
  sales?: Approach;
  cost?: Approach;
  rates: AdjustRate[];
  rows: ComparableRow[];
}

export interface Written {
  text: string;
}

export interface Years {
  low: number;
  likely: number;
  high: number;
}
