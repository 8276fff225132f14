// What the library answers, as JSON: the plan of a job, its problems, what a
// change at the yard did, how far a stock goes. Volumes are litres, masses
// kilograms, lengths millimetres, areas square metres, all as numbers; money is
// text, with a point. A key that ends in _shown has the text beside a figure,
// as the reader writes it; where the figure is text itself, only if it differs.

/** What is done in a task. */
export type TaskKind = 'fill' | 'amend' | 'backfill' | 'cover';

/** The lowest and the highest that a figure may be. */
export type Range = [low: number, high: number];

/** How a thing is sold: one of the three sizes. */
export interface Sold {
  pack?: string;
  pack_shown?: string;
  bale?: string;
  bale_shown?: string;
  bulk?: string;
  bulk_shown?: string;
}

export interface Weighed {
  mass_kg?: Range;
  mass_shown?: string;
}

export interface Plan {
  schema: number;
  name?: string;
  measure: 'us' | 'metric' | 'both';
  needs: Need[];
  order: Line[];
  others?: Line[];
  trips: Trip[];
  deliveries?: Trip[];
  batches: never[];
  currency?: string;
  cost?: string;
  cost_shown?: string;
  tax?: string;
  tax_shown?: string;
  driving?: string;
  driving_shown?: string;
  delivery?: string;
  delivery_shown?: string;
  deposit?: string;
  deposit_shown?: string;
  total?: string;
  total_shown?: string;
  none_below?: string;
  none_below_shown?: string;
  unpriced?: string[];
  left_out?: LeftOut[];
  load?: Load;
  tasks: Task[];
  notes: Note[];
  cautions: Caution[];
  working: Step[];
}

/** The plan with what takes longer to work out. */
export interface FullPlan extends Plan {
  bags_or_bulk: Crossing[];
  choices: Choice[];
  sure?: Sure;
}

/** One material over all tasks. */
export interface Need extends Weighed {
  material: string;
  name: string;
  grade?: string;
  litres: number;
  range_litres?: Range;
  shown: string;
  range_shown?: string;
  cu_ft: number;
  cu_yd: number;
  takes_litres: number;
  on_hand_litres?: number;
  on_hand_shown?: string;
  packs: Pack[];
}

/** A common pack that a need may be bought in. */
export interface Pack extends Sold {
  count: number;
  count_range?: Range;
  left_litres: number;
  left_shown: string;
}

/** One line of the order, or an offer that it does not take. */
export interface Line extends Sold, Weighed {
  material: string;
  offer: number;
  count: number;
  count_range?: Range;
  litres: number;
  cost?: string;
  cost_shown?: string;
  delivered?: number;
  left_litres?: number;
  left_shown?: string;
}

/** A drive, or drives that are alike; a load that the yard brings. */
export interface Trip extends Weighed {
  packs: TripPack[];
  times?: number;
  litres: number;
  packed_litres: number;
  packed_shown: string;
  limit?: 'weight' | 'room';
}

export interface TripPack extends Sold {
  material: string;
  count: number;
}

/** The whole order, to be carried. */
export interface Load extends Weighed {
  litres: number;
  packed_litres: number;
  shown: string;
  drives?: number;
  drives_dry?: number;
  drives_shown?: string;
  deliveries?: number;
}

/** A material to buy that no offer has. */
export interface LeftOut {
  material: string;
  name: string;
  stand_ins: string[];
}

/** From how much on bulk costs less than bags. */
export interface Crossing {
  material: string;
  text: string;
  bulk_from_litres?: number;
  points: CrossingPoint[];
}

export interface CrossingPoint {
  litres: number;
  bags?: string;
  bulk?: string;
}

/** An order that could be chosen; the first is the plan's. */
export interface Choice {
  total?: string;
  total_shown?: string;
  left_litres: number;
  left_shown: string;
  packs: number;
  trips: number;
  order: TripPack[];
}

/** How sure the order is to be enough, and what would be enough 9 times in 10. */
export interface Sure {
  chance: number;
  error: number;
  shown: string;
  method: string;
  ranges: string[];
  enough?: TripPack[];
  enough_total?: string;
  enough_total_shown?: string;
  enough_chance?: number;
  matters: Matter[];
}

/** A figure that the need hangs on, and what to measure about it. */
export interface Matter {
  name: string;
  moves_litres: number;
  moves_shown: string;
  measure: string;
}

export interface Task {
  kind: TaskKind;
  title: string;
  filling?: string;
  net_litres: number;
  net_range_litres?: Range;
  net_shown: string;
  loose_litres: number;
  loose_range_litres?: Range;
  loose_shown: string;
  allowances?: Allowance[];
  parts?: Part[];
  bed?: Bed;
  backfill?: Backfill;
  cover?: Cover;
  facts: Fact[];
}

export interface Allowance {
  code: 'settle' | 'blend-loss' | 'spare';
  name: string;
  share: string;
  share_shown?: string;
  adds_litres: number;
  adds_shown: string;
  source: string;
}

/** What a task takes of one material. */
export interface Part {
  material: string;
  litres: number;
  range_litres?: Range;
  shown: string;
}

/** What only an amend task has. */
export interface Bed {
  area_m2: number;
  layer_mm: number;
  native_mm: number;
  finished_mm: number;
  share: number;
  rise_mm: number;
}

/** What only a backfill task has. */
export interface Backfill {
  dug_litres: number;
  put_back_litres: number;
  put_back_range_litres?: Range;
  left_over_loose_litres: number;
  left_over_loose_range_litres?: Range;
}

/** What only a cover task has. */
export interface Cover {
  area_m2: number;
  bare_m2: number;
  layer_mm: number;
  sheets?: number;
}

export interface Fact {
  code: string;
  label: string;
  figure: string;
}

/** What is worth knowing; path is the field that it is about. */
export interface Note {
  task?: number;
  path?: string;
  code: string;
  text: string;
}

export interface Caution {
  code: string;
  text: string;
  source?: string;
}

/** A step of the working, and where it comes from. */
export interface Step {
  task?: number;
  material?: string;
  step: string;
  figure: string;
  source: string;
}

/** What is wrong with a job: the answer in place of a plan. */
export interface Problems {
  problems: Problem[];
}

export interface Problem {
  path: string;
  code: string;
  value: string;
  hint: string;
}

/** What became of the order between two plans of a job. */
export interface Changes {
  changes: Change[];
  before?: Totals;
  after: Totals;
}

export interface Change extends Sold {
  material: string;
  name: string;
  before: number;
  after: number;
  is: 'same' | 'new' | 'gone' | 'more' | 'fewer';
}

export interface Totals {
  goods?: string;
  goods_shown?: string;
  total?: string;
  total_shown?: string;
  drives_shown?: string;
}

/** How far a stock goes. */
export interface Reach {
  schema: number;
  filling: string;
  loose_litres: number;
  net_litres: number;
  limit: string;
  left: ReachLeft[];
  containers: ReachPot[];
  area_m2?: number;
  depth_mm?: number;
  one_more: OneMore[];
}

export interface ReachLeft {
  material: string;
  litres: number;
}

export interface ReachPot {
  label: string;
  count: number;
  count_range?: Range;
}

export interface OneMore {
  material: string;
  pack: string;
  pack_shown?: string;
  adds_litres: number;
}
