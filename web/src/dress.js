// What things are made of. The model says only the look of a material (timber, glass,
// metal, tape, board); here each look gets its surface, and the client's choice its colour.
import * as THREE from 'three';
import scene from './scene.js';
import {
  EDGE_FRAGMENT, EDGE_VERTEX, GHOST_FRAGMENT, GLASS_FRAGMENT, SURFACE_FRAGMENT, SURFACE_VERTEX,
} from './light.glsl.js';

const value = (v) => ({ value: v });

/** The uniforms that every surface shares: the light and where the room is. */
export function makeShared() {
  return {
    middle: value(new THREE.Vector3()),
    wall: value(0.13),
    evening: value(0),
    deep: value(0),
    standing: value(new THREE.Vector3(9, 1, 0)),
    keyFrom: value(new THREE.Vector3(0, 0, 1)),
    keyColour: value(new THREE.Color()),
    keyMatrix: value(new THREE.Matrix4()),
    keyDepth: value(null),
    skyFrom: value(new THREE.Vector3(0, 1, 0)),
    skyColour: value(new THREE.Color()),
    skyMatrix: value(new THREE.Matrix4()),
    skyDepth: value(null),
    soft: value(1.5),
    cutAt: value(1e9),
    behind: value(null),
    screen: value(new THREE.Vector2(1, 1)),
    phase: value(0),
    stances: value(null),
  };
}

/**
 * An opaque surface. `rough` 0 mirrors, 1 is chalk; `mottle` is the cloudiness of plaster;
 * `glow` is light of its own by day, less than 0 by lamplight. `defines` says which more it can do.
 */
export function surface(shared, colour, { rough = 0.9, metal = 0, mottle = 0, glow = 0, boards = null, defines = {}, ...more } = {}) {
  const uniforms = {
    ...shared,
    colour: value(new THREE.Color(colour)),
    rough: value(rough),
    metal: value(metal),
    mottle: value(mottle),
    glow: value(glow),
    ...more,
  };
  if (boards) uniforms.boards = value(boards);
  return new THREE.ShaderMaterial({
    uniforms,
    defines: boards ? { BOARDS: '', ...defines } : defines,
    vertexShader: SURFACE_VERTEX,
    fragmentShader: SURFACE_FRAGMENT,
  });
}

/** What a thing of the room is made of, as the room's table has it. */
export const made = (shared, { colour, ...how }, more = {}) => surface(shared, colour, { ...how, ...more });

const ON_LEAVES = { CLIPPED: '', PIECES: '', STANCES: '' };

/** Timber, under paint or varnish: `wear` says which. */
export function timber(shared, { clipped = true } = {}) {
  return surface(shared, '#888888', {
    defines: { ...(clipped ? ON_LEAVES : { PIECES: '' }), TIMBER: '' },
    early: value(new THREE.Color()),
    late: value(new THREE.Color()),
    rings: value(new THREE.Vector4(3, 0.5, 0.5, 0)),
    clear: value(0),
  });
}

/** Put a paint or a clear timber on. */
export function wear(material, wood) {
  const u = material.uniforms;
  u.rough.value = wood.rough;
  u.clear.value = wood.early ? 1 : 0;
  if (wood.early) {
    u.early.value.set(wood.early);
    u.late.value.set(wood.late);
    u.rings.value.set(wood.ring, wood.contrast, wood.pore, wood.fleck);
  } else u.colour.value.set(wood.colour);
}

// laid over what is there already
const OVER = { transparent: true, blending: THREE.CustomBlending, blendSrc: THREE.OneFactor, blendDst: THREE.OneMinusSrcAlphaFactor };
const GHOST = { colour: '#cdd6d2', body: 0.13, day: ['#18211f', 0.28], evening: ['#e6ddcc', 0.15] };

function glass(shared, kind) {
  const veiled = kind.blur !== undefined;
  return new THREE.ShaderMaterial({
    uniforms: {
      ...shared,
      colour: value(new THREE.Color(kind.colour)),
      body_: value(kind.body),
      ...(veiled ? { blur: value(kind.blur), reed: value(kind.reed) } : {}),
    },
    defines: { PIECES: '', STANCES: '', ...(veiled ? { VEILED: '' } : {}) },
    vertexShader: SURFACE_VERTEX,
    fragmentShader: GLASS_FRAGMENT,
    depthWrite: veiled,
    ...OVER,
  });
}

/** What is ghosted, and its edges. */
function ghost(shared) {
  return new THREE.ShaderMaterial({
    uniforms: { ...shared, colour: value(new THREE.Color(GHOST.colour)), body_: value(GHOST.body) },
    defines: { STANCES: '' },
    vertexShader: SURFACE_VERTEX,
    fragmentShader: GHOST_FRAGMENT,
    depthWrite: false,
    ...OVER,
  });
}

function edges(shared) {
  const line = ([colour, share]) => {
    const { r, g, b } = new THREE.Color(colour);
    return value(new THREE.Vector4(r, g, b, share));
  };
  return new THREE.ShaderMaterial({
    uniforms: { ...shared, day: line(GHOST.day), dusk: line(GHOST.evening) },
    vertexShader: EDGE_VERTEX,
    fragmentShader: EDGE_FRAGMENT,
    depthWrite: false,
    ...OVER,
  });
}

/** The wardrobe for one job: a material for every look, in what was chosen. */
export class Wardrobe {
  constructor(shared) {
    this.shared = shared;
    this.timber = timber(shared);
    this.looks = {
      timber: this.timber,
      board: this.timber,
      carcass: made(shared, scene.room.carcass, { defines: ON_LEAVES }),
      glass: glass(shared, { colour: '#8fb0a4', body: 0.03 }),
      pull: surface(shared, '#b98f52', { rough: 0.34, metal: 1, defines: { ...ON_LEAVES, HOLLOW: '' } }),
      metal: made(shared, scene.room.track, { defines: ON_LEAVES }),
      tape: made(shared, scene.room.tape, { defines: ON_LEAVES }),
    };
    this.ghost = ghost(shared);
    this.edges = edges(shared);
    this.panes = []; // meshes of glass
    this.glasses = new Map();
  }

  /** Dress all in the choice; true when glass needs what is behind it drawn again. */
  wear({ wood, glass: kind, metal }) {
    wear(this.timber, wood);
    if (metal) {
      const { colour, metal: bare, rough } = this.looks.pull.uniforms;
      colour.value.set(metal.colour);
      bare.value = metal.metal;
      rough.value = metal.rough;
    }
    if (!kind) return false;
    if (!this.glasses.has(kind.key)) this.glasses.set(kind.key, glass(this.shared, kind));
    for (const pane of this.panes) pane.material = this.glasses.get(kind.key);
    return kind.blur !== undefined;
  }
}

/**
 * Which of the wardrobe a mesh wears. Pulls are bright, tracks and hangers are black; boards of a
 * case, and of a drawer's box, are not painted with its fronts.
 */
export function lookOf(mesh, named, boxed) {
  const look = mesh.material.userData.look;
  if (look === 'metal' && /\bpull\b/.test(named)) return 'pull';
  return boxed && (look === 'board' || look === 'timber') ? 'carcass' : look;
}
