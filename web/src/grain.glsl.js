// Grain of a piece of timber, worked out from where a point lies in it, in mm, with x along
// the piece: a log is imagined round every piece, so that faces show cathedrals, edges show
// straight lines and ends show rings, all of one tree.

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

export const GRAIN = /* glsl */ `
// Returns how dark (0 early wood, 1 late), pores, flecks. 'seed' is the piece's own; a piece
// glued up from boards 'wide' has another tree in every board.
vec3 grain(vec3 p, float seed, float wide, float ring, float flecked) {
  float line = 0.;
  if (wide > 0.) {
    float board = floor(p.y / wide);
    float from = p.y - board * wide;
    seed = fract(seed + .3819 * (board + 1.));
    // boards alternate, heart up and heart down
    p = vec3(p.x, mod(board, 2.) > .5 ? wide - from : from, mod(board, 2.) > .5 ? 40. - p.z : p.z);
    float px = max(fwidth(p.y), .15);
    line = .35 * (1. - smoothstep(0., px * 1.2, min(from, wide - from))) * min(1., .5 / px);
  }
  float a = fract(seed * 7.13), b = fract(seed * 3.71), c = fract(seed * 13.7);
  float along = p.x + a * 4000.;
  float bend = (cloud(vec3(along * .0016, p.y * .006, b * 30.)) - .5) * 26.
    + (cloud(vec3(along * .006, p.y * .02, c * 30.)) - .5) * 5.;
  vec2 heart = vec2(mix(-20., 130., b), -mix(28., 120., c));
  float out_ = length(p.yz - heart + bend * vec2(.7, .5)) + along * mix(-.012, .012, a);
  float year = out_ / (ring * (.75 + .5 * cloud(vec3(out_ * .05, seed * 9., 0.))));
  float part = fract(year), px = fwidth(year);
  float late = smoothstep(.25, .93, part) * (1. - smoothstep(.94, 1., part));
  late = mix(late, .42, smoothstep(.35, 1.1, px));
  float good = cloud(vec3(floor(year) * 1.7, seed * 5., 2.));
  float fine = fwidth(p.y) * 1.7 + fwidth(p.z) * 1.7;
  float fibre = mix(cloud(vec3(along * .018, p.yz * 1.7)), .5, smoothstep(.5, 1.6, fine));
  float broad = cloud(vec3(along * .0011, p.y * .012, seed * 11.));
  float pore = smoothstep(.66, .8, cloud(vec3(along * .05 + seed * 70., p.yz * 2.6))) * (1. - smoothstep(.15, .45, part));
  pore *= 1. - smoothstep(.6, 1.8, fine * 1.5);
  float fleck = flecked * smoothstep(.74, .86, cloud(vec3(along * .02, p.y * .16 + seed * 50., p.z * .5)));
  float tone = late * (.44 + .40 * good) + (fibre - .5) * .34 + (broad - .5) * .5 + .12 + line;
  return vec3(clamp(tone, 0., 1.), pore, fleck);
}
`;
