import test from 'node:test';
import assert from 'node:assert/strict';
import {createState} from '../state/state.js';
import {materialGroups, namesOf, partGroups} from '../job/names.js';
import {setLanguage} from '../text/say.js';

const catalog = {
  materials: [{id: 'bark', name: 'Corteza'}, {id: 'peat', name: 'Ñandú'}, {id: 'sand', name: 'Arena'}, {id: 'zinc', name: 'Óxido'}, {id: 'wood', name: 'Nuez'}],
  mixes: [{id: 'b', name: 'Potting'}, {id: 'c', name: 'Cuttings'}],
  containers: [{id: '#1', name: '#1 pot'}, {id: '#10', name: '#10 pot'}, {id: '#2', name: '#2 pot'}],
};
const ids = (/** @type {any} */ list) => list.map((/** @type {any} */ [id]) => id);

test('what there is to choose from is in the order of what it is called', () => {
  setLanguage({language: 'es'});
  try {
    const state = createState({schema: 1, tasks: [], materials: [{id: 'z', name: 'Zeta'}, {id: 'a', name: 'Alfa'}]});
    state.catalog = catalog;
    const names = namesOf(state);
    assert.deepEqual(materialGroups(names).map(group => ids(group.options)), [['z', 'a'], ['sand', 'bark', 'wood', 'peat', 'zinc']], 'their own as they wrote it');
    assert.deepEqual(ids(partGroups(names)[2].options), ['c', 'b']);
    assert.deepEqual(ids(names.sizes), ['#1', '#10', '#2'], 'sizes as the catalogue has them');
    assert.equal(catalog.materials[0].id, 'bark', 'the catalogue stays as it is');
  } finally {
    setLanguage();
  }
});

test('what there is to choose from stands under the headings of its kinds', () => {
  const state = createState({schema: 1, tasks: [], containers: [{id: 'tub', name: 'Tub'}, {id: '#2', name: 'My own #2'}]});
  state.catalog = {
    materials: [{id: 'bark', kind: 'Bark', name: 'Fines'}, {id: 'mulch', kind: 'Mulches', name: 'Mulch'}, {id: 'chunks', kind: 'Bark', name: 'Chunks'}],
    mixes: [], soils: [],
    containers: [{id: '#1', kind: 'Pots', name: '#1 pot'}, {id: '#2', kind: 'Pots', name: '#2 pot'}, {id: 'tray', kind: 'Trays', name: 'Tray'}, {id: '#3', kind: 'Pots', name: '#3 pot'}],
  };
  const names = namesOf(state);
  const shape = (/** @type {any} */ groups) => groups.map((/** @type {any} */ group) => [group.label, ids(group.options)]);
  assert.deepEqual(shape(materialGroups(names)), [['Bark', ['chunks', 'bark']], ['Mulches', ['mulch']]], 'in the order of names under each');
  assert.deepEqual(shape(names.sizeKinds), [['Your own', ['tub', '#2']], ['Pots', ['#1', '#3']], ['Trays', ['tray']]], 'the sizes in order, a number taken over by their own left out');
});
