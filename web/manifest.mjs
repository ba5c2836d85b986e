// Write parametric/vendor/vendor.json: what in there was not written here, under which
// licence, and the digest by which anyone can see that it has not been touched.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const web = dirname(fileURLToPath(import.meta.url));
const vendor = join(web, '..', 'parametric', 'vendor');
const lock = JSON.parse(readFileSync(join(web, 'package-lock.json'), 'utf8')).packages;

const FROM = {
  fonts: {
    name: 'Alegreya Sans, digits lining and tabular, subset',
    package: '@expo-google-fonts/alegreya-sans',
    licence: 'OFL-1.1',
    licence_text: 'LICENSES/alegreya-sans.OFL-1.1.txt',
    made_by: 'web/fonts.py',
  },
  viewer: {
    name: 'viewer of web/src with three',
    package: 'three',
    licence: 'MIT',
    licence_text: 'LICENSES/three.MIT.txt',
    made_by: 'web/build.mjs',
  },
};

const files = Object.entries(FROM).flatMap(([folder, from]) => {
  let names;
  try {
    names = readdirSync(join(vendor, folder)).sort();
  } catch {
    return [];
  }
  return names.map((name) => {
    const bytes = readFileSync(join(vendor, folder, name));
    return {
      file: `${folder}/${name}`,
      name: from.name,
      package: from.package,
      version: lock[`node_modules/${from.package}`].version,
      licence: from.licence,
      licence_text: from.licence_text,
      made_by: from.made_by,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    };
  });
});

writeFileSync(join(vendor, 'vendor.json'), `${JSON.stringify({ format: 1, files }, null, 2)}\n`);
for (const f of files) console.log(`${f.sha256.slice(0, 12)}  ${f.file}`);
