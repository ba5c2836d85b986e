// Grain of a piece of timber, worked out from where a point lies in it, in mm, with x along
// the piece: a log is imagined round every piece, so that faces show cathedrals, edges show
// straight lines and ends show rings, all of one tree. `parametric/writers/grain.py` does the same.
import scene, { f, vec } from './scene.js';

export const NOISE = /* glsl */ `
float hash(vec3 p) { p = fract(p * .1031); p += dot(p, p.zyx + 31.32); return fract((p.x + p.y) * p.z); }
float cloud(vec3 p) {
  vec3 i = floor(p), f = fract(p);
  f = f * f * (3. - 2. * f);
  return mix(
    mix(mix(hash(i), hash(i + vec3(1, 0, 0)), f.x), mix(hash(i + vec3(0, 1, 0)), hash(i + vec3(1, 1, 0)), f.x), f.y),
    mix(mix(hash(i + vec3(0, 0, 1)), hash(i + vec3(1, 0, 1)), f.x), mix(hash(i + vec3(0, 1, 1)), hash(i + vec3(1, 1, 1)), f.x), f.y),
    f.z);
}
`;

const g = scene.grain;

export const GRAIN = /* glsl */ `
// Returns how dark (0 early wood, 1 late), pores, flecks. 'seed' is the piece's own; a piece
// glued up from boards 'wide' has another tree in every board.
vec3 grain(vec3 p, float seed, float wide, float ring, float flecked) {
  float line = 0.;
  if (wide > 0.) {
    float board = floor(p.y / wide);
    float from = p.y - board * wide;
    seed = fract(seed + ${f(g.board_step)} * (board + 1.));
    // boards alternate, heart up and heart down
    p = vec3(p.x, mod(board, 2.) > .5 ? wide - from : from, mod(board, 2.) > .5 ? ${f(g.board_turned)} - p.z : p.z);
    float px = max(fwidth(p.y), .15);
    line = ${f(g.line)} * (1. - smoothstep(0., px * 1.2, min(from, wide - from))) * min(1., .5 / px);
  }
  float a = fract(seed * 7.13), b = fract(seed * 3.71), c = fract(seed * 13.7);
  float along = p.x + a * ${f(g.start)};
  float bend = ${g.bends.map(([far, slow, across], i) => `(cloud(vec3(along * ${f(slow)}, p.y * ${f(across)}, ${'bc'[i]} * 30.)) - .5) * ${f(far)}`).join(' + ')};
  vec2 heart = vec2(mix(${g.heart_across.map(f)}, b), -mix(${g.heart_below.map(f)}, c));
  float out_ = length(p.yz - heart + bend * ${vec(g.bent)}) + along * mix(${f(-g.taper)}, ${f(g.taper)}, a);
  float year = out_ / (ring * (${f(g.ring_least)} + ${f(g.ring_spread)} * cloud(vec3(out_ * ${f(g.ring_noise)}, seed * 9., 0.))));
  float part = fract(year), px = fwidth(year);
  float late = smoothstep(${g.late.map(f)}, part) * (1. - smoothstep(${f(g.late_end)}, 1., part));
  late = mix(late, ${f(g.late_mean)}, smoothstep(${g.late_fades.map(f)}, px));
  float good = cloud(vec3(floor(year) * 1.7, seed * 5., 2.));
  float fine = (fwidth(p.y) + fwidth(p.z)) * ${f(g.fibre[1])};
  float fibre = mix(cloud(vec3(along * ${f(g.fibre[0])}, p.yz * ${f(g.fibre[1])})), .5, smoothstep(${g.fibre_fades.map(f)}, fine));
  float broad = cloud(vec3(along * ${f(g.broad[0])}, p.y * ${f(g.broad[1])}, seed * 11.));
  float pore = smoothstep(${g.pore_from.map(f)}, cloud(vec3(along * ${f(g.pore[0])} + seed * 70., p.yz * ${f(g.pore[1])}))) * (1. - smoothstep(${g.pore_early.map(f)}, part));
  pore *= 1. - smoothstep(${g.pore_fades.map(f)}, fine);
  float fleck = flecked * smoothstep(${g.fleck_from.map(f)}, cloud(vec3(along * ${f(g.fleck[0])}, p.y * ${f(g.fleck[1])} + seed * 50., p.z * ${f(g.fleck[2])})));
  float tone = late * (${f(g.year[0])} + ${f(g.year[1])} * good) + (fibre - .5) * ${f(g.fibre_depth)} + (broad - .5) * ${f(g.broad_depth)} + ${f(g.ground)} + line;
  return vec3(clamp(tone, 0., 1.), pore, fleck);
}
// The colour of clear wood, and what its grain adds to the roughness.
vec4 clearWood(vec3 p, float seed, float wide, vec3 early, vec3 late, vec4 rings) {
  vec3 g = grain(p, seed, wide, rings.x, rings.w);
  vec3 base = mix(early, late, clamp(g.x * rings.y * ${f(g.tone)} + (fract(seed * 17.31) - .5) * ${f(g.board_tone)}, 0., 1.));
  base *= 1. - g.y * rings.z * ${f(g.pore_dark)};
  base = mix(base, early * ${f(g.fleck_light[0])}, g.z * ${f(g.fleck_light[1])});
  return vec4(base, g.x * ${f(g.rough[0])} + g.y * ${f(g.rough[1])});
}
`;
