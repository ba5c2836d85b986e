// The maker's drawing where there is no picture in the round: where a point of the job is on it,
// and a closer look at one place. Several doors have a drawing each.
const CLOSER = 6; // times, when a size is too small to be seen from afar

export class Drawing {
  /** `moved` is called when what is where has changed; `doorways` are those that are drawn. */
  constructor(holder, doorways, { moved }) {
    Object.assign(this, { holder, moved });
    this.doors = [...holder.querySelectorAll('svg')].map((svg, i) => {
      const { zero, mm } = svg.dataset;
      const { at, way } = doorways[i];
      const { x, y, width, height } = svg.viewBox.baseVal;
      return { svg, at, way, zero: zero?.split(' ').map(Number), mm: Number(mm), whole: [x, y, width, height] };
    });
    this.known = this.doors.every(({ zero, mm }) => zero && mm);
  }

  /** The drawing shows the doors shut and from the front: a point's place on it, px. */
  project([x, , z]) {
    const door = this.#nearest(x);
    const at = this.#at(door, x, z);
    const { a, d, e, f } = door.svg.getScreenCTM();
    const box = this.holder.getBoundingClientRect();
    return [a * at[0] + e - box.left, d * at[1] + f - box.top];
  }

  /** Look closely at a point of the job, mm, or at all of it again. */
  look(point) {
    const near = point && this.#nearest(point[0]);
    for (const door of this.doors) {
      const [x, y, wide, high] = door.whole;
      const at = door === near && this.#at(door, point[0], point[2]);
      const [w, h] = [wide / CLOSER, high / CLOSER];
      door.svg.setAttribute('viewBox', (at ? [at[0] - w / 2, at[1] - h / 2, w, h] : [x, y, wide, high]).join(' '));
    }
    this.moved();
  }

  /** The door whose way through has its middle nearest to a place across. */
  #nearest(x) {
    const off = ({ way: [a, b] }) => Math.abs((a + b) / 2 - x);
    return this.doors.reduce((best, door) => (off(door) < off(best) ? door : best));
  }

  #at({ at, zero, mm }, x, z) {
    return [zero[0] + (x - at) / mm, zero[1] - z / mm];
  }
}
