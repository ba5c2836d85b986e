// The page a client opens: reads what the tool wrote into it, hangs the doors, and keeps the
// picture, the strip, the tray and the words in step.
import * as THREE from 'three';
import { ChalkLines } from './chalk.js';
import { doorwaysOf } from './doorways.js';
import { Drawing } from './drawing.js';
import { makeShared, surface, Wardrobe } from './dress.js';
import { Eye } from './eye.js';
import { Finish } from './finish.js';
import { joined } from './joined.js';
import { Leaves } from './leaves.js';
import { Measure } from './measure.js';
import { spot, sweep } from './motion.js';
import { decoded, dressed, readModel } from './model.js';
import { Options } from './options.js';
import { Picture } from './picture.js';
import { BACK, buildRoom } from './room.js';
import { brackets, personBoard } from './scenery.js';
import { Section } from './section.js';
import { Sizes } from './sizes.js';
import { Stances } from './stances.js';
import { Stand } from './stand.js';
import { Strip } from './strip.js';
import { Touch } from './touch.js';
import { Tray } from './tray.js';
import { Yes } from './yes.js';

const $ = (id) => document.getElementById(id);
const root = document.documentElement;
const job = JSON.parse($('job').textContent);
const { words } = job;
const instant = matchMedia('(prefers-reduced-motion: reduce)').matches;
const wide = matchMedia('(min-width: 900px)').matches;
const SHARPEST = 2;
const HINT = 6000; // ms
const HINTED = 'stilewright hinted';
const GROWS = 0.15; // of how far a leaf comes towards the viewer, by which it rises or goes out in the picture
const PERSON = 0.62; // metres from the doors' side to the middle of the person

const tell = (text) => ($('told').textContent = text);
const leaves = new Leaves(job.leaves, doorwaysOf(job), { instant });
const strip = new Strip($('strip'), leaves, { ...job, tell });
const finish = new Finish({ palette: job.palette, words, tell });
finish.watch(() => root.style.setProperty('--finish', finish.colour));
const yes = new Yes({ job, finish, tell });
const sizes = new Sizes({ facts: job.facts, leaves, instant });
const all = $('all'); // where all leaves may stand open at once
if (all) {
  all.addEventListener('click', () => leaves.glideAll(leaves.allOpen ? 0 : 1));
  leaves.keep(() => (all.textContent = leaves.allOpen ? words['shut all'] : words['open all']));
}
let measure = { on: false, toggle() {} };
const tray = new Tray((name) => {
  if (name !== 'sizes') {
    sizes.show(null);
    measure.toggle(false);
  }
  strip.resize();
});

/** Whatever shows the doors hangs those of the option that is now asked for. */
let rehang = () => leaves.tell();
const options = new Options({
  job,
  changed() {
    const said = yes.record;
    measure.toggle(false);
    leaves.hang(job.leaves, doorwaysOf(job));
    strip.hang();
    finish.offer(job.palette);
    yes.ask();
    sizes.list(job.facts);
    strip.draw();
    rehang();
    const shown = words['option shown'].replace('{0}', job.option).replace('{1}', job.called);
    tell(said ? `${shown}. ${words['taken back']}` : shown);
  },
});

/** What was seen once on this machine need not be said again; where nothing is kept, it is. */
const hinted = {
  get() {
    try {
      return localStorage.getItem(HINTED) !== null;
    } catch {
      return false;
    }
  },
  set() {
    try {
      localStorage.setItem(HINTED, '');
    } catch {
      // a page from a disk may not be let keep anything: then the hint comes again
    }
  },
};

/** Give up the picture in the round; the drawing that was there first stays. */
function drawingOnly() {
  root.dataset.picture = 'drawing';
  $('waiting').textContent = words['no picture'];
  for (const id of ['tab-stand', 'measure']) $(id).disabled = true;
  $('tab-stand').hidden = true;
  tray.tabs = tray.tabs.filter((tab) => tab.id !== 'tab-stand');
  if (tray.name === 'stand') tray.show(wide ? $('tab-sizes') : null);
  $('stand').hidden = true;
  let drawing;
  const chalk = new ChalkLines($('chalk'), { project: (point) => drawing.project(point), carry: (_, point) => point });
  const draw = () => {
    drawing = new Drawing($('drawing'), doorwaysOf(job), { moved: () => chalk.draw() });
    if (drawing.known) {
      sizes.pictured(chalk, drawing);
      return;
    }
    for (const button of document.querySelectorAll('[data-fact]')) {
      if (!Object.keys(job.facts[Number(button.dataset.fact)].opened).length) button.disabled = true;
    }
  };
  draw();
  new ResizeObserver(() => drawing.known && chalk.draw()).observe($('picture'));
  rehang = () => {
    draw();
    leaves.tell();
    chalk.draw();
  };
}

/** Where a leaf's pull is in the scene. */
function pullOf(held) {
  const [x, y] = spot(held, held.pull, 0);
  return { x: x / 1000, y: held.pull_up / 1000, z: -y / 1000 };
}

/** What must be seen, whichever option is: the eye stays where it is when another comes. */
function frameOf() {
  const every = options.all.flatMap((one) => one.leaves);
  const reach = every.flatMap((leaf) => sweep(leaf).across);
  const ways = options.all.flatMap((one) => doorwaysOf(one).flatMap(({ way }) => way));
  const [low, high] = [Math.min(...reach, ...ways), Math.max(...reach, ...ways)];
  const front = -Math.min(0, ...every.map((leaf) => leaf.front)) / 1000;
  // what swings towards the viewer grows as it comes
  const comes = Math.max(0, -Math.min(...every.map((leaf) => sweep(leaf).away[0])) / 1000 - front);
  const held = [...job.leaves, ...every].find((leaf) => leaf.pull !== null);
  return {
    middle: (low + high) / 2000,
    halfWidth: (high - low) / 2000 + 0.09 + (job.niche ? comes * GROWS : 0),
    side: high / 1000,
    foot: -0.33,
    head: Math.max(...options.all.map((one) => one.top)) / 1000 + 0.46 + comes * GROWS,
    front,
    lift: 0.25,
    wall: job.wall / 1000,
    back: BACK,
    beside: PERSON * 2,
    held: held?.name,
    pull: held ? pullOf(held) : null,
    span: [low, high],
  };
}

/** The bars of the model's tracks carry their brackets. */
function bracketsOf(groups, scenery, shared) {
  const bars = [...groups.values()].filter((group) => !group.leaf).flatMap((group) => group.parts.map((part) => part.box.clone().applyMatrix4(group.object.matrixWorld)));
  const top = (y) => bars.find((bar) => bar.min.z <= -y && bar.max.z >= -y)?.max.y ?? null;
  const shapes = brackets(scenery.brackets, top);
  return shapes.length ? new THREE.Mesh(joined(shapes), surface(shared, '#25292a', { rough: 0.5, metal: 0.25, defines: { CLIPPED: '' } })) : null;
}

/** What stands at a place on the canvas: the point and the edges of its piece, mm, as on the shut leaf. */
function hitter(lens, hung, leaves, canvas) {
  const ray = new THREE.Raycaster();
  const v = new THREE.Vector3();
  const box = new THREE.Box3();
  const job = ({ x, y, z }) => [x * 1000, -z * 1000, y * 1000];
  /** The nearest piece on the ray, what is ghosted left out. */
  const first = ({ groups, inside }) => {
    const found = [];
    for (const group of groups.values()) {
      const { matrixWorld } = group.object;
      for (const part of group.parts) {
        if ((inside && part.hides) || !ray.ray.intersectsBox(box.copy(part.box).applyMatrix4(matrixWorld))) continue;
        part.mesh.matrixWorld.multiplyMatrices(matrixWorld, part.place);
        const all = [];
        part.mesh.raycast(ray, all);
        for (const { point, distance } of all) found.push({ point, distance, part, group });
      }
    }
    return found.reduce((best, one) => (best && best.distance <= one.distance ? best : one), null);
  };
  return (x, y) => {
    const { shutAt } = hung();
    const { width, height } = canvas.getBoundingClientRect();
    ray.setFromCamera(new THREE.Vector2((x / width) * 2 - 1, 1 - (y / height) * 2), lens);
    const found = first(hung());
    if (!found) return null;
    const { part, group } = found;
    const { name } = group.object;
    const at = shutAt.get(name);
    const leaf = leaves.named(name);
    const shut = (point) => (leaf ? leaf.bring(job(point)) : job(point));
    const [low, high] = [part.box.min, part.box.max].map((corner) => job(v.copy(corner).applyQuaternion(at.quaternion).add(at.position)));
    const point = shut(found.point);
    // along another wall a piece's ends are not to the left and right: there one measures straight
    const askew = Math.abs(at.quaternion.w) < 0.9999;
    const turned = askew || (Boolean(leaf) && !leaf.slides && !leaf.shut);
    return {
      point,
      edges: askew ? [[point[0]], [low[2], high[2]]] : [0, 2].map((i) => [low[i], high[i]]),
      // the side of the leaf that is seen
      side: !askew && turned && shut(lens.position)[1] > (low[1] + high[1]) / 2 ? 1 : -1,
      leaf: leaf && !askew ? name : '',
      turned,
      part: part.name,
    };
  };
}

/** The doors of the option that is shown, with all that goes with them, in the scene. */
async function dressedDoors({ shared, stances, picture, wardrobe, skirt }) {
  const own = new THREE.Group();
  own.visible = false;
  const { scenery, glued } = job;
  const { groups, drawn, ghosted, hides } = dressed(await readModel(decoded(options.model)), wardrobe, {
    casts: (o) => picture.casts(o, { cut: true }), pane: (o) => picture.pane(o), glued, stances,
  });
  own.add(drawn, ...[...groups.values()].map((group) => group.object));
  own.updateMatrixWorld(true);
  for (const { object, stance } of groups.values()) stances.set(stance, object.matrixWorld);
  const held = bracketsOf(groups, scenery, shared);
  if (held) {
    picture.casts(held, { cut: true });
    own.add(held);
  }
  for (const board of skirt(scenery, doorwaysOf(job).map(({ clear }) => clear))) {
    picture.casts(board);
    own.add(board);
  }
  picture.scene.add(own);
  picture.scene.updateMatrixWorld(true);
  const shutAt = new Map([...groups].map(([name, { object }]) => [name, { position: object.position.clone(), quaternion: object.quaternion.clone() }]));
  return { own, groups, shutAt, ghosted, hides, inside: false };
}

/** How a leaf's pose carries what hangs in the scene: metres, Y up. */
function inScene({ axes, zero }) {
  const [x, y, z] = axes.map(([across, away, up]) => new THREE.Vector3(across, up, -away));
  const matrix = new THREE.Matrix4().makeBasis(x, z, y.negate());
  return {
    turn: new THREE.Quaternion().setFromRotationMatrix(matrix),
    shift: new THREE.Vector3(zero[0], zero[2], -zero[1]).divideScalar(1000),
  };
}

async function hang() {
  const shared = makeShared();
  const stances = new Stances(shared.stances);
  const picture = new Picture($('canvas'), shared);
  const frame = frameOf();
  shared.middle.value.set(frame.middle, 0, 0);
  shared.wall.value = frame.wall;
  picture.target.set(frame.middle, 1.05, -0.2);
  picture.spread(frame.halfWidth);
  const { room, throwing, floorAt, farLamp, skirt } = buildRoom(shared, job, frame.middle, frame.side);
  for (const mesh of throwing) picture.casts(mesh);
  const wardrobe = new Wardrobe(shared);
  picture.scene.add(room);
  const first = job.option;
  let hung = await dressedDoors({ shared, stances, picture, wardrobe, skirt });
  const dressings = new Map([[first, hung]]);
  hung.own.visible = true;
  const person = personBoard(shared);
  const x = frame.side + PERSON;
  person.position.set(x, floorAt(x), 0.26);
  person.rotation.y = -0.2;
  person.children.forEach((mesh) => picture.casts(mesh));
  picture.scene.add(person);

  let awake = false;
  const wake = () => {
    if (!awake) requestAnimationFrame(turn);
    awake = true;
    root.removeAttribute('data-still');
  };
  const fresh = () => {
    picture.touch();
    wake();
  };
  const eye = new Eye(picture.lens, frame, { instant, wake, places: job.places });
  const v = new THREE.Vector3();
  const chalk = new ChalkLines($('chalk'), {
    project: ([px, py, pz]) => {
      v.set(px / 1000, pz / 1000, -py / 1000).project(picture.lens);
      return v.z > 1 ? null : [((v.x + 1) / 2) * eye.width, ((1 - v.y) / 2) * eye.height];
    },
    carry: (name, point) => leaves.named(name).carry(point),
  });
  const section = new Section({ shared, groups: hung.groups, raw: job.palette.raw, glass: '#6fb39c', changed: fresh });
  leaves.watch((leaf) => {
    const group = hung.groups.get(leaf.name);
    if (!group) return; // its option's model is still being read
    const { position, quaternion } = hung.shutAt.get(leaf.name);
    const { turn, shift } = inScene(leaf.pose);
    group.object.position.copy(position).applyQuaternion(turn).add(shift);
    group.object.quaternion.multiplyQuaternions(turn, quaternion);
    group.object.updateMatrixWorld(true);
    stances.set(group.stance, group.object.matrixWorld);
    section.moved(group);
  });
  leaves.keep(() => {
    chalk.draw();
    fresh();
  });
  // what hides is hidden or shown again; of other options when they are shown
  const inside = $('inside');
  const seeInside = () => {
    inside.closest('label').hidden = !hung.hides;
    hung.inside = inside.checked;
    hung.ghosted(inside.checked);
    fresh();
  };
  if (inside) {
    inside.addEventListener('change', seeInside);
    seeInside();
  }
  const wear = () => {
    const kind = { wood: finish.entry('wood'), glass: finish.has('glass') && finish.entry('glass'), metal: finish.has('metal') && finish.entry('metal') };
    picture.veil(wardrobe.wear(kind));
    fresh();
  };
  finish.watch(wear);
  // the pull of a leaf that swings is where one stands only while it is shut
  const atPull = () => {
    const leaf = leaves.named(frame.held);
    if (leaf && !leaf.slides) leaves.glide(leaf, 0);
  };
  new Stand({ eye, person, changed: fresh, atPull, section, words, unit: job.unit, span: frame.span, wide });
  sizes.pictured(chalk, eye);
  measure = new Measure({
    canvas: $('canvas'), button: $('measure'), told: $('measured'), words, unit: job.unit, chalk, hit: hitter(picture.lens, () => hung, leaves, $('canvas')), carry: (name, point) => leaves.named(name).carry(point), started: () => sizes.show(null),
  });
  new Touch($('canvas'), {
    eye,
    leaves,
    measure: () => measure,
  });
  for (const button of document.querySelectorAll('[data-set]')) {
    button.addEventListener('click', () => {
      picture.setHour(button.dataset.set);
      section.evening(button.dataset.set === 'evening');
      fresh();
    });
  }
  picture.setHour(root.dataset.hour);
  const fit = () => {
    const { width, height } = $('picture').getBoundingClientRect();
    if (!width || !height) return;
    eye.resize(width, height);
    picture.resize(Math.round(width), Math.round(height), Math.min(devicePixelRatio, SHARPEST));
    strip.resize();
    chalk.draw();
    wake();
  };
  new ResizeObserver(fit).observe($('picture'));
  fit();
  rehang = async () => {
    const { option } = job;
    if (!dressings.has(option)) dressings.set(option, await dressedDoors({ shared, stances, picture, wardrobe, skirt }));
    // while a model was read, another option may have been asked for
    if (option !== job.option) return;
    hung = dressings.get(option);
    for (const [letter, { own }] of dressings) own.visible = letter === option;
    section.hold(hung.groups);
    if (inside) seeInside();
    wear();
    leaves.tell();
  };
  if (job.option !== first) rehang();
  $('canvas').addEventListener('webglcontextlost', drawingOnly);

  function turn(now) {
    const gliding = leaves.step(now);
    const walking = eye.step(now);
    farLamp.visible = eye.place !== 'beyond';
    if (walking) {
      picture.touch();
      chalk.draw();
    }
    root.toggleAttribute('data-away', !eye.atHome);
    picture.step(now);
    if (picture.drawn && root.dataset.picture === 'waiting') {
      root.dataset.picture = 'round';
      if (hinted.get() || !job.leaves.length) $('hint').classList.add('gone');
      setTimeout(() => $('hint').classList.add('gone'), HINT);
    }
    // nothing moves and the picture is finished: rest until something does
    awake = gliding || walking || !picture.settled;
    root.toggleAttribute('data-still', !awake);
    if (awake) requestAnimationFrame(turn);
  }
  // for whoever tests the page: where a leaf's node is, in mm, how far open it is, where a point
  // of the leaf's own frame is in the scene, where a point of the world is on the picture, what a
  // section shows, and what drawing it took
  window.stilewright = {
    where: (name) => hung.groups.get(name).object.position.x * 1000,
    open: (name) => leaves.named(name).open,
    at: (name, [px, py, pz]) => hung.groups.get(name).object.localToWorld(v.set(px / 1000, pz / 1000, -py / 1000)).toArray().map((n) => n * 1000),
    shown: () => [...hung.groups.values()].flatMap((group) => group.parts.map((part) => part.name)),
    seen: (point) => chalk.project(point),
    cut: () => section.spans(),
    caps: () => [...section.holders.values()].flatMap((holder) => holder.children.map((cap) => cap.userData.cap).filter(Boolean)),
    figures: () => ({ ...picture.figures, drawn: picture.drawn, wanted: picture.wanted }),
  };
}

/** Slide the leaves where there is no picture to keep in step. */
function strideOnly() {
  const turn = (now) => {
    leaves.step(now);
    requestAnimationFrame(turn);
  };
  requestAnimationFrame(turn);
  strip.resize();
  addEventListener('resize', () => strip.resize());
}

for (const button of document.querySelectorAll('[data-set]')) {
  button.addEventListener('click', () => {
    root.dataset.hour = button.dataset.set;
    for (const one of document.querySelectorAll('[data-set]')) one.setAttribute('aria-pressed', String(one === button));
  });
}
const first = () => {
  $('hint').classList.add('gone');
  hinted.set();
};
for (const what of ['pointerdown', 'keydown']) addEventListener(what, first, { once: true });
$('hint').textContent = matchMedia('(pointer: coarse)').matches ? words['hint touch'] : words['hint mouse'];
$('waiting').textContent = words.waiting;
root.dataset.picture = 'waiting';
strip.resize();
// let the drawing reach the screen before the heavy work begins
requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => hang().catch((reason) => {
  console.info(String(reason));
  drawingOnly();
  strideOnly();
}), 0)));
