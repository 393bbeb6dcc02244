/** The tables of outside checks: published figures against ours, and published furniture against its printed lists. */
import { outsideMarkdown, outsideRows } from '../tests/outside/report.ts';
import { publishedTable } from '../tests/published/report.ts';

export async function run(args: string[]): Promise<void> {
  const wanted = args[0] ?? 'all';
  if (wanted !== 'published') {
    const rows = await outsideRows();
    console.log(outsideMarkdown(rows));
    console.log(`\n${rows.filter(r => r.agrees).length} of ${rows.length} agree.\n`);
  }
  if (wanted !== 'outside') console.log(publishedTable());
}
