// What stands about the doors and is not sold with them: skirting, the brackets of the tracks,
// the room's other wall, and a board in the shape of a person.
import * as THREE from 'three';
import { made, surface, timber, wear } from './dress.js';
import { joined } from './joined.js';
import scene from './scene.js';

const PLY = { early: '#dccfb2', late: '#bda67c', ring: 3.2, contrast: 0.35, pore: 0.1, fleck: 0, rough: 0.6 };
const TALL = 1.7;
const THICK = 0.014;
// half the outline, from the inside of the foot up to the crown, metres
const OUTLINE = [
  [0.016, 0.012], [0.112, 0.012], [0.116, 0.05], [0.094, 0.09], [0.108, 0.3], [0.1, 0.46], [0.128, 0.62],
  [0.152, 0.8], [0.162, 0.94], [0.17, 0.82], [0.186, 0.74], [0.214, 0.755], [0.226, 0.86], [0.232, 1.06],
  [0.222, 1.26], [0.196, 1.375], [0.13, 1.418], [0.066, 1.448], [0.05, 1.48], [0.058, 1.512],
  [0.078, 1.55], [0.083, 1.605], [0.072, 1.66], [0.042, 1.691], [0, TALL],
];

/** A board sawn to the outline of a person 1.70 m tall, grain upright, on a foot. */
export function personBoard(shared) {
  const half = new THREE.SplineCurve(OUTLINE.slice(1).map((p) => new THREE.Vector2(...p))).getPoints(130);
  const right = half.map(({ x, y }) => [Math.max(0, x), Math.max(0.012, Math.min(TALL, y))]);
  const left = right.slice().reverse().map(([x, y]) => [-x, y]);
  const legs = [[-0.016, 0.012], [-0.012, 0.74], [0.012, 0.74], [0.016, 0.012]];
  const shape = new THREE.Shape([...right, ...left, ...legs].map((p) => new THREE.Vector2(...p)));
  const board = new THREE.ExtrudeGeometry(shape, { depth: THICK, bevelEnabled: false });
  const foot = new THREE.BoxGeometry(0.4, 0.022, 0.2).toNonIndexed().translate(0, 0.011, THICK / 2);
  const figure = new THREE.Group();
  const wood = timber(shared, { clipped: false });
  wear(wood, PLY);
  for (const [geometry, upright, seed] of [[board, true, 0.37], [foot, false, 0.61]]) {
    const { position } = geometry.attributes;
    const own = [];
    for (let i = 0; i < position.count; i += 1) {
      const [x, y, z] = [position.getX(i), position.getY(i), position.getZ(i)].map((v) => v * 1000);
      own.push(...(upright ? [y, x, z] : [x, z, y]), seed);
    }
    geometry.setAttribute('wood', new THREE.Float32BufferAttribute(own, 4));
    geometry.setAttribute('piece', new THREE.Float32BufferAttribute(new Array(position.count).fill([TALL * 1000, 0, 0, 0]).flat(), 4));
    figure.add(new THREE.Mesh(geometry, wood));
  }
  return figure;
}

/** A lamp on a stand: its shade round a place, its foot on the floor. */
export function lampOn(shared, [x, y, z], foot) {
  const { shade: [head, hem], high } = scene.lamp;
  const stem = y - foot;
  const stand = [
    new THREE.CylinderGeometry(0.011, 0.011, stem, 12).translate(x, foot + stem / 2, z),
    new THREE.CylinderGeometry(0.14, 0.15, 0.022, 32).translate(x, foot + 0.011, z),
  ];
  const linen = surface(shared, '#f2e4cb', { rough: 0.95, glow: -0.95 });
  linen.side = THREE.DoubleSide;
  const shade = new THREE.Mesh(new THREE.CylinderGeometry(head, hem, high, 40, 1, true).translate(x, y, z), linen);
  return { stand: new THREE.Mesh(joined(stand), made(shared, scene.room.track)), shade };
}

/** Skirting on the wall's face, down into the floor's fall, but in the stretches that are `clear` of it. */
export function skirtings(shared, { skirting: [high, thick] }, clear, floorAt, [left, right]) {
  const trim = made(shared, scene.room.trim);
  const ends = [left, ...clear.flatMap(([a, b]) => [a / 1000 - 0.006, b / 1000 + 0.006]), right];
  const runs = Array.from({ length: ends.length / 2 }, (_, i) => ends.slice(2 * i, 2 * i + 2));
  return runs.filter(([a, b]) => a < b).map(([a, b]) => {
    const [low, up] = [[a, floorAt(a)], [b, floorAt(b)]];
    const shape = new THREE.Shape([[a, low[1] - 0.01], [b, up[1] - 0.01], [b, up[1] + high / 1000], [a, low[1] + high / 1000]].map((p) => new THREE.Vector2(...p)));
    return new THREE.Mesh(new THREE.ExtrudeGeometry(shape, { depth: thick / 1000, bevelEnabled: true, bevelSize: 0.001, bevelThickness: 0.004, bevelSegments: 1 }), trim);
  });
}

/** What stands round an opening that doors are hung in: lining, stop, casings; nothing round others. */
export function surround(shared, { trims = [] }) {
  if (!trims.length) return [];
  const shapes = trims.map(({ outline, near, far }) => new THREE.ExtrudeGeometry(
    new THREE.Shape(outline.map(([x, z]) => new THREE.Vector2(x / 1000, z / 1000))),
    { depth: (far - near) / 1000, bevelEnabled: false },
  ).translate(0, 0, -far / 1000));
  return [new THREE.Mesh(joined(shapes), made(shared, scene.room.trim))];
}

/** Brackets from the wall to each track, where the lists say that they stand. */
export function brackets(places, tops) {
  const shapes = [];
  for (const [x, y] of places) {
    const top = tops(y / 1000);
    if (top === null) continue;
    const [px, away] = [x / 1000, -y / 1000];
    shapes.push(
      new THREE.BoxGeometry(0.034, 0.006, away + 0.012).translate(px, top + 0.003, (away + 0.012) / 2),
      new THREE.BoxGeometry(0.034, 0.052, 0.006).translate(px, top + 0.026, 0.003),
      new THREE.CylinderGeometry(0.0055, 0.0055, 0.004, 12).rotateX(Math.PI / 2).translate(px, top + 0.034, 0.008),
      new THREE.CylinderGeometry(0.005, 0.005, 0.012, 12).translate(px, top + 0.009, away),
    );
  }
  return shapes;
}
