import { type ReactNode, useEffect, useRef, useState } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  FileTrigger,
  Input,
  Label,
  Popover,
  SearchField,
  TextField,
} from 'react-aria-components';
import type { Fault } from '../../results/fault.ts';
import { showDate } from '../../results/show.ts';
import { type JobLine, usePorts } from '../ports.ts';
import { jobAddress } from '../route.ts';
import { Faults } from '../setting-out/faults.tsx';
import { ShowMenu } from '../shell/show-menu.tsx';

interface Found {
  jobs: JobLine[];
  total: number;
}

const go = (id: string): void => {
  location.hash = jobAddress(id);
};

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Wait this long after the last key before the store is asked, milliseconds. */
const PAUSE = 120;

/** The jobs of the workshop: last saved first, found by any word. */
export function JobsScreen(): ReactNode {
  const { api } = usePorts();
  const [search, setSearch] = useState('');
  const [found, setFound] = useState<Found>();
  const [trouble, setTrouble] = useState<string>();
  const [taken, setTaken] = useState<TakenIn>();
  useEffect(() => {
    document.title = 'Jobs: Scantling';
  }, []);
  useEffect(() => {
    let current = true;
    const timer = setTimeout(
      () =>
        api
          .jobs(search)
          .then(answer => {
            if (!current) return;
            setFound(answer);
            setTrouble(undefined);
          })
          .catch(error => current && setTrouble(wordsOf(error))),
      search ? PAUSE : 0,
    );
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [api, search]);
  return (
    <div className="screen on-jobs">
      <header className="head">
        <a className="mark" href="#/" aria-current="page">
          Scantling
        </a>
        <div className="job">
          <h1 className="serif">Jobs</h1>
          {found && <span className="quiet">{found.total} in all</span>}
        </div>
        <nav aria-label="Jobs">
          <NewJob onTrouble={setTrouble} />
          <ImportJob onTrouble={setTrouble} onFaults={setTaken} />
        </nav>
        <ShowMenu />
      </header>
      <main className="jobs">
        <SearchField className="find" value={search} onChange={setSearch} aria-label="Find a job">
          <Input placeholder="Title, number, brief or client" />
          <Button className="act">Clear</Button>
        </SearchField>
        {trouble && (
          <p className="say trouble" role="alert">
            {trouble}
          </p>
        )}
        {taken && <TakenInNote taken={taken} />}
        {found && <JobTable found={found} search={search} />}
        {!found && !trouble && <p className="say">Reading the jobs.</p>}
      </main>
    </div>
  );
}

/** A date with its year where that is not this one. */
const dated = (iso: string, today: string): string =>
  showDate(iso, 'short') + (iso.slice(0, 4) === today.slice(0, 4) ? '' : ` ${iso.slice(0, 4)}`);

function JobTable({ found, search }: { found: Found; search: string }): ReactNode {
  const today = usePorts().today();
  if (found.jobs.length === 0)
    return search ? (
      <p className="say none">No job has all of these words.</p>
    ) : (
      <section className="none">
        <p className="say">No jobs yet. Begin one, or bring in a job file.</p>
        <p className="say quiet">A job is one setting-out: parts, layouts, days and price follow from it.</p>
      </section>
    );
  return (
    <>
      <table className="joblist">
        <thead>
          <tr>
            <th scope="col">Job</th>
            <th scope="col">No.</th>
            <th scope="col">Client</th>
            <th scope="col" className="n">
              Setting-out
            </th>
            <th scope="col" className="n">
              Deadline
            </th>
            <th scope="col" className="n">
              Saved
            </th>
          </tr>
        </thead>
        <tbody>
          {found.jobs.map(job => (
            <tr key={job.id} onClick={() => go(job.id)}>
              <th scope="row">
                <a href={jobAddress(job.id)}>{job.title || 'Without a title'}</a>
              </th>
              <td>{job.number}</td>
              <td>{job.client?.name ?? ''}</td>
              <td className="n">{job.settingOut}</td>
              <td className="n">{job.deadline ? dated(job.deadline, today) : ''}</td>
              <td className="n quiet">{dated(job.savedAt, today)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {found.jobs.length < found.total && (
        <p className="quiet">
          {found.jobs.length} of {found.total}; search for the rest.
        </p>
      )}
    </>
  );
}

function NewJob({ onTrouble }: { onTrouble: (words: string) => void }): ReactNode {
  const { api } = usePorts();
  const [title, setTitle] = useState('');
  const [template, setTemplate] = useState('');
  const [templates, setTemplates] = useState<{ id: string; title: string }[]>([]);
  const read = (open: boolean): void => {
    if (!open) return;
    api.templates().then(setTemplates, error => onTrouble(wordsOf(error)));
  };
  return (
    <DialogTrigger onOpenChange={read}>
      <Button className="act">New job</Button>
      <Popover className="slip" placement="bottom end" offset={8}>
        <Dialog aria-label="New job" className="slip-body">
          <form
            onSubmit={event => {
              event.preventDefault();
              api.create(title.trim(), template || undefined).then(go, error => onTrouble(wordsOf(error)));
            }}
          >
            <TextField value={title} onChange={setTitle} isRequired autoFocus>
              <Label className="quiet">What it is</Label>
              <Input className="line" placeholder="Bench for the porch" maxLength={200} />
            </TextField>
            {templates.length > 0 && (
              <label className="pick-from">
                <span className="quiet">Begin from</span>
                <select value={template} onChange={event => setTemplate(event.target.value)}>
                  <option value="">an empty setting-out</option>
                  {templates.map(t => (
                    <option key={t.id} value={t.id}>
                      {t.title}
                    </option>
                  ))}
                </select>
              </label>
            )}
            <Button type="submit" className="btn">
              Begin
            </Button>
          </form>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

/** A job file that is in the store, with what is wrong in it. */
interface TakenIn {
  id: string;
  name: string;
  faults: readonly Fault[];
}

function TakenInNote({ taken: { id, name, faults } }: { taken: TakenIn }): ReactNode {
  return (
    <section className="taken" role="status">
      <p className="say">
        {name} is taken in. What could not be read is left out: <a href={jobAddress(id)}>open the job</a>.
      </p>
      <Faults faults={faults} />
    </section>
  );
}

function ImportJob({
  onTrouble,
  onFaults,
}: {
  onTrouble: (words: string) => void;
  onFaults: (taken: TakenIn) => void;
}): ReactNode {
  const { api } = usePorts();
  const busy = useRef(false);
  const take = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (!file || busy.current) return;
    busy.current = true;
    try {
      const { id, faults } = await api.importJob(await file.text());
      if (faults.length === 0) go(id);
      else onFaults({ id, name: file.name, faults });
    } catch (error) {
      onTrouble(`${file.name} cannot be taken in. ${wordsOf(error)}`);
    } finally {
      busy.current = false;
    }
  };
  return (
    <FileTrigger acceptedFileTypes={['.yaml', '.yml', '.json']} onSelect={files => void take(files)}>
      <Button className="act">Bring in a job file</Button>
    </FileTrigger>
  );
}
