/** Writes docs/joints.md and docs/joints from the catalogue: `node --import tsx scripts/write-joints.ts`. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { jointPictures, jointsPage } from './joint-pages.ts';

const folder = new URL('../docs/joints/', import.meta.url);
mkdirSync(folder, { recursive: true });
const pictures = jointPictures();
for (const name of readdirSync(folder)) if (!pictures.has(name)) rmSync(new URL(name, folder));
for (const [name, svg] of pictures) writeFileSync(new URL(name, folder), svg);
writeFileSync(new URL('../docs/joints.md', import.meta.url), jointsPage());
