/** Runs one benchmark: `npm run measure -- NAME args`. Each is a file here that exports `run(args)`. */
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';

interface Benchmark {
  run(args: string[]): Promise<void> | void;
}

const names = readdirSync(new URL('.', import.meta.url))
  .filter(file => file.endsWith('.ts') && file !== 'measure.ts')
  .map(file => file.slice(0, -'.ts'.length));

const [name, ...args] = process.argv.slice(2);
if (name === undefined || !names.includes(name)) {
  console.error(`Name what to measure: ${names.join(', ')}`);
  process.exitCode = 2;
} else {
  const processors = cpus();
  console.log(
    `${name}: Node ${process.versions.node}, ${processors.length} x ${processors[0]?.model ?? 'unknown'}`,
  );
  const started = performance.now();
  await ((await import(`./${name}.ts`)) as Benchmark).run(args);
  // On the error channel: the last line of a benchmark's own output is its result.
  console.error(`${name}: took ${((performance.now() - started) / 1000).toFixed(1)} s`);
}
