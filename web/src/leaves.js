// The leaves as things that move: where each is, how it gets there, what stays clear.
// Millimetres throughout; knows nothing of pictures. A leaf's `open` runs from 0 (shut) to 1.
import { brought, broughtWay, carried, corners, lengthOf, nearest, poseAt, tilting, turnOf } from './motion.js';

const REST = 500; // ms to start and stop
const PER_METRE = 700; // ms
const THROW = 260; // ms of its speed that a thrown leaf keeps
const THROWN = 0.2; // mm per ms from which a leaf that is let go goes on
const LATCH = 6; // degrees before its end from which a leaf that swings goes there by itself
const STRIDE = 80; // mm that a leaf that swings may go at once under a finger
const CATCH = 55; // ms, the time constant in which it comes after
const THERE = 0.5; // mm, within which a leaf is where it goes, or shut

const ease = (t) => (t < 0.5 ? 4 * t ** 3 : 1 - (2 - 2 * t) ** 3 / 2);
const hold = (v, a = 0, b = 1) => Math.min(Math.max(v, a), b);

export class Leaf {
  constructor(told) {
    const { name, label, width, height, x, foot, front, thickness, motion, goes_with, after, behind, along, pull } = told;
    Object.assign(this, { name, label, width, height, x, foot, front, thickness, motion, goes_with, after, behind, along, pull });
    const [only] = motion;
    this.slides = motion.length === 1 && Boolean(only.slide);
    /** How far it slides, to the left less than 0; 0 where it does anything else. */
    this.travel = this.slides ? Math.hypot(...only.slide) * (only.slide[0] < 0 ? -1 : 1) : 0;
    /** Whether it is drawn out towards the viewer, as a drawer is. */
    this.draws = this.slides && Math.abs(only.slide[1]) > Math.abs(only.slide[0]);
    /** Whether it turns about a level line, and comes out over its whole width. */
    this.tilts = Boolean(tilting(motion));
    this.turns = Math.abs(turnOf(motion));
    this.long = lengthOf(told);
    this.open = 0;
    this.way = null;
  }

  get open() {
    return this.part;
  }

  set open(part) {
    this.part = part;
    this.pose = poseAt(this.motion, part);
  }

  /** Whether it stands as good as shut. */
  get shut() {
    return this.open * this.long < THERE;
  }

  /**
   * What a slider of it says: from its left stop where it slides, from shut where it turns,
   * and how much that can be.
   */
  get most() {
    if (this.slides) return Math.abs(this.travel);
    return this.turns || this.long;
  }

  get value() {
    return this.slides ? this.open * this.travel - Math.min(0, this.travel) : this.open * this.most;
  }

  /** The part of its way that stands for such a value. */
  opened(value) {
    return this.slides ? (value + Math.min(0, this.travel)) / this.travel : value / this.most;
  }

  /** Its left and right, seen from the front. */
  get across() {
    const all = corners(this, this.open).map(([x]) => x);
    return [Math.min(...all), Math.max(...all)];
  }

  /** Where a point of the shut leaf is, and the other way about. */
  carry(point) {
    return carried(this.pose, point);
  }

  bring(point) {
    return brought(this.pose, point);
  }

  /** A ray as the shut leaf would have it. */
  bringRay({ origin, way }) {
    return { origin: this.bring(origin), way: broughtWay(this.pose, way) };
  }

  /** The part of its way at which a point of it comes nearest to where `far` wants it. */
  nearest(point, far, slack = 0) {
    return nearest(this.motion, point, far, { from: this.open, slack });
  }
}

export class Leaves {
  /** `ways` are the doorways that they hang in. */
  constructor(list, ways, { instant = false } = {}) {
    this.instant = instant;
    this.watchers = [];
    this.keepers = [];
    this.within = 0; // moves within moves
    this.list = [];
    this.hang(list, ways);
  }

  /** Hang other leaves; one of a name that hung before stands as far open. Nobody is told yet. */
  hang(list, ways) {
    const before = new Map(this.list.map((leaf) => [leaf.name, leaf.open]));
    this.list = list.map((leaf) => new Leaf(leaf));
    for (const leaf of this.list) leaf.open = before.get(leaf.name) ?? 0;
    this.byName = new Map(this.list.map((leaf) => [leaf.name, leaf]));
    this.ways = ways.map((one) => ({
      ...one, hung: this.list.filter((leaf) => !one.leaves || one.leaves.includes(leaf.name)),
    }));
  }

  /** Tell of every leaf where it is. */
  tell() {
    this.#move(() => this.list.forEach((leaf) => this.#tell(leaf)));
  }

  named(name) {
    return this.byName.get(name);
  }

  /** Call `told` with every leaf that has moved. */
  watch(told) {
    this.watchers.push(told);
  }

  /** Call `told` once after each move, of however many leaves. */
  keep(told) {
    this.keepers.push(told);
  }

  /** Whether all of them stand wide open, or are on their way there. */
  get allOpen() {
    return this.list.every((leaf) => (leaf.way ? leaf.way.to : leaf.open) === 1);
  }

  /** Open all of them, or shut all. */
  glideAll(open) {
    this.#move(() => this.list.forEach((leaf) => this.glide(leaf, open)));
  }

  /** Put a leaf somewhere, no farther than its stops. */
  put(leaf, open) {
    this.#move(() => {
      this.#free(leaf);
      this.#set(leaf, open);
    });
  }

  /** Set a leaf gliding to a place; a door of this weight takes its time. */
  glide(leaf, open) {
    const to = hold(open);
    if (this.instant || to === leaf.open) {
      this.put(leaf, to);
      return;
    }
    this.#free(leaf);
    const far = (Math.abs(to - leaf.open) * leaf.long) / 1000;
    leaf.way = { from: leaf.open, to, began: null, takes: REST + PER_METRE * far };
    this.#move(() => this.#tell(leaf));
  }

  /** Bring a leaf to where a finger has it; one that swings comes after where it would jump. */
  follow(leaf, open) {
    const to = hold(open);
    if (this.instant || leaf.slides || Math.abs(to - leaf.open) * leaf.long < STRIDE) {
      this.put(leaf, to);
      return;
    }
    this.#free(leaf);
    leaf.way = { to, after: true, now: null };
    this.#move(() => this.#tell(leaf));
  }

  /** Let go of a leaf that moves at `speed`, of its way per ms. */
  release(leaf, speed) {
    const thrown = Math.abs(speed) * leaf.long > THROWN;
    const from = leaf.way ? leaf.way.to : leaf.open;
    const to = hold(thrown ? leaf.open + speed * THROW : from);
    const latch = leaf.turns ? LATCH / leaf.turns : 0;
    const end = [0, 1].find((stop) => Math.abs(stop - to) < latch) ?? to;
    if (thrown || end !== from) this.glide(leaf, end);
  }

  /** Open a leaf that is nearer shut, else shut it. */
  toggle(leaf) {
    const aim = leaf.way ? leaf.way.to : leaf.open;
    this.glide(leaf, aim > 0.5 ? 0 : 1);
  }

  /** Move what is gliding; true while anything is. */
  step(now) {
    const going = this.list.filter((leaf) => leaf.way);
    if (!going.length) return false;
    let moving = false;
    this.#move(() => going.forEach((leaf) => {
      const { way } = leaf;
      if (!way) return;
      const there = way.after ? this.#after(leaf, way, now) : this.#glided(leaf, way, now);
      if (there) leaf.way = null;
      else moving = true;
    }));
    return moving;
  }

  /** Of each doorway the widest stretch of its clear way that no leaf covers: [left, right]. */
  clear() {
    return this.ways.map((one) => ({ ...one, stretch: this.#clearOf(one) }));
  }

  #clearOf({ way: [from, to], hung }) {
    let best = [from, from];
    let edge = from;
    const covers = hung.map((leaf) => leaf.across).sort((a, b) => a[0] - b[0]);
    for (const [left, right] of [...covers, [to, to]]) {
      const end = Math.min(left, to);
      if (end - edge > best[1] - best[0]) best = [edge, end];
      edge = Math.max(edge, right);
    }
    return best;
  }

  #glided(leaf, way, now) {
    way.began ??= now;
    const t = hold((now - way.began) / way.takes);
    this.#set(leaf, way.from + (way.to - way.from) * ease(t));
    return t === 1;
  }

  #after(leaf, way, now) {
    const share = 1 - Math.exp(((way.now ?? now) - now) / CATCH);
    way.now = now;
    const there = Math.abs(way.to - leaf.open) * leaf.long < THERE;
    this.#set(leaf, there ? way.to : leaf.open + (way.to - leaf.open) * share);
    return there;
  }

  /** Those that can only move together: a leaf that folds and what it is hung to. */
  #together(leaf) {
    return leaf.goes_with ? this.list.filter((one) => one.goes_with === leaf.goes_with) : [leaf];
  }

  #free(leaf) {
    for (const one of this.#together(leaf)) one.way = null;
  }

  #set(leaf, open) {
    for (const one of this.#together(leaf)) {
      one.open = hold(open);
      this.#tell(one);
    }
    this.#keepOrder(leaf);
  }

  /**
   * A leaf that another laps takes that one with it as it opens, and is taken along by it as it
   * shuts. What comes out behind others finds them wide open, and is home before they shut.
   */
  #keepOrder(leaf) {
    const bring = (one, open) => {
      one.way = null;
      one.open = open;
      this.#tell(one);
    };
    for (const one of this.list) {
      for (const before of one.behind ?? []) {
        const door = this.named(before);
        if (!one.open || door.open === 1) continue;
        if (one === leaf) bring(door, 1);
        if (door === leaf) bring(one, 0);
      }
      const first = one.after && this.named(one.after);
      if (!first || one.open <= first.open) continue;
      if (one === leaf) bring(first, one.open);
      if (first === leaf) bring(one, first.open);
    }
  }

  /** Move leaves, and tell once when all have moved. */
  #move(doing) {
    this.within += 1;
    doing();
    this.within -= 1;
    if (!this.within) for (const told of this.keepers) told();
  }

  #tell(leaf) {
    for (const told of this.watchers) told(leaf);
  }
}
