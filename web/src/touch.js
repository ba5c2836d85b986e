// Fingers and mouse on the picture: take hold of a door and it comes with the finger, along its
// way; take hold of anything else and look round.
import * as THREE from 'three';
import { carried, enters, onRay, passes, poseAt, within } from './motion.js';

const TAP = 6; // px a finger may stray and still have tapped
const EASY = 140; // px, the least that a finger goes to draw a drawer out
const AS_NEAR = 8; // mm: a leaf stays on its side of a finger that it could meet in two places
const KEYS = {
  ArrowLeft: { turn: -0.08 },
  ArrowRight: { turn: 0.08 },
  ArrowUp: { height: 0.12 },
  ArrowDown: { height: -0.12 },
  '+': { near: 0.92 },
  '=': { near: 0.92 },
  '-': { near: 1.09 },
};

export class Touch {
  constructor(canvas, { eye, leaves, measure }) {
    Object.assign(this, { canvas, eye, leaves, measure });
    this.ray = new THREE.Raycaster();
    this.point = new THREE.Vector3();
    this.fingers = new Map();
    this.held = null; // a door
    this.looking = null;
    this.pinch = null;
    const on = (name, told, options) => canvas.addEventListener(name, told, options);
    on('pointerdown', (e) => this.#down(e));
    on('pointermove', (e) => this.#move(e));
    on('pointerup', (e) => this.#up(e));
    on('pointercancel', (e) => this.#up(e));
    on('wheel', (e) => {
      e.preventDefault();
      eye.move({ near: Math.exp(e.deltaY * 0.001) });
    }, { passive: false });
    on('keydown', (e) => {
      if (!KEYS[e.key]) return;
      eye.move(KEYS[e.key]);
      e.preventDefault();
    });
  }

  /** A finger's ray in the job's frame, mm. */
  #ray(event) {
    const box = this.canvas.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * 2 - 1;
    const y = 1 - ((event.clientY - box.top) / box.height) * 2;
    this.ray.setFromCamera(new THREE.Vector2(x, y), this.eye.lens);
    const { origin, direction } = this.ray.ray;
    return {
      origin: [origin.x * 1000, -origin.z * 1000, origin.y * 1000],
      way: [direction.x, -direction.z, direction.y],
    };
  }

  /** The leaf that a finger touches first, and at which of its points, as it is when shut. */
  #under(event) {
    const ray = this.#ray(event);
    let first = null;
    for (const leaf of this.leaves.list) {
      const own = leaf.bringRay(ray);
      const from = within(leaf, own.origin);
      const to = within(leaf, onRay(own, 1));
      const far = enters({ origin: from, way: to.map((v, i) => v - from[i]) }, [0, 0, 0], [leaf.width, leaf.thickness, leaf.height]);
      if (far !== null && (!first || far < first.far)) first = { leaf, far, at: onRay(own, far) };
    }
    return first;
  }

  #down(event) {
    const { canvas, fingers, leaves } = this;
    canvas.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, event);
    if (fingers.size === 2) {
      this.held = this.looking = this.setting = null;
      this.pinch = this.#spread();
      return;
    }
    const touched = this.#under(event);
    if (this.measure().on) {
      const box = canvas.getBoundingClientRect();
      this.looking = event;
      this.setting = { x: event.clientX - box.left, y: event.clientY - box.top, from: [event.clientX, event.clientY] };
    } else if (touched) {
      const { leaf, at } = touched;
      leaves.put(leaf, leaf.open);
      this.held = { leaf, at, x: event.clientX, y: event.clientY, from: leaf.open, strayed: 0, trail: [] };
      canvas.classList.add('holding');
    } else this.looking = event;
  }

  #move(event) {
    const { canvas, fingers, held, eye } = this;
    if (!fingers.has(event.pointerId)) {
      if (event.pointerType === 'mouse') canvas.classList.toggle('door', Boolean(this.#under(event)));
      return;
    }
    const before = fingers.get(event.pointerId);
    fingers.set(event.pointerId, event);
    if (this.pinch && fingers.size === 2) {
      const now = this.#spread();
      eye.move({ near: this.pinch / now });
      this.pinch = now;
    } else if (held) {
      const { leaf, at, x, y } = held;
      // a door that only slides does not mind a finger that goes up and down
      const up = leaf.slides && !leaf.draws ? 0 : event.clientY - y;
      held.strayed = Math.max(held.strayed, Math.hypot(event.clientX - x, up));
      if (held.strayed < TAP) return;
      this.leaves.follow(leaf, this.#drawn(held, event) ?? this.#along(leaf, at, event));
      held.trail.push([event.timeStamp, leaf.open]);
    } else if (this.looking) {
      eye.move({ turn: (before.clientX - event.clientX) * 0.0042, height: (event.clientY - before.clientY) * 0.006 });
    }
  }

  /** Where on its way the held point of a leaf is nearest to the finger. */
  #along(leaf, at, event) {
    const ray = this.#ray(event);
    return leaf.nearest(at, (p) => passes(ray, p), AS_NEAR);
  }

  /**
   * Where a drawer is by how far the finger has gone, when its whole way is short in the picture:
   * from straight in front it comes out towards the eye. Then down is out.
   */
  #drawn({ leaf, at, x, y, from }, event) {
    if (!leaf.draws) return null;
    const [a, b] = [0, 1].map((part) => this.#seen(carried(poseAt(leaf.motion, part), at)));
    const [right, down] = [b[0] - a[0], b[1] - a[1]];
    const far = Math.hypot(right, down);
    if (far >= EASY) return null;
    const [i, j] = far > TAP ? [right / far, down / far] : [0, 1];
    return Math.min(Math.max(from + ((event.clientX - x) * i + (event.clientY - y) * j) / EASY, 0), 1);
  }

  /** Where a point of the job is in the picture, px. */
  #seen([x, y, z]) {
    const { width, height } = this.canvas.getBoundingClientRect();
    const p = this.point.set(x / 1000, z / 1000, -y / 1000).project(this.eye.lens);
    return [((p.x + 1) / 2) * width, ((1 - p.y) / 2) * height];
  }

  #up(event) {
    const { canvas, fingers, held, leaves } = this;
    fingers.delete(event.pointerId);
    if (held) {
      if (held.strayed < TAP) leaves.toggle(held.leaf);
      else {
        const recent = held.trail.filter(([t]) => event.timeStamp - t < 90);
        const [[t0, a], [t1, b]] = recent.length ? [recent[0], recent[recent.length - 1]] : [[0, 0], [0, 0]];
        leaves.release(held.leaf, t1 > t0 ? (b - a) / (t1 - t0) : 0);
      }
    }
    if (this.setting) {
      const { x, y, from } = this.setting;
      if (Math.hypot(event.clientX - from[0], event.clientY - from[1]) < TAP) this.measure().touch(x, y);
      this.setting = null;
    }
    this.held = this.looking = null;
    if (fingers.size < 2) this.pinch = null;
    canvas.classList.remove('holding');
  }

  #spread() {
    const [a, b] = [...this.fingers.values()];
    return Math.max(1, Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY));
  }
}
