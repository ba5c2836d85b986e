// Measuring between two points: each snaps to the edges of the piece it is set on, and a line
// that is nearly level or nearly upright is taken as level or upright, as a tape is held. On one
// leaf it is measured as on the shut leaf, and goes with it.
import { spoken } from './figures.js';

const SNAP = 30; // mm
const STEP = 12; // px that an arrow key moves the cross
const OFF = 8; // mm the line stands before the face

export class Measure {
  /**
   * `hit` takes a place on the canvas to what stands there: the point, its piece's edges, mm,
   * and the leaf, by whose shut state all is told; `carry` says where such a point is.
   */
  constructor({ canvas, button, told, words, unit, chalk, hit, carry, started }) {
    Object.assign(this, { canvas, button, told, words, unit, chalk, hit, carry, started });
    this.on = false;
    this.points = [];
    button.addEventListener('click', () => this.toggle(!this.on));
    canvas.addEventListener('keydown', (event) => this.on && this.#keys(event));
  }

  toggle(on) {
    if (this.on === on) return;
    this.on = on;
    this.points = [];
    this.cross = null;
    this.button.setAttribute('aria-pressed', String(on));
    this.button.textContent = on ? this.words['measure stop'] : this.words.measure;
    this.told.textContent = on ? `${this.words['measure first']}. ${this.words['measure keys']}` : '';
    this.canvas.classList.toggle('measuring', on);
    if (on) this.started();
    this.chalk.show([]);
  }

  /** Set a point at a place on the canvas, px. */
  touch(x, y) {
    const found = this.hit(x, y);
    if (!found) {
      this.told.textContent = this.words['no wood there'];
      return;
    }
    if (this.points.length === 2) this.points = [];
    this.points.push(snapped(found));
    this.#show();
  }

  #show() {
    const [a, b] = this.points;
    if (!b) {
      this.told.textContent = this.words['measure second'];
      this.chalk.show([], this.cross ? [a, this.cross] : [a]);
      return;
    }
    const { from, to, far, leaf } = a.leaf === b.leaf || !(a.turned || b.turned)
      ? this.#onFace(a, b)
      : this.#across(a, b);
    const text = spoken(far, this.unit);
    this.told.textContent = this.words['measure done'].replace('{0}', text);
    this.chalk.show([{ start: from, end: to, text, leaf, aside: [90, 70] }], [a, b]);
  }

  /** Two points of one leaf, or of leaves that stand in the planes they shut in. */
  #onFace(a, b) {
    if (a.leaf === b.leaf) return { ...measured(a.at, b.at), leaf: a.leaf };
    return { ...measured(this.#out(a), this.#out(b)), leaf: '' };
  }

  /** Straight from one to the other, where a leaf stands turned. */
  #across(a, b) {
    const [from, to] = [this.#out(a), this.#out(b)];
    return { from, to, far: Math.hypot(...from.map((v, i) => v - to[i])), leaf: '' };
  }

  #out({ at, leaf }) {
    return leaf ? this.carry(leaf, at) : at;
  }

  #keys(event) {
    const box = this.canvas.getBoundingClientRect();
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    this.at ??= [box.width / 2, box.height / 2];
    if (by) this.at = this.at.map((v, i) => Math.min(Math.max(v + by[i] * (event.shiftKey ? 1 : STEP), 0), i ? box.height : box.width));
    else if (event.key === 'Enter' || event.key === ' ') this.touch(...this.at);
    else return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (!by) return;
    const found = this.hit(...this.at);
    this.cross = found && snapped(found);
    this.chalk.show([], [...this.points, this.cross].filter(Boolean));
  }
}

/** A point drawn to the edges of its piece, across and up, where they are near, before its face. */
function snapped({ point, edges, side, leaf, turned }) {
  const near = (v, all) => all.reduce((best, e) => (Math.abs(e - v) < Math.abs(best - v) ? e : best), all[0]);
  const [x, z] = [0, 1].map((i) => {
    const e = near(point[i === 0 ? 0 : 2], edges[i]);
    return Math.abs(e - point[i === 0 ? 0 : 2]) <= SNAP ? e : point[i === 0 ? 0 : 2];
  });
  return { at: [x, point[1] + side * OFF, z], leaf, turned };
}

/** How far two points lie apart on the face, square where they are nearly so. */
export function measured(a, b) {
  let [dx, dz] = [b[0] - a[0], b[2] - a[2]];
  if (Math.abs(dz) <= SNAP && Math.abs(dx) > SNAP) dz = 0;
  else if (Math.abs(dx) <= SNAP && Math.abs(dz) > SNAP) dx = 0;
  const to = [a[0] + dx, Math.min(a[1], b[1]), a[2] + dz];
  return { from: [a[0], to[1], a[2]], to, far: Math.hypot(dx, dz) };
}
