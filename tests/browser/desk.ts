import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';

/** The built program in a browser: starts it on a fresh data folder and opens pages that report their troubles. */

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = join(ROOT, 'dist/scantling.js');
const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
];

export interface Desk {
  address: string;
  open(options?: PageOptions): Promise<Opened>;
  /** Ends the program; `startAgain` starts it on the same folder and port, with a token of its own. */
  stop(): Promise<void>;
  startAgain(): Promise<void>;
  close(): Promise<void>;
}

export interface PageOptions {
  width?: number;
  height?: number;
  ground?: 'light' | 'dark';
  /** After the `#`. */
  place?: string;
}

export interface Opened {
  page: Page;
  /** Console errors, uncaught errors and breaches of the content policy. */
  troubles: string[];
}

function browserPath(): string {
  const named = process.env.CHROMIUM_PATH;
  if (named) return named;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const found = ['chromium', 'chromium-browser', 'google-chrome-stable']
    .flatMap(name => folders.map(folder => join(folder, name)))
    .find(file => existsSync(file));
  if (!found) throw new Error('there is no Chromium: set CHROMIUM_PATH');
  return found;
}

async function startProgram(folder: string, port = '0'): Promise<{ child: ChildProcess; address: string }> {
  if (!existsSync(PROGRAM)) throw new Error('the program is not built: run npm run build');
  const child = spawn(process.execPath, [PROGRAM, 'start', '--data', folder, '--port', port], { cwd: ROOT });
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    const hear = (part: Buffer): void => {
      said += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found) resolve(found[0]);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', code => reject(new Error(`the program ended (${code}): ${said}`)));
  });
  return { child, address };
}

export async function startDesk(): Promise<Desk> {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-browser-'));
  let { child, address } = await startProgram(folder);
  const end = async (): Promise<void> => {
    const ended = new Promise(resolve => child.once('exit', resolve));
    child.kill('SIGTERM');
    await ended;
  };
  const browser = await chromium.launch({ executablePath: browserPath(), args: FLAGS });
  return {
    address,
    stop: end,
    startAgain: async () => {
      ({ child, address } = await startProgram(folder, new URL(address).port));
    },
    open: options => openPage(browser, address, options),
    close: async () => {
      await browser.close();
      await end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function openPage(
  browser: Browser,
  address: string,
  { width = 1600, height = 1000, ground = 'light', place = '/' }: PageOptions = {},
): Promise<Opened> {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme: ground,
    reducedMotion: 'reduce',
  });
  const troubles: string[] = [];
  page.on('console', message => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  page.on('pageerror', error => troubles.push(String(error)));
  await page.addInitScript(() =>
    document.addEventListener('securitypolicyviolation', event =>
      console.error(`content policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`),
    ),
  );
  await page.goto(`${address}#${place}`);
  return { page, troubles };
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  impact: string | null;
  nodes: { target: unknown; failureSummary?: string }[];
}

/** Serious and critical faults that axe finds on the page. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const violations = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
    return (await axe.run()).violations;
  });
  return violations
    .filter(v => v.impact === 'serious' || v.impact === 'critical')
    .map(
      v =>
        `${v.id}: ${v.nodes.map(n => `${JSON.stringify(n.target)} ${n.failureSummary ?? ''}`).join(' | ')}`,
    );
}

/** How far the page is wider than the window, CSS pixels. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
