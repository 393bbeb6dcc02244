/** Opens the store of the folder given, says so, and holds it until killed. */
import { openStore } from '../../src/store/store.ts';

await openStore(process.argv[2]!);
process.stdout.write('open\n');
setInterval(() => {}, 1000);
