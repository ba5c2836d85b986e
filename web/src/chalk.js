// Chalk lines over the picture: a size is a line between two points of the world, with what is
// written on it on a plate of its own. The only blue on the picture.
const SVG = 'http://www.w3.org/2000/svg';
const SHORT = 30; // px, under which a line cannot carry its words
const TICK = 7;
const EDGE = 6; // px that plates keep from the picture's edge
const GAP = 4;
const CLEAR = 46; // px at least from the middle of a short line to its words

function drawn(parent, name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  parent.append(element);
  return element;
}

export class ChalkLines {
  /** `project` takes a point of the world, mm, to the picture's pixels; `carry` one of a shut leaf to where it is. */
  constructor(svg, { project, carry }) {
    Object.assign(this, { svg, project, carry });
    this.lines = [];
    this.crosses = [];
  }

  show(lines, crosses = []) {
    Object.assign(this, { lines, crosses });
    this.draw();
  }

  draw() {
    const { svg } = this;
    svg.replaceChildren();
    this.plates = [];
    for (const line of this.lines) this.#line(line);
    for (const { at, leaf } of this.crosses) {
      const p = this.#at(at, leaf);
      if (p) this.#stroke(`M${p[0] - 11} ${p[1]}h22M${p[0]} ${p[1] - 11}v22`);
    }
    // plates last, so that no line runs over a number
    for (const plate of this.plates) this.#plate(plate);
  }

  #at(point, leaf) {
    return this.project(leaf ? this.carry(leaf, point) : point);
  }

  #line({ start, end, text, leaf, aside }) {
    const [a, b] = [this.#at(start, leaf), this.#at(end, leaf)];
    if (!a || !b) return;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const far = Math.hypot(dx, dy);
    const { width, height } = this.svg.getBoundingClientRect();
    const out = ([x, y]) => x < 0 || y < 0 || x > width || y > height;
    // a short line that is not in the picture keeps its words to itself
    if (far < SHORT && out(a) && out(b)) return;
    const [nx, ny] = far ? [(-dy / far) * TICK, (dx / far) * TICK] : [TICK, 0];
    const tick = ([x, y]) => `M${x - nx} ${y - ny}L${x + nx} ${y + ny}`;
    let path = `M${a}L${b}${tick(a)}${tick(b)}`;
    let middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (far < SHORT && text) {
      const [x, y, z] = start.map((v, i) => (v + end[i]) / 2);
      const off = this.#at([x + aside[0], y, z + aside[1]], leaf);
      if (off) {
        // seen from afar the words would stand on the line itself
        const [ox, oy] = [off[0] - middle[0], off[1] - middle[1]];
        const reach = Math.hypot(ox, oy);
        if (reach && reach < CLEAR) [off[0], off[1]] = [middle[0] + (ox / reach) * CLEAR, middle[1] + (oy / reach) * CLEAR];
        path += `M${middle}L${off}`;
        middle = off;
      }
    }
    this.#stroke(path);
    if (text) this.plates.push({ middle, text });
  }

  #stroke(d) {
    drawn(this.svg, 'path', { d, class: 'under' });
    drawn(this.svg, 'path', { d, class: 'line' });
  }

  #plate({ middle, text }) {
    const group = drawn(this.svg, 'g', {});
    const rect = drawn(group, 'rect', {});
    const word = drawn(group, 'text', { 'text-anchor': 'middle', dy: '.34em' });
    for (const piece of text.split(/(\d+\u2044\d+)/)) {
      const span = drawn(word, 'tspan', piece.includes('\u2044') ? { class: 'fraction' } : {});
      span.textContent = piece;
    }
    const { width, height } = word.getBBox();
    const [w, h] = [width + 16, height + 6];
    const box = this.svg.getBoundingClientRect();
    const x = Math.min(Math.max(middle[0], w / 2 + EDGE), box.width - w / 2 - EDGE);
    let y = Math.min(Math.max(middle[1], h / 2 + EDGE), box.height - h / 2 - EDGE);
    const clear = (at) => !this.set?.some((o) => Math.abs(o.x - x) < (o.w + w) / 2 + GAP && Math.abs(o.y - at) < (o.h + h) / 2 + GAP);
    if (this.plates[0].text === text && this.plates[0].middle === middle) this.set = [];
    for (const step of [0, -1, 1, -2, 2]) {
      if (clear(y + step * (h + GAP))) {
        y += step * (h + GAP);
        break;
      }
    }
    this.set.push({ x, y, w, h });
    rect.setAttribute('x', -w / 2);
    rect.setAttribute('y', -h / 2);
    rect.setAttribute('width', w);
    rect.setAttribute('height', h);
    group.setAttribute('transform', `translate(${x},${y})`);
  }
}
