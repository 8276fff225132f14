// @ts-check
// Every field of the job document, object by object, as the form asks for it.
// What fields there are the library's tables say, in tables.js; here is what the
// page says of them. A field that has no label here is called what it is, a word
// that has none is called itself.
import {mark} from '../text/say.js';
import {tables} from './tables.js';

/**
 * What a box holds: see ui/entry.js.
 * @typedef {'length' | 'volume' | 'mass' | 'density' | 'area' | 'lengths'
 *   | 'ball' | 'stock' | 'share' | 'money' | 'count' | 'number' | 'parts'
 *   | 'text'} Entry
 */

/** A field's own unit, by what it measures. @typedef {keyof typeof units} Unit */

/**
 * @typedef {object} Row
 * @property {string} name as the document has it
 * @property {Entry | 'id' | 'offset' | 'choice' | 'switch' | 'traits' | 'material'
 *   | 'mix' | 'size' | 'object' | 'list' | 'keyed' | 'fixed'} kind how it is
 *   entered: in a box, id and offset (a length that may be less than nothing)
 *   too; choice, switch, traits, material, mix and size have a control of their
 *   own, object, list and keyed a form; fixed is never asked for
 * @property {string} label
 * @property {Unit} [unit] the field's own
 * @property {string} [object] that stands there, where it is not called as the field is
 * @property {[string, string][]} [choices] value and label
 * @property {string} [help]
 * @property {string | {us: string, metric: string}} [example] as anyone would write it, in any language
 * @property {boolean} [more] not among what is asked first
 */

/** A field as the library has it. @typedef {Pick<Row, 'kind' | 'object'> & {words?: string[], called?: Record<string, string>, about?: string}} Field */

/**
 * What the page says of a field: choices by word, and its unit where that is not
 * the one of its kind.
 * @typedef {Pick<Row, 'label' | 'unit' | 'help' | 'example' | 'more'> & {choices?: Record<string, string>}} Said
 */

/** A field's own unit, put after a bare number; beside it stands what it is called. */
export const units = {
  depth: {us: mark('in'), metric: 'cm'},
  side: {us: mark('ft'), metric: 'm'},
  pot: {us: 'gal', metric: 'L'},
  bag: {us: mark('cu ft'), metric: 'L'},
  load: {us: mark('cu yd'), metric: mark('m3')},
  weight: {us: 'lb', metric: 'kg'},
  heaviness: {us: mark('lb/cu yd'), metric: mark('kg/m3')},
  share: {us: '%', metric: '%'},
};

/** The unit of a kind of field. @type {Partial<Record<Row['kind'], Unit>>} */
const usual = {length: 'depth', lengths: 'side', area: 'side', ball: 'depth', volume: 'bag', mass: 'weight', density: 'heaviness', share: 'share'};

const soils = {clay: mark('Clay'), loam: mark('Loam'), sandy: mark('Sandy')};

/** What the page says of a field, object by object. @type {Record<string, Record<string, Said>>} */
export const labels = {
  job: {
    schema: {label: mark('Version of the document')},
    name: {label: mark('Name of the job')},
    measure: {label: mark('Measure in'), choices: {us: mark('Inches, cubic feet, pounds'), metric: mark('Centimetres, litres, kilograms'), both: mark('Both')}},
    currency: {label: mark('Money sign'), example: '$'},
    materials: {label: mark('Materials of your own'), more: true},
    containers: {label: mark('Containers of your own'), more: true},
    mixes: {label: mark('Mixes')},
    tasks: {label: mark('The work')},
    on_hand: {label: mark('What you have')},
    offers: {label: mark('What the yard sells')},
    tax: {label: mark('Sales tax')},
    aim: {label: mark('Choose packs for'), choices: {cost: mark('The least cost'), 'left over': mark('The least left over'), lifting: mark('The fewest packs to lift')}},
    delivery: {label: mark('The yard delivers')},
    yard: {label: mark('What changed at the yard'), more: true},
    haul: {label: mark('Getting it home')},
  },
  task: {
    kind: {label: mark('What is done'), choices: {fill: mark('Fill pots and trays'), amend: mark('Amend a bed'), backfill: mark('Plant out and backfill'), cover: mark('Cover with mulch')}, more: true},
    name: {label: mark('What to call it'), more: true},
    mix: {label: mark('What goes in')},
    material: {label: mark('What goes in')},
    settle: {label: mark('Settles by'), help: mark('Loose volume lost in place. Left empty, the mix’s own or common practice; nothing for a layer.'), more: true},
    blend_loss: {label: mark('Lost in blending'), help: mark('Fine fills between coarse. Left empty, the mix’s own or common practice.'), more: true},
    spare: {label: mark('Spare on top'), more: true},
  },
  fill: {
    containers: {label: mark('What is filled')},
  },
  container: {
    count: {label: mark('How many')},
    size: {label: mark('Size, such as #1')},
    holds: {unit: 'pot', label: mark('One holds')},
    brim: {unit: 'pot', label: mark('One holds, to the brim'), help: mark('Fill one with water to the brim and measure that. Without the rest it is filled as far as is usual.')},
    box: {unit: 'depth', label: mark('Length x width x depth, inside'), example: {us: '20 x 10 x 2', metric: '50 x 25 x 5'}},
    across: {label: mark('Across, inside')},
    top: {label: mark('Across the rim, inside')},
    bottom: {label: mark('Across the base, inside')},
    height: {label: mark('Height, inside')},
    shape: {label: mark('Seen from above'), choices: {round: mark('Round'), square: mark('Square')}},
    below_rim: {label: mark('Left free below the rim'), help: mark('Room for water.'), more: true},
    cells: {label: mark('Cells in one tray'), more: true},
    ball: {label: mark('Root ball already in it'), example: {us: mark('#1, 0.7 gal, 6 in x 6 in'), metric: '#1, 3 L, 15 cm x 15 cm'}, more: true},
  },
  amend: {
    area: {label: mark('Ground')},
    layer: {label: mark('Layer, as spread')},
    share: {label: mark('Share of the finished bed')},
    into: {label: mark('Finished depth, layer and all')},
    over: {label: mark('Soil loosened under it')},
    soil: {label: mark('The bed’s own soil'), choices: soils},
  },
  backfill: {
    holes: {label: mark('How many holes')},
    width: {label: mark('Hole width')},
    depth: {label: mark('Hole depth')},
    ball: {label: mark('Root ball'), example: {us: mark('#1, 0.7 gal, 6 in x 7 in'), metric: '#1, 3 L, 15 cm x 18 cm'}},
    above_grade: {label: mark('Ball stands above the ground'), help: mark('In clay 1 to 2 in, 3 to 5 cm.')},
    share: {label: mark('Material in the backfill'), help: mark('Left empty, only the soil dug goes back.')},
    soil: {label: mark('Soil dug'), choices: soils},
  },
  cover: {
    area: {label: mark('Ground')},
    layer: {label: mark('Layer, as spread')},
    stems: {label: mark('Keep clear of stems')},
    sheet: {label: mark('Cardboard or paper under it')},
  },
  stems: {
    count: {label: mark('How many plants')},
    clear: {label: mark('Bare ground round each stem')},
  },
  sheet: {
    size: {label: mark('One sheet'), example: {us: '4 x 3', metric: '2 x 1'}},
    overlap: {label: mark('Overlap')},
  },
  area: {
    area: {label: mark('Area already known')},
    strip: {label: mark('Strip along a line')},
    corners: {label: mark('Corner by corner')},
    count: {label: mark('How many of this shape'), more: true},
    plus: {label: mark('More ground'), more: true},
    less: {label: mark('Left out'), more: true},
    rectangle: {label: mark('Rectangle'), help: mark('Length x width'), example: {us: '60 x 4', metric: '18 x 2'}},
    circle: {label: mark('Circle'), help: mark('Straight across'), example: {us: '14', metric: '4'}},
    ellipse: {label: mark('Ellipse'), help: mark('Longest x widest'), example: {us: '14 x 8', metric: '4 x 3'}},
    triangle: {label: mark('Triangle'), help: mark('Base x height, or its three sides'), example: {us: '10 x 6', metric: '3 x 2'}},
    ring: {label: mark('Ring'), help: mark('Outer x inner, straight across'), example: {us: '20 x 14', metric: '6 x 4'}},
  },
  strip: {
    along: {unit: 'side', label: mark('Straight runs')},
    width: {unit: 'side', label: mark('Width of the strip')},
    corners: {label: mark('Right angles'), help: mark('Left empty, one between every two runs.'), more: true},
    edge: {label: mark('Measured along'), choices: {centre: mark('The middle'), outer: mark('The outer edge'), inner: mark('The inner edge')}, more: true},
    gaps: {unit: 'side', label: mark('Gaps: a gate, a door'), more: true},
  },
  ring: {
    outer: {unit: 'side', label: mark('Across, outside')},
    inner: {unit: 'side', label: mark('Across, inside')},
  },
  offer: {
    material: {label: mark('Material')},
    pack: {label: mark('Bag or bale of')},
    bulk: {unit: 'load', label: mark('Loose, in steps of')},
    opens_to: {label: mark('Opens to'), help: mark('Loose volume of a compressed bale, fluffed.'), more: true},
    breaks: {label: mark('Price breaks'), more: true},
    deposit: {label: mark('Deposit on each'), help: mark('Paid back later.'), more: true},
    least: {label: mark('Fewest they will sell'), more: true},
    deliver: {label: mark('The yard brings it'), more: true},
    price: {label: mark('Price of one')},
    weight: {label: mark('Weight of one'), help: mark('As its label says.')},
    stock: {label: mark('In stock')},
  },
  price_break: {
    from: {label: mark('From this many')},
    price: {label: mark('Each then')},
  },
  haul: {
    payload: {label: mark('May be loaded')},
    placard: {label: mark('Door placard: people and cargo')},
    people: {label: mark('Weight of everyone who rides')},
    room: {unit: 'load', label: mark('Room, filled level')},
    trip_cost: {label: mark('Cost of one drive')},
  },
  delivery: {
    fee: {label: mark('Fee for a load')},
    capacity: {unit: 'load', label: mark('A load is at most')},
    payload: {label: mark('A load weighs at most')},
  },
  yard: {
    without: {label: mark('Sold out')},
    only_stock: {label: mark('Left of every other offer')},
    bought: {label: mark('Bought already')},
  },
  bought: {
    offer: {label: mark('Offer')},
    count: {label: mark('How many')},
  },
  mix: {
    id: {label: mark('Short name'), example: 'my-mix', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    name: {label: mark('Name')},
    parts: {label: mark('Parts by volume')},
    blend_loss: {label: mark('Lost in blending'), help: mark('Fine fills between coarse. Left empty, common practice.'), more: true},
    settle: {label: mark('Settles in the pot by'), help: mark('After watering. Left empty, common practice.'), more: true},
    source: {label: mark('Where the recipe comes from'), more: true},
  },
  material: {
    id: {label: mark('Short name'), example: 'my-bark', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    name: {label: mark('Name')},
    grade: {label: mark('What to ask for at the yard')},
    dry: {label: mark('Weight, at its driest')},
    wet: {label: mark('Weight, wet and drained')},
    settle: {label: mark('Settles in the pot by'), help: mark('After watering. Left empty, common practice.'), more: true},
    packs: {unit: 'bag', label: mark('Bags commonly sold'), more: true},
    bulk: {label: mark('Sold loose by the yard'), more: true},
    bales: {unit: 'bag', label: mark('Compressed bales commonly sold'), more: true},
    opens_low: {label: mark('A bale opens to at least'), help: mark('So many times its volume.'), more: true},
    opens_high: {label: mark('And to at most'), help: mark('So many times its volume.'), more: true},
    traits: {label: mark('Take care with'), choices: {dust: mark('Dust when dry'), legionella: mark('May carry legionella'), mulch: mark('A mulch'), salt: mark('Salts'), sand: mark('Sand'), soil: mark('Soil'), woody: mark('Woody, ties up nitrogen')}, more: true},
    source: {label: mark('Where the figures come from'), more: true},
  },
  own_container: {
    id: {label: mark('Short name'), example: 'my-pot', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    name: {label: mark('Name')},
    cells: {label: mark('Cells in one tray'), more: true},
    holds: {unit: 'pot', label: mark('One holds, or one cell'), help: mark('Fill one with water to the fill line and measure that.')},
    low: {unit: 'pot', label: mark('At least'), help: mark('Where it is not certain.'), more: true},
    high: {unit: 'pot', label: mark('At most'), help: mark('Where it is not certain.'), more: true},
    source: {label: mark('Where the figure comes from'), more: true},
  },
};

/** @param {string} name @param {Field} field @param {Said} [said] @returns {Row} */
function rowFrom(name, {words, called, about = name, ...field}, {choices, ...said} = {label: about}) {
  const row = {name, ...field, unit: usual[field.kind], ...said};
  return words ? {...row, choices: words.map(word => [word, choices?.[word] ?? called?.[word] ?? word])} : row;
}

/** @type {Record<string, {of: string, fields: Row[]}>} */
export const objects = Object.fromEntries(Object.entries(tables).map(([object, {of, fields}]) => [object, {of, fields: Object.entries(fields).map(([name, field]) => rowFrom(name, field, labels[object]?.[name]))}]));

/**
 * The row of a field.
 * @param {string} object
 * @param {string} name
 * @returns {Row}
 */
export function rowOf(object, name) {
  const row = objects[object].fields.find(r => r.name === name);
  if (!row) throw new Error(`no field ${name} of ${object}`);
  return row;
}

/**
 * The fields of an object that a form does not lay out itself, which it asks for
 * after the rest.
 * @param {string} object @param {string[]} laid
 */
export const otherFields = (object, laid) => objects[object].fields.filter(r => r.kind !== 'fixed' && !laid.includes(r.name)).map(r => r.name);

/** What a task may do, in the order in which work goes. */
export const kinds = rowOf('task', 'kind').choices ?? [];

/** The objects of the document whose fields a task of this kind takes. @param {string} kind */
export const taskObjects = kind => kinds.some(([word]) => word === kind) ? ['task', kind] : ['task'];
