// The picture: one quick frame while anything moves, then, when all is still, many frames
// summed with the lights and the eye moved a little between them. That gives soft edges to
// the shadows, shade in the corners and clean lines, with no texture baked beforehand.
import * as THREE from 'three';
import scene, { f } from './scene.js';
import { STANCES } from './stances.js';

const CASTS = 1; // the layer of whatever throws a shadow
const SEE_THROUGH = 2; // the layer of glass
const LOBE = [0, 0.6, 0.8];
const REACH = { left: -2.8, right: 2.8, top: 2.7, bottom: -2.4, near: 0.5, far: 14 };
const OFF = 6; // metres from which a light is looked from
const MARGIN = 0.6; // metres beside what is shown that throw shadows too
const STILL = { quick: 36, slow: 14 }; // frames in the sum
const CLOSE = 0.62; // how much of a wide light few frames can fill without its shadows coming apart
const SLOW = 60; // ms for one still frame, above which the machine is spared

const FLAT = /* glsl */ `
varying vec2 v;
void main() { v = uv; gl_Position = vec4(position.xy, 0., 1.); }
`;
const ADD = /* glsl */ `
uniform sampler2D one;
uniform float share;
varying vec2 v;
void main() { gl_FragColor = vec4(min(texture2D(one, v).rgb, vec3(12.)), share); }
`;
// Bright tones are pressed together above `knee` with their hue kept, so that a paint's own
// value comes through; the corners darken a little; half a level of dither stops banding.
const SHOW = /* glsl */ `
uniform sampler2D quick, still;
uniform float settled, exposure;
uniform vec3 balance;
varying vec2 v;
vec3 pressed(vec3 c) {
  const float knee = ${f(scene.tone.knee)};
  float top = max(c.r, max(c.g, c.b));
  if (top <= knee) return c;
  float room = 1. - knee, to = 1. - room * room / (top + room - knee);
  c *= to / top;
  return mix(vec3(to), c, 1. / (1. + ${f(scene.tone.pale)} * (top - to)));
}
float dither(vec2 p) { return fract(sin(dot(p, vec2(12.9, 78.2))) * 43758.5) - .5; }
void main() {
  vec3 c = pressed(mix(texture2D(quick, v).rgb, texture2D(still, v).rgb, settled) * exposure * balance);
  vec2 off = v - .5;
  c *= 1. - ${f(scene.tone.corners)} * dot(off, off);
  c = mix(c * 12.92, 1.055 * pow(max(c, vec3(.0031308)), vec3(1. / 2.4)) - .055, step(.0031308, c));
  gl_FragColor = vec4(c + dither(gl_FragCoord.xy) / 255., 1.);
}
`;

// A sequence that fills a square evenly however many of its points are taken (the
// generalised golden ratio in two dimensions).
const evenly = (i) => [(0.5 + i * 0.7548776662466927) % 1, (0.5 + i * 0.5698402909980532) % 1];

function overlay(fragmentShader, uniforms, options = {}) {
  const material = new THREE.ShaderMaterial({
    uniforms, vertexShader: FLAT, fragmentShader, depthTest: false, depthWrite: false, ...options,
  });
  const mesh = new THREE.Mesh(new THREE.PlaneGeometry(2, 2), material);
  mesh.frustumCulled = false;
  const scene = new THREE.Scene();
  scene.add(mesh);
  return { scene, uniforms };
}

// Whatever stands in a light's way, but for what is cut off the doors.
const DARK_VERTEX = /* glsl */ `
${STANCES}
varying float across;
void main() {
  vec4 p = modelMatrix * stood() * vec4(position, 1.);
  across = p.x;
  gl_Position = projectionMatrix * viewMatrix * p;
}
`;
const DARK_FRAGMENT = /* glsl */ `
uniform float cutAt;
varying float across;
void main() { if (across > cutAt) discard; gl_FragColor = vec4(0.); }
`;

class Shadow {
  constructor(size) {
    this.target = new THREE.WebGLRenderTarget(size, size, {
      depthTexture: new THREE.DepthTexture(size, size),
    });
    this.target.depthTexture.compareFunction = THREE.LessEqualCompare;
    this.target.depthTexture.magFilter = THREE.LinearFilter;
    this.target.depthTexture.minFilter = THREE.LinearFilter;
    this.eye = new THREE.OrthographicCamera(REACH.left, REACH.right, REACH.top, REACH.bottom,
      REACH.near, REACH.far);
    this.eye.layers.set(CASTS);
    this.matrix = new THREE.Matrix4();
    this.times = 1;
  }

  /** Reach so many times as far as round a pair of doors. */
  spread(times) {
    this.times = times;
    for (const [side, far] of Object.entries(REACH)) this.eye[side] = side === 'near' ? far : far * times;
    this.eye.updateProjectionMatrix();
  }

  /** Stand the light `from` a direction, looking at `target`. */
  stand(from, target) {
    this.eye.position.copy(target).addScaledVector(from, OFF * this.times);
    this.eye.lookAt(target);
    this.eye.updateMatrixWorld();
    this.matrix.multiplyMatrices(this.eye.projectionMatrix, this.eye.matrixWorldInverse);
  }
}

export class Picture {
  constructor(canvas, shared) {
    const gl = canvas.getContext('webgl2', { antialias: false, powerPreference: 'high-performance' });
    if (!gl) throw new Error('this screen has no WebGL 2');
    if (!gl.getExtension('EXT_color_buffer_float') && !gl.getExtension('EXT_color_buffer_half_float')) {
      throw new Error('this screen has no half-float pictures');
    }
    const renderer = new THREE.WebGLRenderer({ canvas, context: gl });
    renderer.toneMapping = THREE.NoToneMapping;
    renderer.outputColorSpace = THREE.LinearSRGBColorSpace; // SHOW does the last step itself
    renderer.info.autoReset = false;
    renderer.autoClear = false;
    Object.assign(this, { renderer, gl, shared });
    this.scene = new THREE.Scene();
    this.lens = new THREE.PerspectiveCamera(30, 1, 0.05, 40);
    this.target = new THREE.Vector3();
    this.shadows = { key: new Shadow(2048), sky: new Shadow(1024) };
    shared.keyDepth.value = this.shadows.key.target.depthTexture;
    shared.skyDepth.value = this.shadows.sky.target.depthTexture;
    shared.keyMatrix.value = this.shadows.key.matrix;
    shared.skyMatrix.value = this.shadows.sky.matrix;
    this.lens.layers.enable(SEE_THROUGH);
    this.dark = new THREE.ShaderMaterial({
      uniforms: { cutAt: { value: 1e9 }, stances: shared.stances }, vertexShader: DARK_VERTEX, fragmentShader: DARK_FRAGMENT, colorWrite: false,
    });
    this.dark.defaultAttributeValues = { stance: [0] }; // of what moves with nothing
    this.flat = new THREE.OrthographicCamera(-1, 1, 1, -1, 0, 1);
    this.add = overlay(ADD, { one: { value: null }, share: { value: 1 } }, { transparent: true });
    this.show = overlay(SHOW, {
      quick: { value: null }, still: { value: null }, settled: { value: 0 }, exposure: { value: 1 },
      balance: { value: new THREE.Vector3(1, 1, 1) },
    });
    this.setHour('day');
    this.stills = 0; // frames in the sum so far
    this.wanted = STILL.quick;
    this.moved = true;
    this.spare = true; // spare the machine until it has shown what it can
    this.fence = null;
    this.drawn = 0; // pictures that have reached the screen
    this.figures = { calls: 0, triangles: 0, ms: 0 };
  }

  /** Let light reach all of what is so wide, metres from its middle. */
  spread(half) {
    for (const shadow of Object.values(this.shadows)) shadow.spread(Math.max(1, (half + MARGIN) / REACH.right));
  }

  /** Let an object throw a shadow, all of it or what is left when the doors are cut. */
  casts(object, { cut = false } = {}) {
    object.layers.enable(CASTS);
    object.onBeforeRender = (renderer, scene, lens, geometry, material) => {
      if (material !== this.dark) return;
      const at = cut ? this.shared.cutAt.value : 1e9;
      if (material.uniforms.cutAt.value === at) return;
      material.uniforms.cutAt.value = at;
      material.uniformsNeedUpdate = true;
    };
  }

  /** Let an object be seen through. */
  pane(object) {
    object.layers.set(SEE_THROUGH);
  }

  /** By day or by lamplight. */
  setHour(hour) {
    const light = scene.hours[hour];
    const { shared, show } = this;
    this.key = { towards: light.key, disc: light.disc };
    shared.evening.value = hour === 'evening' ? 1 : 0;
    shared.keyColour.value.set(light.key_colour).multiplyScalar(light.key_power);
    shared.skyColour.value.set(light.sky_colour).multiplyScalar(light.sky_power);
    show.uniforms.exposure.value = light.exposure;
    show.uniforms.balance.value.set(...light.balance);
    this.touch();
  }

  /** Whether what lies behind glass is drawn again, to be seen blurred or broken up. */
  veil(on) {
    this.veiled = on;
    this.touch();
  }

  resize(width, height, ratio) {
    const { renderer } = this;
    renderer.setPixelRatio(ratio);
    renderer.setSize(width, height, false);
    for (const target of [this.quick, this.half, this.one, this.still, this.behind]) target?.dispose();
    const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)];
    const make = (a, b, samples, depthBuffer) => new THREE.WebGLRenderTarget(a, b, {
      type: THREE.HalfFloatType, samples, depthBuffer,
    });
    this.quick = make(w, h, 4, true);
    this.half = make(Math.ceil(w / 2), Math.ceil(h / 2), 4, true);
    this.one = make(w, h, 0, true);
    this.still = make(w, h, 0, false);
    this.behind = new THREE.WebGLRenderTarget(Math.ceil(w / 2), Math.ceil(h / 2), {
      type: THREE.HalfFloatType, generateMipmaps: true, minFilter: THREE.LinearMipmapLinearFilter,
    });
    this.shared.behind.value = this.behind.texture;
    this.size = [w, h];
    this.touch();
  }

  /** Something moved: start again. */
  touch() {
    this.moved = true;
  }

  get settled() {
    return !this.moved && this.stills >= this.wanted && !this.fence;
  }

  /** Draw what is due. Never runs ahead of the machine: one picture is out at a time. */
  step(now) {
    if (!this.#arrived(now)) return;
    if (this.moved) {
      this.moved = false;
      this.stills = 0;
      this.#draw(this.spare ? this.half : this.quick, null);
    } else if (this.stills < this.wanted) {
      this.#draw(this.one, this.stills);
      this.stills += 1;
    } else return;
    this.#present();
    this.fence = { sync: this.gl.fenceSync(this.gl.SYNC_GPU_COMMANDS_COMPLETE, 0), began: now, still: this.stills };
    this.gl.flush();
  }

  #arrived(now) {
    if (!this.fence) return true;
    const { gl, fence } = this;
    if (gl.getSyncParameter(fence.sync, gl.SYNC_STATUS) !== gl.SIGNALED) return false;
    gl.deleteSync(fence.sync);
    this.fence = null;
    this.drawn += 1;
    this.figures.ms = now - fence.began;
    if (fence.still > 2) {
      this.spare = this.figures.ms > SLOW;
      this.wanted = this.spare ? STILL.slow : STILL.quick;
    }
    return true;
  }

  #light(i) {
    const key = new THREE.Vector3(...this.key.towards);
    const sky = new THREE.Vector3(...LOBE);
    if (i === null) sky.set(0.1, 0.75, 0.65);
    else {
      const [a, b] = evenly(i);
      const wide = Math.sqrt(a) * this.key.disc * (this.wanted === STILL.slow ? CLOSE : 1);
      const turn = b * 2 * Math.PI;
      key.x += wide * Math.cos(turn) * 0.8;
      key.y += wide * Math.sin(turn);
      key.z += wide * Math.cos(turn) * 0.6;
      const [c, d] = evenly(i + 0.37);
      const side = new THREE.Vector3(1, 0, 0);
      const up = new THREE.Vector3().crossVectors(sky, side);
      const out = Math.sqrt(c);
      sky.multiplyScalar(Math.sqrt(1 - c))
        .addScaledVector(side, out * Math.cos(2 * Math.PI * d))
        .addScaledVector(up, out * Math.sin(2 * Math.PI * d));
      sky.y = Math.max(sky.y, 0.06);
      sky.z = Math.max(sky.z, 0.03);
    }
    for (const [name, from] of [['key', key.normalize()], ['sky', sky.normalize()]]) {
      this.shadows[name].stand(from, this.target);
      this.shared[`${name}From`].value.copy(from);
    }
    this.shared.soft.value = i === null ? 1.6 : 0;
  }

  #draw(target, i) {
    const { renderer, scene, lens } = this;
    renderer.info.reset();
    this.#light(i);
    scene.overrideMaterial = this.dark;
    for (const shadow of Object.values(this.shadows)) {
      renderer.setRenderTarget(shadow.target);
      renderer.clear();
      renderer.render(scene, shadow.eye);
    }
    scene.overrideMaterial = null;
    const sway = i === null ? [0, 0] : evenly(i).map((t) => t - 0.5);
    const projection = lens.projectionMatrix.elements;
    const straight = [projection[8], projection[9]];
    projection[8] += (sway[0] * 2) / this.size[0];
    projection[9] += (sway[1] * 2) / this.size[1];
    if (this.veiled) {
      lens.layers.disable(SEE_THROUGH);
      renderer.setRenderTarget(this.behind);
      renderer.clear();
      renderer.render(scene, lens);
      lens.layers.enable(SEE_THROUGH);
    }
    this.shared.screen.value.set(target.width, target.height);
    this.shared.phase.value = i ?? 0;
    renderer.setRenderTarget(target);
    renderer.clear();
    renderer.render(scene, lens);
    [projection[8], projection[9]] = straight;
    this.figures.calls = renderer.info.render.calls;
    this.figures.triangles = renderer.info.render.triangles;
    if (i === null) {
      this.show.uniforms.quick.value = target.texture;
      return;
    }
    this.add.uniforms.one.value = target.texture;
    this.add.uniforms.share.value = 1 / (i + 1);
    renderer.setRenderTarget(this.still);
    renderer.render(this.add.scene, this.flat);
  }

  #present() {
    const { renderer, show } = this;
    const t = Math.min(1, this.stills / 8);
    show.uniforms.settled.value = t * t * (3 - 2 * t);
    show.uniforms.still.value = this.still.texture;
    renderer.setRenderTarget(null);
    renderer.render(show.scene, this.flat);
  }
}
