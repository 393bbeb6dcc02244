/** One line of what is being done, on stderr, so that the output of a command stays clean. */
export const say = line => process.stderr.write(`${line}\n`);

/** Stops with the reason and the command that mends it. */
export function stop(reason, mend) {
  say(`\n${reason}\n${mend}`);
  process.exit(1);
}
