// The page a client opens: reads what the tool wrote into it, hangs the doors, and keeps the
// picture, the strip and the words in step.
import { makeShared, wardrobe } from './dress.js';
import { Eye } from './eye.js';
import { Leaves } from './leaves.js';
import { decoded, dressed, readModel } from './model.js';
import { Picture } from './picture.js';
import { buildRoom } from './room.js';
import { Strip } from './strip.js';
import { Touch } from './touch.js';

const $ = (id) => document.getElementById(id);
const job = JSON.parse($('job').textContent);
const instant = matchMedia('(prefers-reduced-motion: reduce)').matches;
const leaves = new Leaves(job.leaves, job.way, { instant });
const strip = new Strip($('strip'), leaves, job);
const sizes = $('sizes-button');
const sharpest = 2;

/** Give up the picture in the round; the drawing that was there first stays. */
function drawingOnly() {
  document.documentElement.dataset.picture = 'drawing';
  $('waiting').textContent = job.words.no_picture;
}

function frameOf() {
  const reach = job.leaves.flatMap((leaf) => [leaf.x, leaf.x + leaf.width, leaf.x + leaf.travel, leaf.x + leaf.width + leaf.travel]);
  const [low, high] = [Math.min(...reach, job.way[0]), Math.max(...reach, job.way[1])];
  return {
    middle: (low + high) / 2000,
    halfWidth: (high - low) / 2000 + 0.09,
    foot: -0.33,
    head: job.top / 1000 + 0.36,
    front: -Math.min(0, ...job.leaves.map((leaf) => leaf.front)) / 1000,
    lift: 0.25,
  };
}

async function hang() {
  const shared = makeShared();
  const picture = new Picture($('canvas'), shared);
  const frame = frameOf();
  shared.middle.value.set(frame.middle, 0, 0);
  shared.wall.value = job.wall / 1000;
  picture.target.set(frame.middle, 1.05, -0.2);
  const { room, wallMesh } = buildRoom(shared, job, frame.middle);
  picture.casts(wallMesh);
  const groups = dressed(await readModel(decoded($('model').textContent)), wardrobe(shared, job.finish), (o) => picture.casts(o));
  picture.scene.add(room, ...groups.values());
  const nodes = new Map(leaves.list.map((leaf) => [leaf, groups.get(leaf.name)]));
  const shutAt = new Map([...nodes].map(([leaf, node]) => [leaf, node.position.x]));
  let awake = false;
  const wake = () => {
    if (!awake) requestAnimationFrame(turn);
    awake = true;
    document.documentElement.removeAttribute('data-still');
  };
  leaves.watch((leaf) => {
    nodes.get(leaf).position.x = shutAt.get(leaf) + leaf.moved / 1000;
    picture.touch();
    wake();
  });

  const eye = new Eye(picture.lens, frame, { instant, wake });
  new Touch($('canvas'), { eye, leaves, first: () => $('hint').classList.add('gone') });
  const fit = () => {
    const { width, height } = $('picture').getBoundingClientRect();
    eye.resize(width, height);
    picture.resize(Math.round(width), Math.round(height), Math.min(devicePixelRatio, sharpest));
    strip.resize();
    wake();
  };
  new ResizeObserver(fit).observe($('picture'));
  fit();
  $('canvas').addEventListener('webglcontextlost', drawingOnly);

  function turn(now) {
    const gliding = leaves.step(now);
    const walking = eye.step(now);
    if (walking) picture.touch();
    $('title').classList.toggle('away', !eye.atHome);
    picture.step(now);
    if (picture.drawn && document.documentElement.dataset.picture === 'waiting') {
      document.documentElement.dataset.picture = 'round';
      setTimeout(() => $('hint').classList.add('gone'), 6000);
    }
    // nothing moves and the picture is finished: rest until something does
    awake = gliding || walking || !picture.settled;
    document.documentElement.toggleAttribute('data-still', !awake);
    if (awake) requestAnimationFrame(turn);
  }
  // for whoever tests the page: where a leaf's node is, in mm, and what drawing it took
  window.stilewright = {
    where: (name) => nodes.get(leaves.named(name)).position.x * 1000,
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

function tray(open) {
  document.documentElement.toggleAttribute('data-tray', open);
  sizes.setAttribute('aria-expanded', String(open));
}
sizes.addEventListener('click', () => tray(sizes.getAttribute('aria-expanded') !== 'true'));
addEventListener('keydown', (event) => event.key === 'Escape' && tray(false));

$('hint').textContent = matchMedia('(pointer: coarse)').matches ? job.words.hint_touch : job.words.hint_mouse;
$('waiting').textContent = job.words.waiting;
document.documentElement.dataset.picture = 'waiting';
strip.resize();
// let the drawing reach the screen before the heavy work begins
requestAnimationFrame(() => setTimeout(() => hang().catch((reason) => {
  console.info(String(reason));
  drawingOnly();
  strideOnly();
}), 0));
