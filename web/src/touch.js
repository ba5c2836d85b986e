// Fingers and mouse on the picture: take hold of a door and it slides under the finger;
// take hold of anything else and look round.
import * as THREE from 'three';

const TAP = 6; // px a finger may stray and still have tapped
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

  /** How far from the wall the face of a leaf is that the eye sees, metres. */
  #face(leaf) {
    const front = -leaf.front / 1000;
    const back = front - leaf.thickness / 1000;
    return this.eye.lens.position.z > (front + back) / 2 ? front : back;
  }

  /** Where a finger's ray meets the plane of a leaf's face, in the job's millimetres. */
  #onFace(event, leaf) {
    const box = this.canvas.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * 2 - 1;
    const y = 1 - ((event.clientY - box.top) / box.height) * 2;
    this.ray.setFromCamera(new THREE.Vector2(x, y), this.eye.lens);
    const { origin, direction } = this.ray.ray;
    const far = (this.#face(leaf) - origin.z) / direction.z;
    return far > 0 ? [(origin.x + direction.x * far) * 1000, (origin.y + direction.y * far) * 1000] : null;
  }

  /** The leaf under a finger: the foremost whose face it touches. */
  #under(event) {
    const eye = this.eye.lens.position.z;
    const foremost = [...this.leaves.list].sort((a, b) => Math.abs(eye - this.#face(a)) - Math.abs(eye - this.#face(b)));
    return foremost.find((leaf) => {
      const at = this.#onFace(event, leaf);
      return at && at[0] > leaf.left && at[0] < leaf.right && at[1] > leaf.foot && at[1] < leaf.foot + leaf.height;
    });
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
    const leaf = this.#under(event);
    if (this.measure().on) {
      const box = canvas.getBoundingClientRect();
      this.looking = event;
      this.setting = { x: event.clientX - box.left, y: event.clientY - box.top, from: [event.clientX, event.clientY] };
    } else if (leaf) {
      leaves.put(leaf, leaf.moved);
      this.held = {
        leaf, at: this.#onFace(event, leaf)[0], from: leaf.moved, x: event.clientX, strayed: 0, trail: [],
      };
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
      held.strayed = Math.max(held.strayed, Math.abs(event.clientX - held.x));
      if (held.strayed < TAP) return;
      const at = this.#onFace(event, held.leaf);
      if (!at) return;
      this.leaves.put(held.leaf, held.from + at[0] - held.at);
      held.trail.push([event.timeStamp, held.leaf.moved]);
    } else if (this.looking) {
      eye.move({ turn: (before.clientX - event.clientX) * 0.0042, height: (event.clientY - before.clientY) * 0.006 });
    }
  }

  #up(event) {
    const { canvas, fingers, held, leaves } = this;
    fingers.delete(event.pointerId);
    if (held) {
      if (held.strayed < TAP) leaves.toggle(held.leaf);
      else {
        const recent = held.trail.filter(([t]) => event.timeStamp - t < 90);
        if (recent.length > 1) {
          const [[t0, m0], [t1, m1]] = [recent[0], recent[recent.length - 1]];
          if (t1 > t0) leaves.release(held.leaf, (m1 - m0) / (t1 - t0));
        }
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
