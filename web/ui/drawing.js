// @ts-check
// Draws what the plan drew: shapes with their places already worked out.
import {h, Component} from './h.js';

/** @import {Drawing as Drawn, Shape, State} from '../state/types.d.ts' */

/** The shapes that a drawing may have, and what of each is taken over. @type {Record<string, string[]>} */
const allowed = {
  rect: ['x', 'y', 'width', 'height'],
  line: ['x1', 'y1', 'x2', 'y2'],
  circle: ['cx', 'cy', 'r'],
  ellipse: ['cx', 'cy', 'rx', 'ry'],
  path: ['d'],
  text: ['x', 'y', 'text-anchor'],
};

/** Kinds that stand in no task, and say whose they are. */
const titled = ['heap', 'cost'];

/** One drawing, with its title and its text for those who do not see it. @param {Drawn} d @param {string} key */
export const drawing = (d, key) => h(Drawing, {d, id: 'drawing-' + key, key});

/** @extends {Component<{d: Drawn, id: string}>} */
class Drawing extends Component {
  // Hundreds of shapes stay as they are while somebody types.
  /** @param {Drawing['props']} next */
  shouldComponentUpdate(next) { return next.d !== this.props.d; }

  /** @param {Drawing['props']} props */
  render({d, id}) {
    return h('figure', {class: cls(d.kind)},
      h('svg', {viewBox: `0 0 ${d.width} ${d.height}`, role: 'img', 'aria-labelledby': `${id}-title ${id}-desc`, width: d.width, height: d.height},
        h('title', {id: `${id}-title`}, d.title), h('desc', {id: `${id}-desc`}, d.desc),
        d.shapes.map((s, i) => shape(s, i))),
      titled.includes(d.kind) && h('figcaption', null, d.title));
  }
}

/** @param {string} kind */
function cls(kind) { return 'drawing drawing-' + kind; }

/** @param {Shape} s @param {number} key */
function shape(s, key) {
  const takes = Object.hasOwn(allowed, s.is) && allowed[s.is];
  if (!takes) return null;
  /** @type {Record<string, unknown> & {key: number}} */
  const attrs = {key, class: s.class};
  for (const name of takes) attrs[name] = s[name];
  return h(s.is, attrs, s.is === 'text' ? s.text : undefined);
}

/** The drawings of one task, or of a kind. @param {State} state @param {(d: Drawn) => boolean} which */
export function drawingsOf(state, which) {
  return [...state.drawings ?? [], ...state.costs ?? []].filter(which);
}
