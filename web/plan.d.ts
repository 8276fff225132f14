// Written by go test ./mix/report -run TestTypes -update; do not edit.
//
// What the library answers, as JSON. Volumes are litres, masses kilograms,
// lengths millimetres, areas square metres, all as numbers; money is text, with a
// point.

/** The lowest and the highest that a figure may be. */
export type Range = [low: number, high: number];

/** What something weighs, where that is known. */
export interface Weighed {
  /** lightest and heaviest, in kilograms */
  mass_kg?: Range;
  /** the same as text */
  mass_shown?: string;
}

/** What an offer is sold in, as it was typed: one of the two. */
export interface Sold {
  /** a bag or a bale */
  pack?: string;
  /** the same as the reader writes it, where that differs */
  pack_shown?: string;
  /** a step of loose material */
  bulk?: string;
  /** the same as the reader writes it, where that differs */
  bulk_shown?: string;
}

/** A common pack that a need may be bought in. */
export interface Pack extends Sold {
  /** a compressed bale, in place of pack and bulk */
  bale?: string;
  /** the same as the reader writes it, where that differs */
  bale_shown?: string;
  /** how many cover the need */
  count: number;
  /** the fewest and the most, where they differ */
  count_range?: Range;
  /** over the need */
  left_litres: number;
  /** the same as text */
  left_shown: string;
}

/** One material over all tasks, less what is on hand. */
export interface Need extends Weighed {
  /** the material's id */
  material: string;
  /** what people call it */
  name: string;
  /** what to ask for */
  grade?: string;
  /** what to buy, loose, as planned */
  litres: number;
  /** the least and the most, where they differ */
  range_litres?: Range;
  /** what to buy as yards say it */
  shown: string;
  /** the range as text */
  range_shown?: string;
  /** what to buy in cubic feet */
  cu_ft: number;
  /** what to buy in cubic yards */
  cu_yd: number;
  /** what all tasks take */
  takes_litres: number;
  /** what of that is there */
  on_hand_litres?: number;
  /** the same as text */
  on_hand_shown?: string;
  /** the need in every common pack */
  packs: Pack[];
}

/** One line of the order, or an offer that it does not take. */
export interface Line extends Sold, Weighed {
  /** the material's id */
  material: string;
  /** the offer's index in the job */
  offer: number;
  /** how many */
  count: number;
  /** the fewest and the most, of a line that covers its need alone */
  count_range?: Range;
  /** loose volume of all */
  litres: number;
  /** an amount of money, with a point, before tax */
  cost?: string;
  /** the same as the reader writes it, where that differs */
  cost_shown?: string;
  /** of the count, what the yard brings */
  delivered?: number;
  /** what the yard has, where that is less than the count */
  stock?: number;
  /** over the need, on the material's last line */
  left_litres?: number;
  /** the same as text */
  left_shown?: string;
}

/** So many of one offer. */
export interface TripPack extends Sold {
  /** the material's id */
  material: string;
  /** how many */
  count: number;
}

/** A drive, or drives that are alike; a load that the yard brings. */
export interface Trip extends Weighed {
  /** what it carries */
  packs: TripPack[];
  /** how often, where it is more than once */
  times?: number;
  /** loose volume */
  litres: number;
  /** volume as it is carried */
  packed_litres: number;
  /** the same as text */
  packed_shown: string;
  /** the limit that it is nearer to */
  limit?: 'weight' | 'room';
}

/** One mixing by the bucket; there are none yet. */
export interface Batch {
}

/** What the order lacks of a material: all of it, or what no stock covers. */
export interface LeftOut {
  /** the material's id */
  material: string;
  /** what people call it */
  name: string;
  /** how much, loose */
  litres: number;
  /** the same as text */
  shown: string;
  /** what can stand in, in sentences */
  stand_ins: string[];
}

/** The whole order, to be carried. */
export interface Load extends Weighed {
  /** loose volume */
  litres: number;
  /** volume as it is carried */
  packed_litres: number;
  /** the same as text */
  shown: string;
  /** how many, at the heaviest */
  drives?: number;
  /** how many, at the lightest */
  drives_dry?: number;
  /** the drives in words */
  drives_shown?: string;
  /** loads that the yard brings */
  deliveries?: number;
}

/** One step from what stands in place to what is bought. */
export interface Allowance {
  /** which, the same in every language */
  code: 'settle' | 'blend-loss' | 'spare';
  /** which, in words */
  name: string;
  /** how much of the volume */
  share: string;
  /** the same as the reader writes it, where that differs */
  share_shown?: string;
  /** the least that the share may be, where it is uncertain */
  low?: string;
  /** the same as the reader writes it, where that differs */
  low_shown?: string;
  /** the most that the share may be, where it is uncertain */
  high?: string;
  /** the same as the reader writes it, where that differs */
  high_shown?: string;
  /** what it adds */
  adds_litres: number;
  /** the same as text */
  adds_shown: string;
  /** where the share comes from */
  source: string;
}

/** What a task takes of one material. */
export interface Part {
  /** the material's id */
  material: string;
  /** loose, as planned */
  litres: number;
  /** the least and the most, where they differ */
  range_litres?: Range;
  /** the same as text */
  shown: string;
}

/** What only an amend task has. */
export interface Bed {
  /** the ground */
  area_m2: number;
  /** the layer, as it is spread */
  layer_mm: number;
  /** native soil loosened under it */
  native_mm: number;
  /** layer and soil together */
  finished_mm: number;
  /** of the finished bed that is the layer */
  share: number;
  /** how far the ground rises at the most, once it has settled */
  rise_mm: number;
  /** how far it rises freshly dug, at least and at most */
  rise_fresh_range_mm: Range;
  /** how far it rises rolled or watered in, at least and at most */
  rise_settled_range_mm: Range;
}

/** What only a backfill task has. */
export interface Backfill {
  /** soil dug, in place */
  dug_litres: number;
  /** of that, what goes back, in place */
  put_back_litres: number;
  /** its least and its most */
  put_back_range_litres?: Range;
  /** soil left over, loose */
  left_over_loose_litres: number;
  /** its least and its most */
  left_over_loose_range_litres?: Range;
}

/** What only a cover task has. */
export interface Cover {
  /** the ground that is covered, the bare circles left out */
  area_m2: number;
  /** the ground left bare round the stems */
  bare_m2: number;
  /** how deep it is spread */
  layer_mm: number;
  /** sheets underneath */
  sheets?: number;
  /** whether sheets is an estimate: it is exact on a rectangle and on a straight strip */
  sheets_about?: boolean;
}

/** One more thing that a task works out. */
export interface Fact {
  /** what it is, the same in every language */
  code: string;
  /** what it is, in words */
  label: string;
  /** the figure as text */
  figure: string;
}

/** One task of the job, worked out. */
export interface Task {
  /** what is done */
  kind: 'fill' | 'amend' | 'backfill' | 'cover';
  /** the task's name, or what is done in words */
  title: string;
  /** what goes in; left out for nothing */
  filling?: string;
  /** what goes in, in place */
  net_litres: number;
  /** the least and the most, where they differ */
  net_range_litres?: Range;
  /** the same as text */
  net_shown: string;
  /** what goes in, as it leaves the shovel */
  loose_litres: number;
  /** the least and the most, where they differ */
  loose_range_litres?: Range;
  /** the same as text */
  loose_shown: string;
  /** from net to loose; left out where nothing goes in */
  allowances?: Allowance[];
  /** the loose volume by material */
  parts?: Part[];
  /** the amended bed */
  bed?: Bed;
  /** the soil of all holes together */
  backfill?: Backfill;
  /** what is covered */
  cover?: Cover;
  /** what else is worked out */
  facts: Fact[];
}

/** What is worth knowing. */
export interface Note {
  /** the task's index */
  task?: number;
  /** the field that it is about */
  path?: string;
  /** what it is, the same in every language */
  code: string;
  /** the sentence */
  text: string;
}

/** What to take care of. */
export interface Caution {
  /** what it is, the same in every language */
  code: string;
  /** the sentence */
  text: string;
  /** who says so */
  source?: string;
}

/** A step of the working. */
export interface Step {
  /** the task's index; left out for what is pooled over tasks */
  task?: number;
  /** the material's id */
  material?: string;
  /** what is done */
  step: string;
  /** what it comes to */
  figure: string;
  /** where the figures come from */
  source: string;
}

/** Everything that is worked out of a job. */
export interface Plan {
  /** the version of this document */
  schema: number;
  /** the job's */
  name?: string;
  /** the units of its texts */
  measure: 'us' | 'metric' | 'both';
  /** what to buy, by material */
  needs: Need[];
  /** what to buy, from the offers */
  order: Line[];
  /** offers that are not taken, each as if it were bought alone; what the whole order costs with one is in alternatives */
  others?: Line[];
  /** drives */
  trips: Trip[];
  /** loads that the yard brings */
  deliveries?: Trip[];
  /** empty: not worked out yet */
  batches: Batch[];
  /** the sign before amounts */
  currency?: string;
  /** an amount of money, with a point: the goods */
  cost?: string;
  /** the same as the reader writes it, where that differs */
  cost_shown?: string;
  /** an amount of money, with a point */
  tax?: string;
  /** the same as the reader writes it, where that differs */
  tax_shown?: string;
  /** an amount of money, with a point */
  driving?: string;
  /** the same as the reader writes it, where that differs */
  driving_shown?: string;
  /** an amount of money, with a point */
  delivery?: string;
  /** the same as the reader writes it, where that differs */
  delivery_shown?: string;
  /** an amount of money, with a point: comes back, and is no part of the total */
  deposit?: string;
  /** the same as the reader writes it, where that differs */
  deposit_shown?: string;
  /** an amount of money, with a point: still to pay */
  total?: string;
  /** the same as the reader writes it, where that differs */
  total_shown?: string;
  /** what was bought already, and is in no trip */
  bought?: Line[];
  /** an amount of money, with a point: for that at the yard, tax counted; drives made for it are not known */
  paid?: string;
  /** the same as the reader writes it, where that differs */
  paid_shown?: string;
  /** an amount of money, with a point: paid and still to pay */
  in_all?: string;
  /** the same as the reader writes it, where that differs */
  in_all_shown?: string;
  /** no order costs less; left out where this one is the cheapest */
  none_below?: string;
  /** the same as the reader writes it, where that differs */
  none_below_shown?: string;
  /** ordered materials without a price, by id */
  unpriced?: string[];
  /** materials to buy that no offer covers */
  left_out?: LeftOut[];
  /** the order, to be carried; left out where there is none */
  load?: Load;
  /** the tasks, in the job's order */
  tasks: Task[];
  /** what is worth knowing */
  notes: Note[];
  /** what to take care of */
  cautions: Caution[];
  /** every step behind the figures */
  working: Step[];
}

/** Volumes for all of which the same costs less. */
export interface Stretch {
  /** every volume above this one */
  over_litres: number;
  /** up to and including this one */
  up_to_litres: number;
  /** what costs less; neither where neither covers it, unknown where it was not worked out */
  cheaper: 'unknown' | 'bags' | 'bulk' | 'same' | 'neither';
}

/** What a volume costs either way; left out where the stock is short of it. */
export interface CrossingPoint {
  /** the volume, loose */
  litres: number;
  /** an amount of money, with a point */
  bags?: string;
  /** an amount of money, with a point */
  bulk?: string;
}

/** What a material costs in bags alone and in bulk alone, bought by itself. */
export interface Crossing {
  /** the material's id */
  material: string;
  /** the sentence */
  text: string;
  /** the need, loose */
  need_litres: number;
  /** an amount of money, with a point, of the need in bags; left out where they do not cover it */
  bags?: string;
  /** the same as the reader writes it, where that differs */
  bags_shown?: string;
  /** an amount of money, with a point, of the need in bulk; left out where it does not cover it */
  bulk?: string;
  /** the same as the reader writes it, where that differs */
  bulk_shown?: string;
  /** what costs less for the need */
  cheaper: 'unknown' | 'bags' | 'bulk' | 'same' | 'neither';
  /** above this volume bulk costs less for every volume that was looked at; left out where there is none */
  bulk_from_litres?: number;
  /** the largest volume that was looked at */
  looked_to_litres: number;
  /** what costs less, for every volume that was looked at */
  stretches: Stretch[];
  /** cost against volume: both ends of every step that was looked at */
  points: CrossingPoint[];
}

/** An order that could be chosen; the first is the plan's. */
export interface Choice {
  /** an amount of money, with a point */
  total?: string;
  /** the same as the reader writes it, where that differs */
  total_shown?: string;
  /** over the needs */
  left_litres: number;
  /** the same as text */
  left_shown: string;
  /** lifted by hand */
  packs: number;
  /** drives and loads */
  trips: number;
  /** what to buy */
  order: TripPack[];
}

/** The whole order with another offer in place of all that it buys of that material. */
export interface Alternative extends Sold {
  /** the material's id */
  material: string;
  /** the offer's index in the job */
  offer: number;
  /** how many */
  count: number;
  /** an amount of money, with a point: of the whole order, tax, driving and delivery counted */
  total: string;
  /** the same as the reader writes it, where that differs */
  total_shown?: string;
  /** no such order costs less; left out where this one is the cheapest */
  none_below?: string;
  /** the same as the reader writes it, where that differs */
  none_below_shown?: string;
  /** over the need */
  left_litres: number;
  /** the same as text */
  left_shown: string;
  /** drives and loads of the whole order */
  trips: number;
}

/** A figure that the need hangs on. */
export interface Matter {
  /** what it is */
  name: string;
  /** the volume that hangs on it */
  moves_litres: number;
  /** the same as text */
  moves_shown: string;
  /** what to measure about it */
  measure: string;
}

/** How sure the order is to be enough. */
export interface Sure {
  /** from 0 to 1 */
  chance: number;
  /** by which sampling may have it off */
  error: number;
  /** the chance in words */
  shown: string;
  /** how it is worked out */
  method: string;
  /** what is taken for granted of the packs */
  assumes: string[];
  /** what is uncertain, in words */
  ranges: string[];
  /** what is enough 9 times in 10; left out where the order is */
  enough?: TripPack[];
  /** an amount of money, with a point */
  enough_total?: string;
  /** the same as the reader writes it, where that differs */
  enough_total_shown?: string;
  /** the chance of that */
  enough_chance?: number;
  /** the figures that matter most */
  matters: Matter[];
}

/** A plan with what takes longer to work out. */
export interface FullPlan extends Plan {
  /** materials offered in both, with prices */
  bags_or_bulk: Crossing[];
  /** other orders */
  choices: Choice[];
  /** what the whole order costs with each of the others */
  alternatives?: Alternative[];
  /** left out where there is no order */
  sure?: Sure;
}

/** One thing wrong with a job. */
export interface Problem {
  /** the field, as the document nests it; empty for the whole */
  path: string;
  /** what is wrong, the same in every language */
  code: string;
  /** what was typed */
  value: string;
  /** what would do */
  hint: string;
}

/** What is wrong with a job: the answer in place of a plan. */
export interface Problems {
  /** in the order of the document */
  problems: Problem[];
}

/** What became of one offer. */
export interface Change extends Sold {
  /** the material's id */
  material: string;
  /** what people call it */
  name: string;
  /** how many before */
  before: number;
  /** how many now */
  after: number;
  /** which of these */
  is: 'same' | 'new' | 'gone' | 'more' | 'fewer';
  /** how many were bought in between; below zero where a purchase was taken back */
  bought?: number;
  /** why fewer are to be bought; scarce: these are all there are */
  why?: 'sold-out' | 'bought' | 'scarce' | 'not-needed';
  /** an amount of money, with a point, where it is another now; left out where there was none */
  price_before?: string;
  /** the same as the reader writes it, where that differs */
  price_before_shown?: string;
  /** an amount of money, with a point, where it was another; left out where there is none */
  price_after?: string;
  /** the same as the reader writes it, where that differs */
  price_after_shown?: string;
}

/** What there is to pay and to drive. */
export interface Totals {
  /** an amount of money, with a point */
  goods?: string;
  /** the same as the reader writes it, where that differs */
  goods_shown?: string;
  /** an amount of money, with a point: still to pay */
  total?: string;
  /** the same as the reader writes it, where that differs */
  total_shown?: string;
  /** an amount of money, with a point: of the total, for the drives still to make */
  driving?: string;
  /** the same as the reader writes it, where that differs */
  driving_shown?: string;
  /** an amount of money, with a point: for what was bought already, tax counted */
  paid?: string;
  /** the same as the reader writes it, where that differs */
  paid_shown?: string;
  /** an amount of money, with a point: paid and still to pay */
  in_all?: string;
  /** the same as the reader writes it, where that differs */
  in_all_shown?: string;
  /** the drives still to make, in words */
  drives_shown?: string;
}

/** What became of the order between two plans of a job. */
export interface Changes {
  /** offer by offer */
  changes: Change[];
  /** left out where there was no plan before */
  before?: Totals;
  /** now */
  after: Totals;
}

/** What there is of one material. */
export interface ReachLeft {
  /** the material's id */
  material: string;
  /** loose */
  litres: number;
}

/** How many of one container are filled, if nothing else is. */
export interface ReachPot {
  /** the container */
  label: string;
  /** how many */
  count: number;
  /** the fewest and the most, where they differ */
  count_range?: Range;
}

/** What one more pack would add. */
export interface OneMore {
  /** the material's id */
  material: string;
  /** the pack */
  pack: string;
  /** the same as the reader writes it, where that differs */
  pack_shown?: string;
  /** of the mix */
  adds_litres: number;
}

/** How far a stock goes. */
export interface Reach {
  /** the version of this document */
  schema: number;
  /** the mix or the material */
  filling: string;
  /** as much as there is for */
  loose_litres: number;
  /** the same in place */
  net_litres: number;
  /** the material that runs out first, by id */
  limit: string;
  /** what is left of every material then */
  left: ReachLeft[];
  /** the stock of materials that do not go in */
  unused?: ReachLeft[];
  /** each line of containers */
  containers: ReachPot[];
  /** the ground of a layer */
  area_m2?: number;
  /** how deep it lies over the whole of it */
  depth_mm?: number;
  /** one more pack of each material */
  one_more: OneMore[];
}
