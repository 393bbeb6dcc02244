import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './run.mjs';

const TALLIES = join(ROOT, '.vitest');

/** Runs a command of a check, which counts as one. */
export const check = (name, command, args) => ({ name, steps: [{ name, command, args }] });

/** Runs vitest with one of our configurations; its tests are counted. */
export const vitest = (name, config, { node = process.execPath, environment = {} } = {}) => {
  const report = join(TALLIES, `${name.replaceAll(/\W+/g, '-')}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', config, ...reporters];
  return { name, report, steps: [{ name, command: node, args, environment }] };
};

/** Several checks under one name and one time. */
export const together = (name, checks) => ({ name, steps: checks.flatMap(one => one.steps) });

function runStep({ command, args, environment = {} }) {
  const options = { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...environment } };
  return spawnSync(command, args, options).status === 0;
}

function runTier({ name, report, steps }) {
  if (report) rmSync(report, { force: true });
  console.log(`\n== ${name}`);
  const started = performance.now();
  const results = steps.map(step => {
    const ok = runStep(step);
    if (!ok) console.log(`-- failed: ${step.name}`);
    return ok;
  });
  const minutes = (performance.now() - started) / 60_000;
  return { name, minutes, ...(report ? counted(report, results[0]) : tally(results)) };
}

const tally = results => ({
  passed: results.filter(ok => ok).length,
  failed: results.filter(ok => !ok).length,
});

/** Of a vitest run. One that ended badly without a failed test (it crashed, or found no tests) counts as failed. */
function counted(report, ok) {
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'));
  return { passed: numPassedTests, failed: ok ? 0 : Math.max(1, numFailedTests) };
}

/**
 * Runs the tiers one after another, all of them whatever happens, and prints minutes and counts of each.
 * The counts are kept under `name` for `.ci/run` to add up.
 */
export function runTiers(name, tiers) {
  mkdirSync(TALLIES, { recursive: true });
  const done = tiers.map(runTier);
  console.log('');
  for (const tier of done) {
    const { passed, failed, minutes } = tier;
    console.log(`${tier.name.padEnd(28)} ${minutes.toFixed(2)} min  ${passed} passed, ${failed} failed`);
  }
  const sum = key => done.reduce((total, tier) => total + tier[key], 0);
  const total = { passed: sum('passed'), failed: sum('failed'), minutes: sum('minutes') };
  writeFileSync(join(TALLIES, `tally-${name}.json`), JSON.stringify(total));
  console.log(
    `${name.padEnd(28)} ${total.minutes.toFixed(2)} min  ${total.passed} passed, ${total.failed} failed`,
  );
  process.exitCode = total.failed > 0 ? 1 : 0;
}
