// What things are made of. The model says only the look of a material (timber, glass,
// metal, tape, board); here each look gets its surface.
import * as THREE from 'three';
import { GLASS_FRAGMENT, SURFACE_FRAGMENT, SURFACE_VERTEX } from './light.glsl.js';

/** The uniforms that every surface shares: the light and where the room is. */
export function makeShared() {
  const value = (v) => ({ value: v });
  return {
    middle: value(new THREE.Vector3()),
    wall: value(0.13),
    keyFrom: value(new THREE.Vector3(0, 0, 1)),
    keyColour: value(new THREE.Color()),
    keyMatrix: value(new THREE.Matrix4()),
    keyDepth: value(null),
    skyFrom: value(new THREE.Vector3(0, 1, 0)),
    skyColour: value(new THREE.Color()),
    skyMatrix: value(new THREE.Matrix4()),
    skyDepth: value(null),
    soft: value(1.5),
  };
}

/** An opaque surface. `rough` 0 mirrors, 1 is chalk; `mottle` is the cloudiness of plaster. */
export function surface(shared, colour, { rough = 0.9, metal = 0, mottle = 0, boards = null } = {}) {
  const uniforms = {
    ...shared,
    colour: { value: new THREE.Color(colour) },
    rough: { value: rough },
    metal: { value: metal },
    mottle: { value: mottle },
  };
  if (boards) uniforms.boards = { value: boards };
  return new THREE.ShaderMaterial({
    uniforms,
    defines: boards ? { BOARDS: '' } : {},
    vertexShader: SURFACE_VERTEX,
    fragmentShader: SURFACE_FRAGMENT,
  });
}

/** Clear glass: `body` is how much of its own colour it shows. */
export function glass(shared, colour = '#8fb0a4', body = 0.03) {
  return new THREE.ShaderMaterial({
    uniforms: { ...shared, colour: { value: new THREE.Color(colour) }, body: { value: body } },
    vertexShader: SURFACE_VERTEX,
    fragmentShader: GLASS_FRAGMENT,
    transparent: true,
    depthWrite: false,
    blending: THREE.CustomBlending,
    blendSrc: THREE.OneFactor,
    blendDst: THREE.OneMinusSrcAlphaFactor,
  });
}

/** The wardrobe for one job: a material for every look, in the job's finish. */
export function wardrobe(shared, finish) {
  return {
    timber: surface(shared, finish.colour, { rough: finish.rough }),
    board: surface(shared, finish.colour, { rough: finish.rough }),
    glass: glass(shared),
    brass: surface(shared, '#cdb077', { rough: 0.4, metal: 0.9 }),
    metal: surface(shared, '#25292a', { rough: 0.5 }),
    tape: surface(shared, '#3c403e', { rough: 0.9 }),
  };
}

/** Which of the wardrobe a mesh wears. Pulls are bright, tracks and hangers are black. */
export function lookOf(mesh, named) {
  const look = mesh.material.userData.look;
  return look === 'metal' && /\bpull\b/.test(named) ? 'brass' : look;
}
