// Build the viewer that every page carries: one script and one style sheet, with the notice
// of what is in them. The same sources give the same bytes.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const web = dirname(fileURLToPath(import.meta.url));
const outdir = process.argv[2] ?? join(web, '..', 'parametric', 'vendor', 'viewer');
mkdirSync(outdir, { recursive: true });

await build({
  absWorkingDir: web,
  entryPoints: { 'viewer.min': 'src/page.js' },
  outdir,
  bundle: true,
  minify: true,
  format: 'iife',
  target: ['es2022', 'safari16'],
  charset: 'ascii',
  legalComments: 'linked',
  logLevel: 'warning',
});
await build({
  absWorkingDir: web,
  entryPoints: { 'viewer.min': 'src/page.css' },
  outdir,
  minify: true,
  charset: 'ascii',
  logLevel: 'warning',
});

// the script is set inside a page: nothing in it may end the element that holds it
const script = readFileSync(join(outdir, 'viewer.min.js'), 'utf8');
if (/<\/script|<!--/i.test(script)) throw new Error('the script holds the end of a script element');

// what every page must say about the work of others that it carries
const notice = [
  'This page holds the three library, https://threejs.org',
  readFileSync(join(web, 'node_modules', 'three', 'LICENSE'), 'utf8').trim(),
  'Its letters are Alegreya Sans, digits made lining and tabular.',
  readFileSync(join(web, 'node_modules', '@expo-google-fonts', 'alegreya-sans', 'LICENSE_FONT'), 'utf8')
    .split('\n')[0],
  'Licensed under the SIL Open Font License, Version 1.1: https://openfontlicense.org',
].join('\n\n');
if (notice.includes('--')) throw new Error('the notice cannot stand in a comment');
writeFileSync(join(outdir, 'NOTICE.txt'), `${notice}\n`);
