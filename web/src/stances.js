// Where every group of the model stands, as a shader reads it: leaves and cases that are joined
// into one mesh a look are still moved each on its own, and drawn at once.
import * as THREE from 'three';

const ROW = 16; // numbers of a matrix
const FIRST = 64; // groups that there is room for at first

export const STANCES = /* glsl */ `
uniform highp sampler2D stances;
attribute float stance;
mat4 stood() {
  int i = int(stance + .5);
  return mat4(texelFetch(stances, ivec2(0, i), 0), texelFetch(stances, ivec2(1, i), 0),
    texelFetch(stances, ivec2(2, i), 0), texelFetch(stances, ivec2(3, i), 0));
}
`;

export class Stances {
  /** `held` is the uniform that all surfaces share. What has no stance of its own has the first, and stays as it is. */
  constructor(held) {
    this.held = held;
    this.count = 0;
    this.#room(FIRST);
    this.set(this.take(), new THREE.Matrix4());
  }

  /** A stance for one more group. */
  take() {
    if ((this.count + 1) * ROW > this.held.value.image.data.length) this.#room(this.count * 2);
    this.count += 1;
    return this.count - 1;
  }

  set(stance, matrix) {
    const { value: texture } = this.held;
    matrix.toArray(texture.image.data, stance * ROW);
    texture.needsUpdate = true;
  }

  #room(rows) {
    const before = this.held.value;
    const data = new Float32Array(rows * ROW);
    if (before) data.set(before.image.data);
    before?.dispose();
    this.held.value = new THREE.DataTexture(data, 4, rows, THREE.RGBAFormat, THREE.FloatType);
  }
}
