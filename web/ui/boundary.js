// What keeps a place that cannot be drawn from taking the page with it.
import {h, Component} from './h.js';
import {say} from '../text/say.js';

/**
 * Draws what `draw` gives, in props desk and draw. Where that fails with a plan
 * kept from before, which may be anything, it is drawn without; where it fails
 * all the same, it says so until the job or its plan is another.
 */
export class Guard extends Component {
  componentDidCatch(error) {
    const {desk} = this.props;
    (globalThis.reportError ?? console.error)(error);
    // More than one part may fail of one drawing: they all fail of what was drawn.
    if (!this.drewSaved) this.setState({failed: [desk.slate.doc, desk.plan, desk.place]});
    else if (desk.planFor === 'saved') Object.assign(desk, {plan: null, planText: '', planFor: null});
    desk.redraw();
    this.forceUpdate();
  }

  render({desk, draw}) {
    const now = [desk.slate.doc, desk.plan, desk.place];
    this.drewSaved = desk.planFor === 'saved';
    if (this.state.failed?.every((part, i) => part === now[i])) return h('p', {class: 'note', role: 'alert', 'data-test': 'undrawn'}, say('This cannot be shown. What you typed is kept: save it as a file under “Jobs”.'));
    return h(Drawn, {desk, draw});
  }
}

/** A part of its own, since no part is asked about its own failure. */
const Drawn = ({desk, draw}) => draw(desk);
