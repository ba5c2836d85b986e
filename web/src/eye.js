// Where the client stands. The eye always looks level and the lens is shifted up or down
// instead of tilted, as for a picture of a building, so that uprights stay upright.

const VIEW = 30; // degrees from the foot to the head of the picture
const ROUND = Math.PI / 3; // how far one may walk round, each way
const STANDING = 1.45;
const HEIGHTS = [0.35, 2.3];
const PACE = 115; // ms, the time constant of a walk

const hold = (v, a, b) => Math.min(Math.max(v, a), b);

export class Eye {
  /** `frame` is what must be seen: middle, half width, foot and head, in metres. */
  constructor(lens, frame, { instant = false, wake }) {
    lens.fov = VIEW;
    Object.assign(this, { lens, frame, instant, wake });
    this.aim = { turn: 0, height: STANDING, near: 1 }; // near: 1 shows all
    this.now = { ...this.aim };
    this.walked = null;
    this.width = 1;
    this.height = 1;
  }

  resize(width, height) {
    Object.assign(this, { width, height });
    this.lens.aspect = width / height;
    this.#place();
  }

  /** Turn and rise by so much; `near` is a factor. */
  move({ turn = 0, height = 0, near = 1 }) {
    this.aim.turn = hold(this.aim.turn + turn, -ROUND, ROUND);
    this.aim.height = hold(this.aim.height + height, ...HEIGHTS);
    this.aim.near = hold(this.aim.near * near, 0.3, 1.15);
    this.wake();
  }

  /** Whether the eye stands where it first stood, with the whole job before it. */
  get atHome() {
    return Math.abs(this.aim.turn) < 0.02 && this.aim.near > 0.98;
  }

  /** Walk on; true while walking. */
  step(now) {
    const gone = this.walked === null ? 0 : Math.min(400, now - this.walked);
    this.walked = now;
    let moving = false;
    for (const key of Object.keys(this.aim)) {
      const left = this.aim[key] - this.now[key];
      if (left === 0) continue;
      const all = this.instant || Math.abs(left) < 2e-4;
      this.now[key] += all ? left : left * (1 - Math.exp(-gone / PACE));
      moving = true;
    }
    if (moving) this.#place();
    else this.walked = null;
    return moving;
  }

  /** How far the eye stands from the wall's face, metres. */
  get distance() {
    const { frame } = this;
    const tan = Math.tan((VIEW / 2) * (Math.PI / 180));
    const wide = frame.halfWidth / (tan * this.lens.aspect);
    const high = (frame.head - frame.foot) / 2 / tan;
    return Math.max(wide, high) + frame.front;
  }

  #place() {
    const { lens, frame, now } = this;
    const far = this.distance * now.near;
    const tan = Math.tan((VIEW / 2) * (Math.PI / 180));
    const x = frame.middle + Math.sin(now.turn) * far;
    const z = Math.cos(now.turn) * far;
    lens.position.set(x, now.height, z);
    lens.lookAt(frame.middle, now.height, 0);
    lens.updateMatrixWorld();
    lens.updateProjectionMatrix();
    // a tall picture shows more floor than wall: a person stands on it
    const half = tan * far;
    const spare = Math.max(0, half - (frame.head - frame.foot) / 2);
    const centre = (frame.head + frame.foot) / 2 + spare * frame.lift;
    lens.projectionMatrix.elements[9] = (centre - now.height) / (far * tan);
    lens.projectionMatrixInverse.copy(lens.projectionMatrix).invert();
  }
}
