// Where a leaf is on its way: its steps one after the other, each about its line as that
// stands when everything is shut; all go together from 0 (shut) to 1 (open). Millimetres and
// degrees in the job's frame: x to the right, y away from the viewer, z up.

const SAMPLES = 48; // places on the way from which a nearest one is looked for
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const FINE = 34; // halvings, as good as exact: 2 / SAMPLES * GOLDEN ** FINE
const FLAT = 1e-6; // mm and degrees, below which nothing is moved

const add = (a, b) => a.map((v, i) => v + b[i]);
const less = (a, b) => a.map((v, i) => v - b[i]);
const times = (a, k) => a.map((v) => v * k);
export const dot = (a, b) => a.reduce((sum, v, i) => sum + v * b[i], 0);

/** A vector turned about a unit axis by an angle in degrees, right-handed. */
function turned([x, y, z], [a, b, c], degrees) {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const along = (a * x + b * y + c * z) * (1 - cos);
  return [
    x * cos + (b * z - c * y) * sin + a * along,
    y * cos + (c * x - a * z) * sin + b * along,
    z * cos + (a * y - b * x) * sin + c * along,
  ];
}

/** How everything on a leaf is carried: where its axes point then, and where its zero goes. */
export function poseAt(motion, part) {
  let axes = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
  let zero = [0, 0, 0];
  for (const step of motion) {
    if (step.slide) zero = add(zero, times(step.slide, part));
    else {
      const angle = step.turn * part;
      axes = axes.map((axis) => turned(axis, step.axis, angle));
      zero = add(step.point, turned(less(zero, step.point), step.axis, angle));
    }
  }
  return { axes, zero };
}

/** Where a point of the shut leaf is. */
export const carried = ({ axes, zero }, p) => [0, 1, 2].map((i) => zero[i] + dot(p, axes.map((axis) => axis[i])));

/** Which point of the shut leaf is there. */
export const brought = ({ axes, zero }, p) => axes.map((axis) => dot(less(p, zero), axis));

/** Which direction of the shut leaf points there. */
export const broughtWay = ({ axes }, d) => axes.map((axis) => dot(d, axis));

/** Degrees that a leaf turns in all, about the line it turns about last; less than 0 clockwise. */
export function turnOf(motion) {
  const turns = motion.filter((step) => !step.slide);
  const last = turns[turns.length - 1];
  return last ? turns.reduce((sum, step) => sum + step.turn * dot(step.axis, last.axis), 0) : 0;
}

/** The step that turns a leaf about a level line, as a flap or a lid; nothing of other leaves. */
export const tilting = (motion) => motion.find((step) => !step.slide && Math.abs(step.axis[2]) < 0.5);

/** The height at which a leaf is looked at from above: its foot; of a flap its free edge. */
function level({ foot, height, motion }) {
  const step = tilting(motion);
  if (!step) return foot;
  const off = (z) => Math.abs(z - step.point[2]);
  return off(foot + height) > off(foot) ? foot + height : foot;
}

/** A point of the shut leaf: so far along its width from its left, and behind its front; at its foot,
 *  of a flap at its free edge. */
export function spot(leaf, across, away) {
  const { x, front, along: [c, s] = [1, 0] } = leaf;
  return [x + across * c - away * s, front + across * s + away * c, level(leaf)];
}

/** The same point the other way about: along its width, behind its front, above its foot. */
export function within({ x, front, foot, along: [c, s] = [1, 0] }, [px, py, pz]) {
  const [right, back] = [px - x, py - front];
  return [right * c + back * s, back * c - right * s, pz - foot];
}

/** The corners of a leaf seen from above, its front two first, at a part of its way. */
export function corners(leaf, part) {
  const pose = poseAt(leaf.motion, part);
  const { width, thickness } = leaf;
  return [[0, 0], [width, 0], [width, thickness], [0, thickness]]
    .map(([across, away]) => carried(pose, spot(leaf, across, away)));
}

/** All that a leaf passes over, seen from above: its least and most across and away. */
export function sweep(leaf, steps = 32) {
  const all = Array.from({ length: steps + 1 }, (_, i) => corners(leaf, i / steps)).flat();
  const bounds = (k) => [Math.min(...all.map((p) => p[k])), Math.max(...all.map((p) => p[k]))];
  return { across: bounds(0), away: bounds(1) };
}

/** How far the corner goes that goes farthest, mm. */
export function lengthOf(leaf, steps = 32) {
  const { motion } = leaf;
  if (motion.length === 1 && motion[0].slide) return Math.hypot(...motion[0].slide);
  const ways = [0, 0, 0, 0];
  let before = corners(leaf, 0);
  for (let i = 1; i <= steps; i += 1) {
    const now = corners(leaf, i / steps);
    now.forEach((p, k) => (ways[k] += Math.hypot(...less(p, before[k]))));
    before = now;
  }
  return Math.max(...ways);
}

/**
 * The part of its way at which a point of the shut leaf comes nearest: `far` says how far a
 * place is from where it should be. Of several that are as near within `slack`, the next one
 * to where the leaf is, so that it does not jump.
 */
export function nearest(motion, at, far, { from, slack }) {
  const away = (part) => far(carried(poseAt(motion, part), at));
  const all = Array.from({ length: SAMPLES + 1 }, (_, i) => away(i / SAMPLES));
  const found = [];
  all.forEach((v, i) => {
    if ((all[i - 1] ?? Infinity) < v || (all[i + 1] ?? Infinity) < v) return;
    let [a, b] = [Math.max(0, i - 1) / SAMPLES, Math.min(SAMPLES, i + 1) / SAMPLES];
    for (let k = 0; k < FINE; k += 1) {
      const [c, d] = [b - (b - a) * GOLDEN, a + (b - a) * GOLDEN];
      if (away(c) < away(d)) b = d;
      else a = c;
    }
    const ends = [i === 0 ? 0 : a, i === SAMPLES ? 1 : b, (a + b) / 2];
    const part = ends.reduce((best, one) => (away(one) < away(best) ? one : best));
    found.push({ part, far: away(part) });
  });
  const least = Math.min(...found.map((one) => one.far));
  const near = found.filter((one) => one.far <= least + slack);
  return near.reduce((best, one) => (Math.abs(one.part - from) < Math.abs(best.part - from) ? one : best)).part;
}

/** How far a ray passes a point: the ray in the job's frame, its direction of length 1. */
export function passes({ origin, way }, p) {
  const off = less(p, origin);
  const ahead = Math.max(0, dot(off, way));
  return Math.hypot(...less(off, times(way, ahead)));
}

/** Where a ray enters a box, as far along it as it is; nothing where it misses. */
export function enters({ origin, way }, low, high) {
  let [first, last] = [0, Infinity];
  for (let i = 0; i < 3; i += 1) {
    if (Math.abs(way[i]) < FLAT * FLAT) {
      if (origin[i] < low[i] || origin[i] > high[i]) return null;
    } else {
      const ends = [(low[i] - origin[i]) / way[i], (high[i] - origin[i]) / way[i]].sort((a, b) => a - b);
      first = Math.max(first, ends[0]);
      last = Math.min(last, ends[1]);
    }
  }
  return first <= last ? first : null;
}

/** A point a way along a ray. */
export const onRay = ({ origin, way }, far) => add(origin, times(way, far));
