// The maker's drawing where there is no picture in the round: where a point of the job is on it,
// and a closer look at one place.
const CLOSER = 6; // times, when a size is too small to be seen from afar

export class Drawing {
  /** `moved` is called when what is where has changed. */
  constructor(holder, { moved }) {
    Object.assign(this, { holder, moved });
    this.svg = holder.querySelector('svg');
    const { zero, mm } = this.svg.dataset;
    this.known = Boolean(zero && mm);
    if (!this.known) return;
    this.zero = zero.split(' ').map(Number);
    this.mm = Number(mm);
    const { x, y, width, height } = this.svg.viewBox.baseVal;
    this.whole = [x, y, width, height];
  }

  /** The drawing shows the doors shut and from the front: a point's place on it, px. */
  project([x, , z]) {
    const at = this.#at(x, z);
    const { a, d, e, f } = this.svg.getScreenCTM();
    const box = this.holder.getBoundingClientRect();
    return [a * at[0] + e - box.left, d * at[1] + f - box.top];
  }

  /** Look closely at a point of the job, mm, or at all of it again. */
  look(point) {
    const [x, y, wide, high] = this.whole;
    const at = point && this.#at(point[0], point[2]);
    const [w, h] = [wide / CLOSER, high / CLOSER];
    this.svg.setAttribute('viewBox', (at ? [at[0] - w / 2, at[1] - h / 2, w, h] : [x, y, wide, high]).join(' '));
    this.moved();
  }

  #at(x, z) {
    return [this.zero[0] + x / this.mm, this.zero[1] - z / this.mm];
  }
}
