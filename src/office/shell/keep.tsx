import { type ReactNode, useState } from 'react';
import { Button, Dialog, DialogTrigger, Input, Label, Popover, TextField } from 'react-aria-components';
import { showDate } from '../../results/show.ts';
import type { KeptLine } from '../ports.ts';
import type { JobSession, JobView } from '../session.ts';

/** Freezes the setting-out under its number, and goes back to one that was kept before. */
export function Keep({ session, view }: { session: JobSession; view: JobView }): ReactNode {
  const [name, setName] = useState('');
  const [kept, setKept] = useState<readonly KeptLine[]>([]);
  const number = view.state?.settingOut;
  const read = (open: boolean): void => {
    if (open)
      session.keptList().then(setKept, () => {
        setKept([]);
      });
  };
  return (
    <DialogTrigger onOpenChange={read}>
      <Button className="act small">Keep this setting-out</Button>
      <Popover className="slip" placement="top start" offset={10}>
        <Dialog aria-label="Keep this setting-out" className="slip-body">
          {({ close }) => (
            <>
              <form
                onSubmit={event => {
                  event.preventDefault();
                  void session.keep(name.trim() || `Setting-out ${number}`);
                  setName('');
                  close();
                }}
              >
                <TextField value={name} onChange={setName} autoFocus>
                  <Label className="quiet">What it is called, if anything</Label>
                  <Input className="line" placeholder={`Setting-out ${number}`} maxLength={200} />
                </TextField>
                <p className="say">It is frozen as it stands; work goes on in the next.</p>
                <Button type="submit" className="btn">
                  Keep setting-out {number}
                </Button>
              </form>
              <Before
                kept={kept}
                onBack={n => {
                  void session.goBackTo(n);
                  close();
                }}
              />
            </>
          )}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

function Before({
  kept,
  onBack,
}: {
  kept: readonly KeptLine[];
  onBack: (number: number) => void;
}): ReactNode {
  if (kept.length === 0) return null;
  return (
    <section className="kept" aria-labelledby="kept">
      <h2 id="kept">Kept before</h2>
      <ul>
        {kept.map(line => (
          <li key={line.number}>
            <span>
              {line.number} {line.name} <span className="quiet">{showDate(line.at, 'short')}</span>
            </span>
            <Button
              className="act"
              aria-label={`Go back to ${line.number}`}
              onPress={() => onBack(line.number)}
            >
              Go back
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
