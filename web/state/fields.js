// @ts-check
// Every field of the job document, object by object, as the form asks for it.
// `of` is what the library calls the object; a test compares the two tables.
import {mark} from '../text/say.js';

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
 * @property {[string, string][]} [choices] value and label
 * @property {string} [help]
 * @property {string | {us: string, metric: string}} [example] as anyone would write it, in any language
 * @property {boolean} [more] not among what is asked first
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

/** @type {[string, string][]} */
const soils = [['clay', mark('Clay')], ['loam', mark('Loam')], ['sandy', mark('Sandy')]];

/** What a task may do, in the order in which work goes. @type {[string, string][]} */
export const kinds = [
  ['fill', mark('Fill pots and trays')],
  ['amend', mark('Amend a bed')],
  ['backfill', mark('Plant out and backfill')],
  ['cover', mark('Cover with mulch')],
];

/** @type {Record<string, {of: string, fields: Row[]}>} */
export const objects = {
  job: {of: 'the job', fields: [
    {name: 'schema', kind: 'fixed', label: mark('Version of the document')},
    {name: 'name', kind: 'text', label: mark('Name of the job')},
    {name: 'measure', kind: 'choice', label: mark('Measure in'), choices: [['us', mark('Inches, cubic feet, pounds')], ['metric', mark('Centimetres, litres, kilograms')], ['both', mark('Both')]]},
    {name: 'currency', kind: 'text', label: mark('Money sign'), example: '$'},
    {name: 'materials', kind: 'list', label: mark('Materials of your own'), more: true},
    {name: 'containers', kind: 'list', label: mark('Containers of your own'), more: true},
    {name: 'mixes', kind: 'list', label: mark('Mixes')},
    {name: 'tasks', kind: 'list', label: mark('The work')},
    {name: 'on_hand', kind: 'keyed', label: mark('What you have')},
    {name: 'offers', kind: 'list', label: mark('What the yard sells')},
    {name: 'tax', kind: 'share', unit: 'share', label: mark('Sales tax')},
    {name: 'aim', kind: 'choice', label: mark('Choose packs for'), choices: [['cost', mark('The least cost')], ['left over', mark('The least left over')], ['lifting', mark('The fewest packs to lift')]]},
    {name: 'delivery', kind: 'object', label: mark('The yard delivers')},
    {name: 'yard', kind: 'object', label: mark('What changed at the yard'), more: true},
    {name: 'haul', kind: 'object', label: mark('Getting it home')},
  ]},
  task: {of: 'a task, of any kind', fields: [
    {name: 'kind', kind: 'choice', label: mark('What is done'), choices: kinds, more: true},
    {name: 'name', kind: 'text', label: mark('What to call it'), more: true},
    {name: 'mix', kind: 'mix', label: mark('What goes in')},
    {name: 'material', kind: 'material', label: mark('What goes in')},
    {name: 'settle', kind: 'share', unit: 'share', label: mark('Settles by'), help: mark('Loose volume lost in place. Left empty, the mix’s own or common practice; nothing for a layer.'), more: true},
    {name: 'blend_loss', kind: 'share', unit: 'share', label: mark('Lost in blending'), help: mark('Fine fills between coarse. Left empty, the mix’s own or common practice.'), more: true},
    {name: 'spare', kind: 'share', unit: 'share', label: mark('Spare on top'), more: true},
  ]},
  fill: {of: 'a fill task', fields: [
    {name: 'containers', kind: 'list', label: mark('What is filled')},
  ]},
  container: {of: 'a container line of a fill task', fields: [
    {name: 'count', kind: 'count', label: mark('How many')},
    {name: 'size', kind: 'size', label: mark('Size, such as #1')},
    {name: 'holds', kind: 'volume', unit: 'pot', label: mark('One holds')},
    {name: 'box', kind: 'lengths', unit: 'depth', label: mark('Length x width x depth, inside'), example: {us: '20 x 10 x 2', metric: '50 x 25 x 5'}},
    {name: 'across', kind: 'length', unit: 'depth', label: mark('Across, inside')},
    {name: 'top', kind: 'length', unit: 'depth', label: mark('Across the rim, inside')},
    {name: 'bottom', kind: 'length', unit: 'depth', label: mark('Across the base, inside')},
    {name: 'height', kind: 'length', unit: 'depth', label: mark('Height, inside')},
    {name: 'shape', kind: 'choice', label: mark('Seen from above'), choices: [['round', mark('Round')], ['square', mark('Square')]]},
    {name: 'below_rim', kind: 'length', unit: 'depth', label: mark('Left free below the rim'), help: mark('Room for water.'), more: true},
    {name: 'cells', kind: 'count', label: mark('Cells in one tray'), more: true},
    {name: 'ball', kind: 'ball', unit: 'depth', label: mark('Root ball already in it'), example: {us: mark('#1, 0.7 gal, 6 in x 6 in'), metric: '#1, 3 L, 15 cm x 15 cm'}, more: true},
  ]},
  amend: {of: 'an amend task', fields: [
    {name: 'area', kind: 'area', unit: 'side', label: mark('Ground')},
    {name: 'layer', kind: 'length', unit: 'depth', label: mark('Layer, as spread')},
    {name: 'share', kind: 'share', unit: 'share', label: mark('Share of the finished bed')},
    {name: 'into', kind: 'length', unit: 'depth', label: mark('Finished depth, layer and all')},
    {name: 'over', kind: 'length', unit: 'depth', label: mark('Soil loosened under it')},
    {name: 'soil', kind: 'choice', label: mark('The bed’s own soil'), choices: soils},
  ]},
  backfill: {of: 'a backfill task', fields: [
    {name: 'holes', kind: 'count', label: mark('How many holes')},
    {name: 'width', kind: 'length', unit: 'depth', label: mark('Hole width')},
    {name: 'depth', kind: 'length', unit: 'depth', label: mark('Hole depth')},
    {name: 'ball', kind: 'ball', unit: 'depth', label: mark('Root ball'), example: {us: mark('#1, 0.7 gal, 6 in x 7 in'), metric: '#1, 3 L, 15 cm x 18 cm'}},
    {name: 'above_grade', kind: 'length', unit: 'depth', label: mark('Ball stands above the ground'), help: mark('In clay 1 to 2 in, 3 to 5 cm.')},
    {name: 'share', kind: 'share', unit: 'share', label: mark('Material in the backfill'), help: mark('Left empty, only the soil dug goes back.')},
    {name: 'soil', kind: 'choice', label: mark('Soil dug'), choices: soils},
  ]},
  cover: {of: 'a cover task', fields: [
    {name: 'area', kind: 'area', unit: 'side', label: mark('Ground')},
    {name: 'layer', kind: 'length', unit: 'depth', label: mark('Layer, as spread')},
    {name: 'stems', kind: 'object', label: mark('Keep clear of stems')},
    {name: 'sheet', kind: 'object', label: mark('Cardboard or paper under it')},
  ]},
  stems: {of: 'stems', fields: [
    {name: 'count', kind: 'count', label: mark('How many plants')},
    {name: 'clear', kind: 'length', unit: 'depth', label: mark('Bare ground round each stem')},
  ]},
  sheet: {of: 'a sheet', fields: [
    {name: 'size', kind: 'lengths', unit: 'side', label: mark('One sheet'), example: {us: '4 x 3', metric: '2 x 1'}},
    {name: 'overlap', kind: 'length', unit: 'depth', label: mark('Overlap')},
  ]},
  area: {of: 'an area, when it is an object', fields: [
    {name: 'area', kind: 'area', unit: 'side', label: mark('Area already known')},
    {name: 'strip', kind: 'object', label: mark('Strip along a line')},
    {name: 'corners', kind: 'list', label: mark('Corner by corner')},
    {name: 'count', kind: 'count', label: mark('How many of this shape'), more: true},
    {name: 'plus', kind: 'list', label: mark('More ground'), more: true},
    {name: 'less', kind: 'list', label: mark('Left out'), more: true},
    {name: 'rectangle', kind: 'lengths', unit: 'side', label: mark('Rectangle'), help: mark('Length x width'), example: {us: '60 x 4', metric: '18 x 2'}},
    {name: 'circle', kind: 'lengths', unit: 'side', label: mark('Circle'), help: mark('Straight across'), example: {us: '14', metric: '4'}},
    {name: 'ellipse', kind: 'lengths', unit: 'side', label: mark('Ellipse'), help: mark('Longest x widest'), example: {us: '14 x 8', metric: '4 x 3'}},
    {name: 'triangle', kind: 'lengths', unit: 'side', label: mark('Triangle'), help: mark('Base x height, or its three sides'), example: {us: '10 x 6', metric: '3 x 2'}},
    {name: 'ring', kind: 'lengths', unit: 'side', label: mark('Ring'), help: mark('Outer x inner, straight across'), example: {us: '20 x 14', metric: '6 x 4'}},
  ]},
  strip: {of: 'a strip', fields: [
    {name: 'along', kind: 'list', unit: 'side', label: mark('Straight runs')},
    {name: 'width', kind: 'length', unit: 'side', label: mark('Width of the strip')},
    {name: 'corners', kind: 'count', label: mark('Right angles'), help: mark('Left empty, one between every two runs.'), more: true},
    {name: 'edge', kind: 'choice', label: mark('Measured along'), choices: [['centre', mark('The middle')], ['outer', mark('The outer edge')], ['inner', mark('The inner edge')]], more: true},
    {name: 'gaps', kind: 'list', unit: 'side', label: mark('Gaps: a gate, a door'), more: true},
  ]},
  ring: {of: 'a ring', fields: [
    {name: 'outer', kind: 'length', unit: 'side', label: mark('Across, outside')},
    {name: 'inner', kind: 'length', unit: 'side', label: mark('Across, inside')},
  ]},
  offer: {of: 'an offer', fields: [
    {name: 'material', kind: 'material', label: mark('Material')},
    {name: 'pack', kind: 'volume', unit: 'bag', label: mark('Bag or bale of')},
    {name: 'bulk', kind: 'volume', unit: 'load', label: mark('Loose, in steps of')},
    {name: 'opens_to', kind: 'volume', unit: 'bag', label: mark('Opens to'), help: mark('Loose volume of a compressed bale, fluffed.'), more: true},
    {name: 'breaks', kind: 'list', label: mark('Price breaks'), more: true},
    {name: 'deposit', kind: 'money', label: mark('Deposit on each'), help: mark('Paid back later.'), more: true},
    {name: 'least', kind: 'count', label: mark('Fewest they will sell'), more: true},
    {name: 'deliver', kind: 'switch', label: mark('The yard brings it'), more: true},
    {name: 'price', kind: 'money', label: mark('Price of one')},
    {name: 'weight', kind: 'mass', unit: 'weight', label: mark('Weight of one'), help: mark('As its label says.')},
    {name: 'stock', kind: 'count', label: mark('In stock')},
  ]},
  price_break: {of: 'a price break of an offer', fields: [
    {name: 'from', kind: 'count', label: mark('From this many on')},
    {name: 'price', kind: 'money', label: mark('Each then')},
  ]},
  haul: {of: 'haul', fields: [
    {name: 'payload', kind: 'mass', unit: 'weight', label: mark('May be loaded')},
    {name: 'placard', kind: 'mass', unit: 'weight', label: mark('Door placard: people and cargo')},
    {name: 'people', kind: 'mass', unit: 'weight', label: mark('Weight of all who ride')},
    {name: 'room', kind: 'volume', unit: 'load', label: mark('Room, filled level')},
    {name: 'trip_cost', kind: 'money', label: mark('Cost of one drive')},
  ]},
  delivery: {of: 'delivery', fields: [
    {name: 'fee', kind: 'money', label: mark('Fee for a load')},
    {name: 'capacity', kind: 'volume', unit: 'load', label: mark('A load is at most')},
    {name: 'payload', kind: 'mass', unit: 'weight', label: mark('A load weighs at most')},
  ]},
  yard: {of: 'yard', fields: [
    {name: 'without', kind: 'list', label: mark('Sold out')},
    {name: 'only_stock', kind: 'count', label: mark('Left of every other offer')},
    {name: 'bought', kind: 'list', label: mark('Bought already')},
  ]},
  bought: {of: 'what is bought', fields: [
    {name: 'offer', kind: 'text', label: mark('Offer')},
    {name: 'count', kind: 'count', label: mark('How many')},
  ]},
  mix: {of: 'a mix of your own', fields: [
    {name: 'id', kind: 'id', label: mark('Short name'), example: 'my-mix', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    {name: 'name', kind: 'text', label: mark('Name')},
    {name: 'parts', kind: 'keyed', label: mark('Parts by volume')},
    {name: 'blend_loss', kind: 'share', unit: 'share', label: mark('Lost in blending'), help: mark('Fine fills between coarse. Left empty, common practice.'), more: true},
    {name: 'settle', kind: 'share', unit: 'share', label: mark('Settles in the pot by'), help: mark('After watering. Left empty, common practice.'), more: true},
    {name: 'source', kind: 'text', label: mark('Where the recipe comes from'), more: true},
  ]},
  material: {of: 'a material of your own', fields: [
    {name: 'id', kind: 'id', label: mark('Short name'), example: 'my-bark', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    {name: 'name', kind: 'text', label: mark('Name')},
    {name: 'grade', kind: 'text', label: mark('What to ask for at the yard')},
    {name: 'dry', kind: 'density', unit: 'heaviness', label: mark('Weight, at its driest')},
    {name: 'wet', kind: 'density', unit: 'heaviness', label: mark('Weight, wet and drained')},
    {name: 'settle', kind: 'share', unit: 'share', label: mark('Settles in the pot by'), help: mark('After watering. Left empty, common practice.'), more: true},
    {name: 'packs', kind: 'list', unit: 'bag', label: mark('Bags commonly sold'), more: true},
    {name: 'bulk', kind: 'switch', label: mark('Sold loose by the yard'), more: true},
    {name: 'bales', kind: 'list', unit: 'bag', label: mark('Compressed bales commonly sold'), more: true},
    {name: 'opens_low', kind: 'number', label: mark('A bale opens to at least'), help: mark('So many times its volume.'), more: true},
    {name: 'opens_high', kind: 'number', label: mark('And to at most'), help: mark('So many times its volume.'), more: true},
    {name: 'traits', kind: 'traits', label: mark('To be careful with'), choices: [['dust', mark('Dust when dry')], ['legionella', mark('May carry legionella')], ['mulch', mark('A mulch')], ['salt', mark('Salts')], ['sand', mark('Sand')], ['soil', mark('Soil')], ['woody', mark('Woody, ties up nitrogen')]], more: true},
    {name: 'source', kind: 'text', label: mark('Where the figures come from'), more: true},
  ]},
  own_container: {of: 'a container of your own', fields: [
    {name: 'id', kind: 'id', label: mark('Short name'), example: 'my-pot', help: mark('Letters, digits and hyphens: it stands for this in the rest of the job.'), more: true},
    {name: 'name', kind: 'text', label: mark('Name')},
    {name: 'cells', kind: 'count', label: mark('Cells in one tray'), more: true},
    {name: 'holds', kind: 'volume', unit: 'pot', label: mark('One holds, or one cell'), help: mark('Fill one with water to the fill line and measure that.')},
    {name: 'low', kind: 'volume', unit: 'pot', label: mark('At least'), help: mark('Where it is not certain.'), more: true},
    {name: 'high', kind: 'volume', unit: 'pot', label: mark('At most'), help: mark('Where it is not certain.'), more: true},
    {name: 'source', kind: 'text', label: mark('Where the figure comes from'), more: true},
  ]},
};

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

/** The objects of the document whose fields a task of this kind takes. @param {string} kind */
export const taskObjects = kind => kinds.some(([word]) => word === kind) ? ['task', kind] : ['task'];
