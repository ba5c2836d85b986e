// Where the client stands. The eye always looks level and the lens is shifted up or down
// instead of tilted, as for a picture of a building, so that uprights stay upright.
import scene from './scene.js';

const NARROW = Math.tan(scene.half_view); // from the middle to the head
const BROAD = Math.tan((29 * Math.PI) / 180); // in a tight room
const ROUND = { front: Math.PI / 3, back: 0.5 }; // how far one may walk round, each way
const HEIGHTS = [0.25, 2.4];
const NEAR = [0.3, 1.15];
const PACE = 115; // ms, the time constant of a walk
const ACROSS = 0.98; // turn from which a section is seen best
const FAR = 40; // metres that are seen, and past what one stands before
const BEYOND = 12;
const CUT = { half: 0.5, middle: 0.98, height: 1.3 }; // metres of it seen up and down from the middle

const hold = (v, a, b) => Math.min(Math.max(v, a), b);
const still = () => ({ turn: 0, height: 0, near: 1 });

export class Eye {
  /**
   * `frame` is what must be seen, in metres: middle, half width, foot, head, how far the doors
   * stand before the wall, the wall's thickness, the far room's depth, where a pull is.
   * `places` are the client's own.
   */
  constructor(lens, frame, { instant = false, wake, places = [] }) {
    Object.assign(this, { lens, frame, instant, wake, places });
    this.place = 'facing';
    this.by = still(); // what the client did since
    this.spot = null;
    this.person = false;
    this.cut = null; // metres
    this.before = null;
    this.now = null;
    this.walked = null;
    this.width = 1;
    this.height = 1;
  }

  resize(width, height) {
    Object.assign(this, { width, height });
    this.lens.aspect = width / height;
    if (this.now) this.now = this.#aim();
    this.#place();
  }

  /** Walk to a place. */
  go(place) {
    const through = (place === 'beyond') !== (this.place === 'beyond');
    this.place = place;
    this.by = still();
    this.spot = null;
    // nobody walks through a wall
    if (through) this.now = null;
    this.wake();
  }

  /** Make room for a person beside the doors. */
  beside(person) {
    this.person = person;
    this.wake();
  }

  /**
   * Stand beside a section at x, mm, where its pieces are seen; or go back. `before` is how far
   * before the wall they are, metres, where they are not where the doors shut.
   */
  besideCut(x, before = null) {
    if ((x === null) !== (this.cut === null)) this.by = still();
    this.cut = x === null ? null : x / 1000;
    this.before = before;
    this.wake();
  }

  /** Stoop to a point of the world, mm, or come back from it. */
  look(point) {
    this.spot = point;
    this.wake();
  }

  /** Turn and rise by so much; `near` is a factor. */
  move({ turn = 0, height = 0, near = 1 }) {
    const round = this.place === 'beyond' ? ROUND.back : ROUND.front;
    const from = this.#stance();
    const own = this.place === 'beyond' ? 0 : from.turn;
    this.by.turn = hold(this.by.turn + turn, -round - own, round - own);
    this.by.height = hold(this.by.height + height, HEIGHTS[0] - from.height, HEIGHTS[1] - from.height);
    this.by.near = hold(this.by.near * near, ...NEAR);
    this.wake();
  }

  /** Whether the eye stands where it first stood, with the whole job before it. */
  get atHome() {
    return this.place === 'facing' && !this.spot && this.cut === null && Math.abs(this.by.turn) < 0.02 && this.by.near > 0.98;
  }

  /** Walk on; true while walking. */
  step(now) {
    const gone = this.walked === null ? 0 : Math.min(400, now - this.walked);
    this.walked = now;
    const aim = this.#aim();
    let moving = this.now === null;
    this.now ??= { ...aim };
    for (const key of Object.keys(aim)) {
      const left = aim[key] - this.now[key];
      if (left === 0) continue;
      const all = this.instant || Math.abs(left) < 2e-4;
      this.now[key] += all ? left : left * (1 - Math.exp(-gone / PACE));
      moving = true;
    }
    if (moving) this.#place();
    else this.walked = null;
    return moving;
  }

  /** The distance from which all of it is seen, metres, and where the picture's middle then is. */
  #whole(room = 1) {
    const { frame, lens } = this;
    const half = frame.halfWidth * room + (this.person && room === 1 ? frame.beside / 2 : 0);
    const wide = half / (NARROW * lens.aspect);
    const high = (frame.head - frame.foot) / 2 / NARROW;
    const far = Math.max(wide, high) + frame.front;
    // a tall picture shows more floor than wall: a person stands on it
    const spare = Math.max(0, NARROW * far - (frame.head - frame.foot) / 2);
    return { far, centre: (frame.head + frame.foot) / 2 + spare * frame.lift };
  }

  /** From a place of the client's own, as far away as it is: what it takes to see it all. */
  #own({ seated, far, side }) {
    const { frame } = this;
    const { turn, height } = scene.stances.sofa;
    const whole = this.#whole();
    const away = far / 1000;
    const half = hold(((whole.far - frame.front) * NARROW) / (away - frame.front), NARROW, BROAD);
    const middle = (frame.head + frame.foot) / 2;
    return {
      x: frame.middle, z: 0, far: away, half,
      turn: { left: turn, middle: 0, right: -turn }[side],
      height: seated ? height : scene.stances.facing.height,
      centre: middle + Math.max(0, half * away - (frame.head - frame.foot) / 2) * frame.lift,
    };
  }

  #stance() {
    const { frame } = this;
    const before = { x: frame.middle + (this.person ? frame.beside / 2 : 0), z: 0, half: NARROW };
    if (this.spot) {
      const [x, , z] = this.spot.map((v) => v / 1000);
      return { ...before, x, turn: 0, height: z + 0.34, far: 1.1 + frame.front, centre: z + 0.13 };
    }
    const own = /^own (\d+)$/.exec(this.place);
    if (own) return this.#own(this.places[Number(own[1])]);
    switch (this.place) {
      case 'sofa':
        return { ...before, x: frame.middle, ...scene.stances.sofa, ...this.#whole(1.08) };
      case 'pull': {
        const tall = this.lens.aspect < 0.8;
        const { x, y, z } = frame.pull;
        return { ...before, x: x + (tall ? 0.1 : 0.2), z, ...scene.stances.pull, far: tall ? 1.35 : 1.2, centre: y + 0.04 };
      }
      case 'beyond':
        return { x: frame.middle, z: -frame.wall, turn: Math.PI - 0.24, height: 1.5, far: frame.back - frame.wall - 0.42, centre: 1.12, half: BROAD };
      default:
        if (this.cut === null) return { ...before, ...scene.stances.facing, ...this.#whole() };
        return { ...before, x: this.cut, z: this.before ?? frame.front / 2, turn: ACROSS, height: CUT.height, far: CUT.half / NARROW, centre: CUT.middle };
    }
  }

  #aim() {
    const from = this.#stance();
    const by = this.spot ? still() : this.by;
    return {
      ...from,
      turn: from.turn + by.turn,
      height: from.height + by.height,
      // beside a section one walks along it with the eye
      centre: from.centre + (this.place === 'facing' && this.cut !== null ? by.height : 0),
      far: from.far * (this.place === 'beyond' ? Math.min(1, by.near) : by.near),
    };
  }

  #place() {
    const { lens, now } = this;
    if (!now) return;
    const x = now.x + Math.sin(now.turn) * now.far;
    const z = now.z + Math.cos(now.turn) * now.far;
    lens.far = Math.max(FAR, now.far + BEYOND);
    lens.fov = (2 * Math.atan(now.half) * 180) / Math.PI;
    lens.position.set(x, now.height, z);
    lens.lookAt(now.x, now.height, now.z);
    lens.updateMatrixWorld();
    lens.updateProjectionMatrix();
    lens.projectionMatrix.elements[9] = (now.centre - now.height) / (now.far * now.half);
    lens.projectionMatrixInverse.copy(lens.projectionMatrix).invert();
  }
}
