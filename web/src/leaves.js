// The leaves as things that slide: where each is, how it gets there, what stays clear.
// Millimetres throughout; knows nothing of pictures. A leaf's `moved` runs from 0 (shut)
// to its travel, which is negative for a leaf that slides to the left.

const REST = 500; // ms to start and stop
const PER_METRE = 700; // ms
const THROW = 260; // ms of its speed that a thrown leaf keeps

const ease = (t) => (t < 0.5 ? 4 * t ** 3 : 1 - (2 - 2 * t) ** 3 / 2);
const hold = (v, a, b) => Math.min(Math.max(v, a), b);

export class Leaf {
  constructor({ name, label, width, height, x, foot, front, thickness, travel, pull }) {
    Object.assign(this, { name, label, width, height, x, foot, front, thickness, travel, pull });
    this.stops = [Math.min(0, travel), Math.max(0, travel)];
    this.moved = 0;
    this.way = null;
  }

  get left() {
    return this.x + this.moved;
  }

  get right() {
    return this.left + this.width;
  }
}

export class Leaves {
  constructor(list, way, { instant = false } = {}) {
    this.instant = instant;
    this.watchers = [];
    this.list = [];
    this.hang(list, way);
  }

  /** Hang other leaves; one of a name that hung before stands as far open. Nobody is told yet. */
  hang(list, way) {
    const before = new Map(this.list.map((leaf) => [leaf.name, leaf.travel ? leaf.moved / leaf.travel : 0]));
    this.list = list.map((leaf) => new Leaf(leaf));
    for (const leaf of this.list) leaf.moved = (before.get(leaf.name) ?? 0) * leaf.travel;
    this.way = way;
  }

  /** Tell of every leaf where it is. */
  tell() {
    for (const leaf of this.list) for (const told of this.watchers) told(leaf);
  }

  named(name) {
    return this.list.find((leaf) => leaf.name === name);
  }

  /** Call `told` after every move. */
  watch(told) {
    this.watchers.push(told);
  }

  /** Put a leaf somewhere, no farther than its stops. */
  put(leaf, moved) {
    leaf.way = null;
    this.#set(leaf, moved);
  }

  /** Set a leaf gliding to a place; a door of this weight takes its time. */
  glide(leaf, moved) {
    const to = hold(moved, ...leaf.stops);
    if (this.instant || to === leaf.moved) {
      this.put(leaf, to);
      return;
    }
    const far = Math.abs(to - leaf.moved) / 1000;
    leaf.way = { from: leaf.moved, to, began: null, takes: REST + PER_METRE * far };
    for (const told of this.watchers) told(leaf);
  }

  /** Let go of a leaf that moves at `speed` mm per ms. */
  release(leaf, speed) {
    if (Math.abs(speed) > 0.2) this.glide(leaf, leaf.moved + speed * THROW);
  }

  /** Open a leaf that is nearer shut, else shut it. */
  toggle(leaf) {
    const aim = leaf.way ? leaf.way.to : leaf.moved;
    this.glide(leaf, Math.abs(aim) > Math.abs(leaf.travel) / 2 ? 0 : leaf.travel);
  }

  /** Move what is gliding; true while anything is. */
  step(now) {
    let moving = false;
    for (const leaf of this.list) {
      const way = leaf.way;
      if (!way) continue;
      way.began ??= now;
      const t = hold((now - way.began) / way.takes, 0, 1);
      this.#set(leaf, way.from + (way.to - way.from) * ease(t));
      if (t === 1) leaf.way = null;
      else moving = true;
    }
    return moving;
  }

  /** The widest stretch of the clear way that no leaf covers: [left, right]. */
  clear() {
    const [from, to] = this.way;
    let best = [from, from];
    let edge = from;
    const covers = this.list.map((leaf) => [leaf.left, leaf.right]).sort((a, b) => a[0] - b[0]);
    for (const [left, right] of [...covers, [to, to]]) {
      const end = Math.min(left, to);
      if (end - edge > best[1] - best[0]) best = [edge, end];
      edge = Math.max(edge, right);
    }
    return best;
  }

  #set(leaf, moved) {
    leaf.moved = hold(moved, ...leaf.stops);
    for (const told of this.watchers) told(leaf);
  }
}
