import type { ReactNode } from 'react';
import type { Derived } from '../../results/derived.ts';
import { usePorts } from '../ports.ts';
import { WhyNote } from '../why.tsx';

/** What can be had of the job on paper or as a file, made from it as it stands. */
const PAPERS: { name: string; title: string; say: string }[] = [
  {
    name: 'pack.pdf',
    title: 'Job pack',
    say: 'Summary with picture, parts, marking out, cutting layouts, set-up cards, days, checks with their cautions. A4.',
  },
  {
    name: 'labels.pdf',
    title: 'Labels',
    say: 'One for every part: mark, size, grain, lipped edges, a code to scan. A4, three by eight of 70 by 37 mm.',
  },
  {
    name: 'parts.csv',
    title: 'Parts list',
    say: 'Every mark with its cut size and blank, for a table of your own.',
  },
  {
    name: 'shopping.csv',
    title: 'Shopping list',
    say: 'What is to be bought, from whom, at what price.',
  },
  {
    name: 'piece.step',
    title: 'Solids',
    say: 'Every part with its cuts, exact, where it stands in the piece: STEP (ISO 10303-21), mm.',
  },
];

export function PapersPage({ id, derived }: { id: string; derived: Derived }): ReactNode {
  const { api } = usePorts();
  return (
    <main className="papers">
      <h2>Papers of {derived.title}</h2>
      <ul>
        {PAPERS.map(paper => (
          <li key={paper.name}>
            <h3 className="serif">{paper.title}</h3>
            <p className="say">{paper.say}</p>
            <a className="btn" href={api.paper(id, paper.name)} target="_blank" rel="noreferrer">
              Open {paper.name}
            </a>
          </li>
        ))}
        <li>
          <h3 className="serif">Job file</h3>
          <p className="say">The setting-out as text, to keep, send or work on with the command line.</p>
          <a className="btn" href={api.file(id)} download>
            Save the job file
          </a>
        </li>
      </ul>
      <WhyNote hint={false} />
      <p className="say modest">Every sheet names its setting-out and its date.</p>
    </main>
  );
}
