import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { ROOT } from './desk.ts';

const OFFICE = join(ROOT, 'dist/office');
const read = (file: string): string => readFileSync(join(OFFICE, file), 'utf8');
const gzipped = (text: string): number => gzipSync(text, { level: 9 }).length;

/** Scripts and styles the first screen needs before it can show anything, with what they import. */
function firstScreen(): string[] {
  const page = read('index.html');
  const files = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g)].map(m => m[1]!);
  const found = new Set(files);
  const waiting = files.filter(f => f.endsWith('.js'));
  for (let file = waiting.pop(); file; file = waiting.pop())
    for (const [, name] of read(file).matchAll(/(?:^|[;}])import[^"'();]*["']\.\/([^"']+\.js)["']/g)) {
      const next = `assets/${name}`;
      if (!found.has(next)) waiting.push(next);
      found.add(next);
    }
  return [...found];
}

describe('the built office', () => {
  test('the first screen is under 400 kB gzipped, and solids are not in it', () => {
    const files = firstScreen();
    expect(files.some(f => f.endsWith('.css'))).toBe(true);
    const size = files.reduce((sum, file) => sum + gzipped(read(file)), 0);
    expect(size).toBeGreaterThan(20_000);
    expect(size).toBeLessThan(400_000);
    expect(files.some(f => read(f).includes('WebGLRenderer'))).toBe(false);
  });

  test('the page holds nothing inline and nothing from elsewhere', () => {
    const page = read('index.html');
    expect(page).not.toMatch(/<style|style="|\son\w+="/);
    expect(page.match(/<script(?![^>]*\ssrc=)/g)).toBeNull();
    expect(page).not.toMatch(/(?:src|href)="(?:https?:)?\/\//);
  });
});
