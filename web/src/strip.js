// The plan strip: the doors seen from above, drawn to scale across; where leaves swing, what
// comes out of the wall is drawn shallower, so that there is room for the picture. The bars
// are the controls, and the way in for a keyboard and for those who listen.
import { setLength, spoken } from './figures.js';
import { carried, corners, poseAt, spot, sweep } from './motion.js';

const BAR = 14; // px, height of a bar
const TOUCH = 44; // px, height of what a finger may hit
const ROW = 25; // px from bar to bar
const DEEP = 62; // px that the leaf which comes out farthest may take
const ARC = 24; // pieces of the arc that a swinging leaf's edge draws
const TOO_NARROW = 100; // mm, that a door which swings leaves clear before anybody walks through
const WORDS = 15; // px for what is written under a plan of doors in their wall
const ONE_PLANE = 1; // mm between leaves that hang one behind the other, at least
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
    this.told = words.shut; // as the page opens nothing need be said
    this.hang();
    leaves.keep(() => {
      this.draw();
      this.#tell();
    });
  }

  /** A bar for each leaf that hangs now. */
  hang() {
    const { leaves } = this;
    for (const bar of this.bars?.values() ?? []) bar.remove();
    const ways = new Map(leaves.list.map((leaf) => [leaf, sweep(leaf)]));
    const reach = [...ways.values()].flatMap(({ across }) => across);
    const jambs = leaves.ways.flatMap(({ way }) => way);
    this.span = [Math.min(...reach, ...jambs) - STUB, Math.max(...reach, ...jambs) + STUB];
    // open shelves have nothing that moves
    this.plan.parentElement.classList.toggle('bare', !leaves.list.length);
    // how far they come out of the planes they shut in, away from the viewer and nearer
    const out = (way) => (leaf) => (leaf.slides && !leaf.draws ? 0 : Math.max(0, way(ways.get(leaf).away, leaf.front + leaf.thickness / 2)));
    this.away = Math.max(0, ...leaves.list.map(out(([, back], middle) => back - middle)));
    this.nearer = Math.max(0, ...leaves.list.map(out(([front], middle) => middle - front)));
    // the nearer a leaf hangs to the viewer, the lower its bar
    this.plan.querySelector('.seen').classList.toggle('below', leaves.list.some((leaf) => leaf.front >= 0));
    const shut = new Map(leaves.list.map((leaf) => [leaf, corners(leaf, 0).map(([x]) => x)]));
    const ends = (leaf) => [Math.min(...shut.get(leaf)), Math.max(...shut.get(leaf))];
    this.rows = [];
    for (const leaf of [...leaves.list].sort((a, b) => b.front - a.front || b.foot - a.foot)) {
      const beside = (one) => Math.abs(one.front - leaf.front) < ONE_PLANE && (ends(one)[1] <= ends(leaf)[0] || ends(leaf)[1] <= ends(one)[0]);
      const row = this.rows.find((all) => all.every(beside));
      if (row) row.push(leaf);
      else this.rows.push([leaf]);
    }
    this.bars = new Map(leaves.list.map((leaf) => [leaf, this.#bar(leaf)]));
  }

  resize() {
    this.wide = this.plan.clientWidth;
    const under = this.nearer || this.away ? WORDS : 0;
    this.plan.style.height = `${this.#lowest() + 24 + under}px`;
    this.draw();
  }

  draw() {
    const { leaves, words } = this;
    for (const [leaf, bar] of this.bars) {
      bar.setAttribute('aria-valuenow', String(Math.round(leaf.value * 10) / 10));
      bar.setAttribute('aria-valuetext', this.#said(leaf));
    }
    const long = ([a, b]) => b - a;
    const open = leaves.clear().filter(({ stretch, hung }) => long(stretch) >= 1 && !hung.every((leaf) => leaf.shut));
    const narrow = ({ stretch, hung }) => hung.some((leaf) => !leaf.slides) && long(stretch) < TOO_NARROW;
    const through = words.clear ? open.filter((one) => one.walked && !narrow(one)) : [];
    if (through.length) {
      const [before, after] = words.clear.split('{0}');
      const said = through.flatMap(({ called, stretch }, i) => {
        const value = document.createElement('em');
        setLength(value, long(stretch), this.unit);
        return [`${i ? ', ' : ''}${called ? `${called} ` : ''}`, value];
      });
      this.state.replaceChildren(before, ...said, after);
    } else this.state.textContent = open.length ? words.ajar : words.shut;
    // beside an open tray there may be no room for the plan
    if (!this.wide) return;
    for (const [leaf, bar] of this.bars) this.#stand(leaf, bar);
    this.#lines(through);
  }

  /** Put a bar where its leaf is. */
  #stand(leaf, bar) {
    const [a, b] = this.#ends(leaf, leaf.open);
    const [right, down] = [b[0] - a[0], b[1] - a[1]];
    bar.style.left = `${a[0]}px`;
    bar.style.width = `${Math.hypot(right, down)}px`;
    bar.style.top = `${a[1] - TOUCH / 2}px`;
    // what stands across another bar is the shorter of the two, and lies on top
    bar.style.zIndex = leaf.slides || leaf.shut ? '' : '1';
    bar.style.transform = leaf.slides ? '' : `rotate(${Math.atan2(down, right)}rad)`;
  }

  /** How far open a leaf is, for those who listen. */
  #said(leaf) {
    const { unit, words } = this;
    if (leaf.shut) return words.shut;
    if (leaf.turns) return words.open_turned.replace('{0}', String(Math.round(leaf.open * leaf.turns)));
    return words.open_by.replace('{0}', spoken(leaf.open * leaf.long, unit));
  }

  /** Say what is clear, once, when the leaves have come to rest and it is not what it was. */
  #tell() {
    clearTimeout(this.telling);
    this.telling = setTimeout(() => {
      const now = this.state.textContent;
      if (now !== this.told) this.tell(now);
      this.told = now;
    }, SETTLED);
  }

  #x(mm) {
    const [a, b] = this.span;
    return ((mm - a) / (b - a)) * this.wide;
  }

  /** How much shallower than it is wide the plan is drawn, px to the mm. */
  get #shallow() {
    const [a, b] = this.span;
    return Math.min(this.wide / (b - a), DEEP / Math.max(1, this.away, this.nearer));
  }

  /** Where a point of the shut leaf is on the plan at a part of its way, px. */
  #place(leaf, point, part) {
    const [x, y] = carried(poseAt(leaf.motion, part), point);
    return this.#spot(leaf, [x, y]);
  }

  #spot(leaf, [x, y]) {
    const row = this.#row(this.rows.findIndex((all) => all.includes(leaf)));
    const out = leaf.slides && !leaf.draws ? 0 : leaf.front + leaf.thickness / 2 - y;
    return [this.#x(x), row + out * this.#shallow];
  }

  /** The two ends of a leaf's bar. */
  #ends(leaf, part) {
    return [0, leaf.width].map((across) => this.#place(leaf, spot(leaf, across, leaf.thickness / 2), part));
  }

  /** How much of the plan lies over the wall, for leaves that open away from the viewer. */
  get #over() {
    return Math.max(0, this.away * this.#shallow - 12);
  }

  #lowest() {
    const last = this.#row(this.rows.length - 1);
    return last + Math.max(BAR / 2, this.nearer * this.#shallow + (this.nearer ? BAR / 2 : 0));
  }

  #row(i) {
    const inWall = this.rows.filter(([leaf]) => leaf.front >= 0).length;
    return i < inWall ? this.#over + WALL[0] + 12 + i * ROW : this.#foot() + 18 + (i - inWall) * ROW;
  }

  #foot() {
    const inWall = this.rows.filter(([leaf]) => leaf.front >= 0).length;
    return this.#over + Math.max(WALL[1], WALL[0] + inWall * ROW);
  }

  /** Wall, tracks, and under them the stretches that are clear. */
  #lines(through) {
    const { svg, leaves } = this;
    svg.replaceChildren();
    const hatch = drawn(drawn(svg, 'defs', {}), 'pattern', {
      id: 'strip-hatch', width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)',
    });
    drawn(hatch, 'path', { d: 'M.5 0V6', class: 'ink thin' });
    const jambs = [0, ...leaves.ways.flatMap(({ way }) => way.map((mm) => this.#x(mm))), this.wide];
    const head = this.#over + WALL[0];
    const foot = this.#foot();
    for (let i = 0; i < jambs.length; i += 2) {
      const [x, end] = [jambs[i], jambs[i + 1]];
      drawn(svg, 'rect', { x, y: head, width: end - x, height: foot - head, fill: 'url(#strip-hatch)' });
      // the wall runs on past either end of what is shown
      let edge = `M${x} ${head}H${end}V${foot}H${x}Z`;
      if (!i) edge = `M0 ${head}H${end}V${foot}H0`;
      else if (i === jambs.length - 2) edge = `M${this.wide} ${head}H${x}V${foot}H${this.wide}`;
      drawn(svg, 'path', { d: edge, class: 'ink' });
    }
    for (const leaf of this.rows.flat()) drawn(svg, 'path', { d: this.#track(leaf), class: 'track' });
    const y = this.#lowest() + 15;
    for (const { stretch } of through) {
      const [a, b] = stretch.map((mm) => this.#x(mm));
      drawn(svg, 'path', { d: `M${a} ${y}H${b}M${a} ${y - 6}v12M${b} ${y - 6}v12`, class: 'chalk' });
    }
  }

  /** The way of a leaf: of one that slides from end to end, of others what its far edge draws. */
  #track(leaf) {
    if (leaf.draws || leaf.tilts) {
      const [[a, from], [b]] = this.#ends(leaf, 0);
      const [[, to]] = this.#ends(leaf, 1);
      return `M${a} ${from}V${to}H${b}V${from}`;
    }
    if (leaf.slides) {
      const all = [0, 1].flatMap((part) => this.#ends(leaf, part));
      const [a, b] = [Math.min(...all.map(([x]) => x)), Math.max(...all.map(([x]) => x))];
      return `M${a} ${all[0][1]}H${b}`;
    }
    const gone = (k) => Math.hypot(...corners(leaf, 0)[k].map((v, i) => v - corners(leaf, 1)[k][i]));
    const edge = spot(leaf, gone(0) > gone(1) ? 0 : leaf.width, leaf.thickness / 2);
    const points = Array.from({ length: ARC + 1 }, (_, i) => this.#place(leaf, edge, i / ARC));
    return `M${points.map((p) => p.map((v) => Math.round(v * 10) / 10).join(' ')).join('L')}`;
  }

  #bar(leaf) {
    const bar = document.createElement('div');
    bar.className = 'bar';
    bar.tabIndex = 0;
    bar.dataset.leaf = leaf.name;
    const say = { role: 'slider', 'aria-label': leaf.label, 'aria-valuemin': 0, 'aria-valuemax': leaf.most };
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
    const under = (event) => {
      const box = this.plan.getBoundingClientRect();
      return [event.clientX - box.left, event.clientY - box.top];
    };
    bar.addEventListener('pointerdown', (event) => {
      bar.setPointerCapture(event.pointerId);
      const at = under(event);
      // the point of the bar that is held: as far along it as the finger is
      const [a, b] = this.#ends(leaf, leaf.open);
      const [right, down] = [b[0] - a[0], b[1] - a[1]];
      const along = ((at[0] - a[0]) * right + (at[1] - a[1]) * down) / (right ** 2 + down ** 2);
      const point = spot(leaf, Math.min(Math.max(along, 0), 1) * leaf.width, leaf.thickness / 2);
      const on = this.#place(leaf, point, leaf.open);
      held = { at, point, off: [at[0] - on[0], at[1] - on[1]], strayed: 0 };
      leaves.put(leaf, leaf.open);
    });
    bar.addEventListener('pointermove', (event) => {
      if (!held) return;
      const at = under(event);
      held.strayed = Math.max(held.strayed, Math.hypot(at[0] - held.at[0], leaf.slides && !leaf.draws ? 0 : at[1] - held.at[1]));
      if (held.strayed < TAP) return;
      const [x, y] = [at[0] - held.off[0], at[1] - held.off[1]];
      const far = (p) => {
        const [px, py] = this.#spot(leaf, p);
        return Math.hypot(px - x, py - y);
      };
      leaves.put(leaf, leaf.nearest(held.point, far));
    });
    bar.addEventListener('pointerup', () => {
      if (held && held.strayed < TAP) leaves.toggle(leaf);
      else if (held) leaves.release(leaf, 0);
      held = null;
    });
    bar.addEventListener('pointercancel', () => (held = null));
  }

  /** Arrows go by 10 mm or a degree, pages by ten times that. */
  #keys(event, leaf) {
    const { leaves } = this;
    const one = leaf.turns ? 1 : 10;
    const by = {
      ArrowLeft: -one, ArrowDown: -one, ArrowRight: one, ArrowUp: one, PageDown: -10 * one, PageUp: 10 * one,
    }[event.key];
    if (by) leaves.put(leaf, leaf.opened(leaf.value + by));
    else if (event.key === 'Home') leaves.glide(leaf, leaf.opened(0));
    else if (event.key === 'End') leaves.glide(leaf, leaf.opened(leaf.most));
    else if (event.key === 'Enter' || event.key === ' ') leaves.toggle(leaf);
    else return;
    event.preventDefault();
  }
}
