// The plan strip: the doors seen from above, drawn to scale across. The bars are the
// controls, and the way in for a keyboard and for those who listen.
import { setLength, spoken } from './figures.js';

const BAR = 14; // px, height of a bar
const TOUCH = 44; // px, height of what a finger may hit
const ROW = 25; // px from bar to bar
const WALL = [2, 26]; // px, the wall's band
const STUB = 240; // mm of wall shown beside the doors, at least
const SETTLED = 700; // ms without a move before the clear way is spoken
const TAP = 6; // px a finger may stray and still have tapped
const SVG = 'http://www.w3.org/2000/svg';

function drawn(parent, name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  parent.append(element);
  return element;
}

export class Strip {
  constructor(root, leaves, { unit, words, tell }) {
    Object.assign(this, { leaves, unit, words, tell });
    this.state = root.querySelector('#state');
    this.plan = root.querySelector('#plan');
    this.svg = this.plan.querySelector('svg');
    this.hang();
    leaves.watch(() => {
      this.draw();
      this.#tell();
    });
  }

  /** A bar for each leaf that hangs now. */
  hang() {
    const { leaves } = this;
    for (const bar of this.bars?.values() ?? []) bar.remove();
    const reach = leaves.list.flatMap((leaf) => leaf.stops.flatMap((s) => [leaf.x + s, leaf.x + s + leaf.width]));
    this.span = [Math.min(...reach, leaves.way[0]) - STUB, Math.max(...reach, leaves.way[1]) + STUB];
    // the nearer a leaf hangs to the viewer, the lower its bar
    this.plan.querySelector('.seen').classList.toggle('below', leaves.list.some((leaf) => leaf.front >= 0));
    this.rows = [...leaves.list].sort((a, b) => b.front - a.front);
    this.bars = new Map(leaves.list.map((leaf) => [leaf, this.#bar(leaf)]));
  }

  resize() {
    this.plan.style.height = `${this.#row(this.rows.length - 1) + BAR / 2 + 24}px`;
    this.wide = this.plan.clientWidth;
    this.draw();
  }

  draw() {
    if (!this.wide) return;
    const { leaves, unit, words } = this;
    for (const [leaf, bar] of this.bars) {
      const row = this.rows.indexOf(leaf);
      bar.style.left = `${this.#x(leaf.left)}px`;
      bar.style.width = `${this.#x(leaf.right) - this.#x(leaf.left)}px`;
      bar.style.top = `${this.#row(row) - TOUCH / 2}px`;
      bar.setAttribute('aria-valuenow', String(Math.round((leaf.moved - leaf.stops[0]) * 10) / 10));
      const open = Math.abs(leaf.moved);
      bar.setAttribute('aria-valuetext', open < 0.5 ? words.shut : words.open_by.replace('{0}', spoken(open, unit)));
    }
    const [from, to] = leaves.clear();
    const shut = to - from < 1;
    if (shut) this.state.textContent = words.shut;
    else {
      const value = document.createElement('em');
      setLength(value, to - from, unit);
      const [before, after] = words.clear.split('{0}');
      this.state.replaceChildren(before, value, after);
    }
    this.#lines(shut ? null : [from, to]);
  }

  /** Say what is clear, once, when the leaves have come to rest. */
  #tell() {
    clearTimeout(this.telling);
    this.telling = setTimeout(() => this.tell(this.state.textContent), SETTLED);
  }

  #x(mm) {
    const [a, b] = this.span;
    return ((mm - a) / (b - a)) * this.wide;
  }

  #row(i) {
    const inWall = this.rows.filter((leaf) => leaf.front >= 0).length;
    return i < inWall ? WALL[0] + 12 + i * ROW : this.#foot() + 18 + (i - inWall) * ROW;
  }

  #foot() {
    const inWall = this.rows.filter((leaf) => leaf.front >= 0).length;
    return Math.max(WALL[1], WALL[0] + inWall * ROW);
  }

  #lines(clear) {
    const { svg, leaves } = this;
    svg.replaceChildren();
    const hatch = drawn(drawn(svg, 'defs', {}), 'pattern', {
      id: 'strip-hatch', width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)',
    });
    drawn(hatch, 'path', { d: 'M.5 0V6', class: 'ink thin' });
    const [way0, way1] = leaves.way.map((mm) => this.#x(mm));
    const deep = this.#foot() - WALL[0];
    for (const [x, w] of [[0, way0], [way1, this.wide - way1]]) {
      drawn(svg, 'rect', { x, y: WALL[0], width: w, height: deep, fill: 'url(#strip-hatch)' });
      const edge = x ? `M${this.wide} ${WALL[0]}H${x}V${this.#foot()}H${this.wide}` : `M0 ${WALL[0]}H${w}V${this.#foot()}H0`;
      drawn(svg, 'path', { d: edge, class: 'ink' });
    }
    this.rows.forEach((leaf, i) => {
      const [a, b] = [leaf.x + leaf.stops[0], leaf.x + leaf.stops[1] + leaf.width];
      drawn(svg, 'path', { d: `M${this.#x(a)} ${this.#row(i)}H${this.#x(b)}`, class: 'track' });
    });
    if (!clear) return;
    const [a, b] = clear.map((mm) => this.#x(mm));
    const y = this.#row(this.rows.length - 1) + BAR / 2 + 15;
    drawn(svg, 'path', { d: `M${a} ${y}H${b}M${a} ${y - 6}v12M${b} ${y - 6}v12`, class: 'chalk' });
  }

  #bar(leaf) {
    const bar = document.createElement('div');
    bar.className = 'bar';
    bar.tabIndex = 0;
    bar.dataset.leaf = leaf.name;
    const say = { role: 'slider', 'aria-label': leaf.label, 'aria-valuemin': 0, 'aria-valuemax': Math.abs(leaf.travel) };
    for (const [key, value] of Object.entries(say)) bar.setAttribute(key, String(value));
    const face = document.createElement('i');
    if (leaf.pull !== null) {
      const pull = document.createElement('b');
      pull.style.left = `${(leaf.pull / leaf.width) * 100}%`;
      face.append(pull);
    }
    bar.append(face);
    this.#fingers(bar, leaf);
    bar.addEventListener('keydown', (event) => this.#keys(event, leaf));
    this.plan.append(bar);
    return bar;
  }

  #fingers(bar, leaf) {
    const { leaves } = this;
    let held = null;
    bar.addEventListener('pointerdown', (event) => {
      bar.setPointerCapture(event.pointerId);
      held = { x: event.clientX, from: leaf.moved, strayed: 0 };
      leaves.put(leaf, leaf.moved);
    });
    bar.addEventListener('pointermove', (event) => {
      if (!held) return;
      const far = event.clientX - held.x;
      held.strayed = Math.max(held.strayed, Math.abs(far));
      if (held.strayed < TAP) return;
      const [a, b] = this.span;
      leaves.put(leaf, held.from + (far * (b - a)) / this.wide);
    });
    bar.addEventListener('pointerup', () => {
      if (held && held.strayed < TAP) leaves.toggle(leaf);
      held = null;
    });
    bar.addEventListener('pointercancel', () => (held = null));
  }

  #keys(event, leaf) {
    const { leaves } = this;
    const by = {
      ArrowLeft: -10, ArrowDown: -10, ArrowRight: 10, ArrowUp: 10, PageDown: -100, PageUp: 100,
    }[event.key];
    if (by) leaves.put(leaf, leaf.moved + by);
    else if (event.key === 'Home') leaves.glide(leaf, leaf.stops[0]);
    else if (event.key === 'End') leaves.glide(leaf, leaf.stops[1]);
    else if (event.key === 'Enter' || event.key === ' ') leaves.toggle(leaf);
    else return;
    event.preventDefault();
  }
}
