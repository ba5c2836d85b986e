// The site as it was measured: the wall with its opening out of true, the floor with its
// fall, and a plain room on either side. Nothing is squared up.
import * as THREE from 'three';
import { doorwaysOf } from './doorways.js';
import { made, surface } from './dress.js';
import { joined } from './joined.js';
import scene from './scene.js';
import { lampOn, skirtings, surround } from './scenery.js';

const { side: SIDE, high: HIGH, front: FRONT, buried: BURIED, board: BOARD } = scene.room;
export const BACK = scene.room.back; // to the far wall, from the face of this one
const BOARDS = 8;
const RUN = 2.64; // length of floor in the picture of it

/** Random numbers that are the same every time. */
function dice(seed) {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** A picture of floor boards: tone by board, streaks along the grain, dark joints. */
function boardsPicture() {
  const random = dice(11);
  const canvas = document.createElement('canvas');
  canvas.width = 1024;
  canvas.height = 2048;
  const pen = canvas.getContext('2d');
  const wide = canvas.width / BOARDS;
  const tone = (l, a) => `hsla(${32 + 3 * random()},${27 + 6 * random()}%,${l}%,${a})`;
  for (let i = 0; i < BOARDS; i += 1) {
    const joint = Math.floor(random() * canvas.height);
    for (const [from, to] of [[joint - canvas.height, joint], [joint, joint + canvas.height]]) {
      pen.save();
      pen.beginPath();
      pen.rect(i * wide, from, wide, to - from);
      pen.clip();
      pen.fillStyle = tone(60 + 7 * random(), 1);
      pen.fillRect(i * wide, from, wide, to - from);
      const lean = (random() - 0.5) * 20;
      for (let k = 0; k < 90; k += 1) {
        const x = (i + random()) * wide;
        pen.strokeStyle = tone(random() < 0.72 ? 44 : 72, 0.05 + 0.09 * random());
        pen.lineWidth = 0.8 + 3.4 * random() ** 3;
        pen.beginPath();
        pen.moveTo(x, from);
        const bow = (random() - 0.5) * 26;
        pen.bezierCurveTo(x + bow, from + 600, x - bow + lean, to - 600, x + lean, to);
        pen.stroke();
      }
      pen.restore();
    }
    pen.fillStyle = 'hsla(28,30%,20%,.55)';
    pen.fillRect(i * wide, 0, 2, canvas.height);
    pen.fillRect(i * wide, joint, wide, 2);
  }
  const texture = new THREE.CanvasTexture(canvas);
  texture.colorSpace = THREE.SRGBColorSpace;
  texture.wrapS = THREE.RepeatWrapping;
  texture.wrapT = THREE.RepeatWrapping;
  texture.anisotropy = 8;
  return texture;
}

/** The floor's line, carried on beyond the readings at the slope it ends with. */
function floorLine(readings, middle, side = SIDE) {
  const at = ([a, b], x) => b[1] + ((b[1] - a[1]) / (b[0] - a[0])) * (x - b[0]);
  const points = readings.length > 1 ? readings : [[0, 0], [1, 0]];
  const [first, last] = [points.slice(0, 2).reverse(), points.slice(-2)];
  const [left, right] = [middle - side, middle + side];
  return [[left, at(first, left)], ...points, [right, at(last, right)]];
}

function floor(line, front) {
  const [position, uv, index] = [[], [], []];
  line.forEach(([x, y], i) => {
    for (const z of [front, -BACK - 0.1]) {
      position.push(x, y, z);
      uv.push(x / (BOARD * BOARDS), z / RUN);
    }
    if (i) index.push(2 * i - 2, 2 * i, 2 * i - 1, 2 * i, 2 * i + 1, 2 * i - 1);
  });
  const shape = new THREE.BufferGeometry();
  shape.setAttribute('position', new THREE.Float32BufferAttribute(position, 3));
  shape.setAttribute('uv', new THREE.Float32BufferAttribute(uv, 2));
  shape.setIndex(index);
  shape.computeVertexNormals();
  return shape;
}

/** The wall with the surveyed openings cut through it; their feet run on below the floor. */
function wallWithOpenings(openings, middle, side, thick) {
  const [left, right] = [middle - side, middle + side];
  const shape = new THREE.Shape(
    [[left, -2 * BURIED], [right, -2 * BURIED], [right, HIGH], [left, HIGH]].map((p) => new THREE.Vector2(...p)),
  );
  for (const opening of openings) {
    const [first, last] = [opening[0], opening[opening.length - 1]];
    const hole = [[first[0], -BURIED], ...opening, [last[0], -BURIED]];
    shape.holes.push(new THREE.Path(hole.map((p) => new THREE.Vector2(...p))));
  }
  return new THREE.ExtrudeGeometry(shape, { depth: thick, bevelEnabled: false }).translate(0, 0, -thick);
}

/** Flat pieces, each by its corners in the job's frame, mm, as one shape; with the floor's boards on them. */
function flats(surfaces) {
  const [position, uv, index] = [[], [], []];
  for (const { corners } of surfaces) {
    const start = position.length / 3;
    const points = corners.map(([x, y, z]) => new THREE.Vector3(x / 1000, z / 1000, -y / 1000));
    for (const p of points) {
      position.push(p.x, p.y, p.z);
      uv.push(p.x / (BOARD * BOARDS), p.z / RUN);
    }
    // laid flat in the two directions that it runs in
    const along = points[1].clone().sub(points[0]).normalize();
    const facing = new THREE.Vector3();
    points.forEach((p, i) => facing.add(p.clone().cross(points[(i + 1) % points.length])));
    const up = facing.normalize().cross(along);
    const flat = points.map((p) => new THREE.Vector2(p.dot(along), p.dot(up)));
    for (const triangle of THREE.ShapeUtils.triangulateShape(flat, [])) index.push(...triangle.map((i) => start + i));
  }
  const shape = new THREE.BufferGeometry();
  shape.setAttribute('position', new THREE.Float32BufferAttribute(position, 3));
  shape.setAttribute('uv', new THREE.Float32BufferAttribute(uv, 2));
  shape.setIndex(index);
  const own = shape.toNonIndexed();
  own.computeVertexNormals();
  return own;
}

/** A plane that faces `turn` about the upright, or down when it is a ceiling. */
function plane(width, height, x, y, z, { turn = 0, down = false } = {}) {
  const shape = new THREE.PlaneGeometry(width, height);
  if (down) shape.rotateX(Math.PI / 2);
  else shape.rotateY(turn);
  return shape.translate(x, y, z);
}

/** Boxes (middle and size, metres from the middle of the doors) as one shape. */
const boxes = (list, middle) => joined(
  list.map(([x, y, z, w, h, d]) => new THREE.BoxGeometry(w, h, d).translate(middle + x, y, z)),
);

/** A lamp on its stand beside what is shown, its light where its shade is. */
function lampBeside(shared, room, middle, beside, floorAt) {
  const [x, ...up] = scene.standing_lamp.at;
  const { stand, shade } = lampOn(shared, [beside + x, ...up], floorAt(beside + x));
  room.add(stand, shade);
  shared.standing.value.set(beside + x - middle, ...up);
}

/** The room about casework, every surface of it where the survey has it. */
function nicheRoom(shared, { niche, floor: readings }, middle, beside) {
  const room = new THREE.Group();
  const plaster = made(shared, scene.room.plaster);
  // a low ceiling is in the picture, and what the floor throws up at it is not worked out
  const pale = made(shared, scene.room.pale, { glow: 0.34 });
  const oak = surface(shared, '#ffffff', { rough: 0.46, boards: boardsPicture() });
  const { face, back } = niche;
  shared.deep.value = back / 1000;
  const meshes = Object.entries({ wall: plaster, ceiling: pale, floor: oak })
    .map(([kind, material]) => new THREE.Mesh(flats(niche.surfaces.filter((one) => one.kind === kind)), material));
  room.add(...meshes);
  const reach = Math.max(...niche.surfaces.flatMap(({ corners }) => corners.map(([x]) => Math.abs(x / 1000 - middle))));
  const line = floorLine(readings.map(([x, y]) => [x / 1000, y / 1000]), middle, reach);
  const floorAt = heightOn(line);
  lampBeside(shared, room, middle, beside, floorAt);
  const skirt = (scenery, clear) => skirtings(shared, scenery, clear, floorAt, [line[0][0], line[line.length - 1][0]])
    .map((board) => board.translateZ(-face / 1000));
  return { room, throwing: [meshes[0]], floorAt, farLamp: new THREE.Group(), skirt };
}

/**
 * Build the site.
 * Lengths in the data are millimetres; returns an object in metres, with what throws a
 * shadow apart, the floor's height across, and what makes the woodwork about given doors. A
 * lamp stands `beside` the doors.
 */
export function buildRoom(shared, job, middle, beside) {
  if (job.niche) return nicheRoom(shared, job, middle, beside);
  const { wall } = job;
  const doorways = doorwaysOf(job);
  // several doors beside one another need a broader wall
  const side = Math.max(SIDE, ...doorways.flatMap(({ opening }) => opening).map(([x]) => Math.abs(x / 1000 - middle) + SIDE / 2));
  const metres = (points) => points.map(([x, y]) => [x / 1000, y / 1000]);
  const thick = wall / 1000;
  // and a deeper room, for whoever steps back to see all of them
  const front = FRONT * Math.max(1, (2 * side) / SIDE - 1);
  const [plaster, far, pale, shelf] = ['plaster', 'far', 'pale', 'shelf'].map((name) => made(shared, scene.room[name]));
  const oak = surface(shared, '#ffffff', { rough: 0.46, boards: boardsPicture() });
  const room = new THREE.Group();
  const put = (shape, material) => {
    const mesh = new THREE.Mesh(shape, material);
    room.add(mesh);
    return mesh;
  };

  const wallMesh = put(wallWithOpenings(doorways.map(({ opening }) => metres(opening)), middle, side, thick), plaster);
  const line = floorLine(metres(doorways.flatMap(({ floor: readings }) => readings)), middle, side);
  put(floor(line, front), oak);
  const [left, right] = [middle - side, middle + side];
  put(joined([
    plane(front, HIGH + 1, left, HIGH / 2, front / 2, { turn: Math.PI / 2 }),
    plane(front, HIGH + 1, right, HIGH / 2, front / 2, { turn: -Math.PI / 2 }),
  ]), plaster);
  put(joined([
    plane(2 * side, front, middle, HIGH, front / 2, { down: true }),
    plane(2 * side, BACK, middle, HIGH - scene.room.far_lower, -BACK / 2 - thick, { down: true }),
  ]), pale);
  put(joined([
    plane(2 * side, HIGH + 1, middle, HIGH / 2, -BACK),
    plane(BACK, HIGH + 1, middle - scene.room.far_side, HIGH / 2, -BACK / 2, { turn: Math.PI / 2 }),
    plane(BACK, HIGH + 1, middle + scene.room.far_side, HIGH / 2, -BACK / 2, { turn: -Math.PI / 2 }),
  ]), far);
  put(boxes(scene.boards, middle), shelf);
  scene.books.forEach((spine, i) => {
    if (spine.length) put(boxes(spine, middle), surface(shared, scene.room.spines[i], { rough: scene.room.spine_rough }));
  });
  // the wall behind whoever looks, with two windows, for the view back from the far room
  put(plane(2 * side, HIGH + 1, middle, HIGH / 2, front, { turn: Math.PI }), plaster);
  const panes = [-1.4, 1.4].map((x) => plane(1.1, 1.55, middle + x, 1.58, front - 0.01, { turn: Math.PI }));
  put(joined(panes), surface(shared, '#dfe9f2', { rough: 0.9, glow: 1.3 }));
  const bars = [-1.4, 1.4].flatMap((x) => [
    new THREE.BoxGeometry(0.06, 1.6, 0.04).translate(middle + x, 1.58, front - 0.03),
    ...[0.8, 1.58, 2.36].map((y) => new THREE.BoxGeometry(1.2, 0.06, 0.04).translate(middle + x, y, front - 0.03)),
    ...[-0.57, 0.57].map((side) => new THREE.BoxGeometry(0.07, 1.6, 0.05).translate(middle + x + side, 1.58, front - 0.03)),
  ]);
  put(joined(bars), pale);
  const floorAt = heightOn(line);
  // whoever stands in the far room stands where its lamp would be
  const [x, ...up] = scene.lamp.at;
  const { stand, shade } = lampOn(shared, [middle + x, ...up], floorAt(middle + x));
  const farLamp = new THREE.Group().add(stand, shade);
  room.add(farLamp);
  lampBeside(shared, room, middle, beside, floorAt);
  const skirt = (scenery, clear) => [...skirtings(shared, scenery, clear, floorAt, [left, right]), ...surround(shared, scenery)];
  return { room, throwing: [wallMesh], floorAt, farLamp, skirt };
}

/** The floor's height at any place across. */
function heightOn(line) {
  return (x) => {
    const i = Math.max(1, line.findIndex(([at]) => at >= x));
    const [[x0, y0], [x1, y1]] = [line[i - 1], line[i]];
    return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  };
}
