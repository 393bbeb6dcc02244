import type { ReactNode } from 'react';
import { Button, Dialog, DialogTrigger, Label, Popover, Radio, RadioGroup } from 'react-aria-components';
import { choose, type Person, usePerson } from '../person.ts';

const UNITS: [Person['unit'], string][] = [
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['in', 'inches'],
];
const GROUNDS: [Person['ground'], string][] = [
  ['system', 'as the system'],
  ['light', 'light'],
  ['dark', 'dark'],
];

/** Units and ground of this person's screen. */
export function ShowMenu(): ReactNode {
  const person = usePerson();
  return (
    <DialogTrigger>
      <Button className="act show">in {UNITS.find(([u]) => u === person.unit)?.[1]}</Button>
      <Popover className="slip" placement="bottom end" offset={8}>
        <Dialog aria-label="How it is shown" className="slip-body">
          <Choice
            label="Lengths in"
            value={person.unit}
            options={UNITS}
            onChange={unit => choose({ unit })}
          />
          <Choice
            label="Ground"
            value={person.ground}
            options={GROUNDS}
            onChange={ground => choose({ ground })}
          />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

function Choice<T extends string>({
  label,
  value,
  options,
  onChange,
}: {
  label: string;
  value: T;
  options: readonly [T, string][];
  onChange: (value: T) => void;
}): ReactNode {
  return (
    <RadioGroup className="choice" value={value} onChange={v => onChange(v as T)}>
      <Label className="quiet">{label}</Label>
      <div className="row">
        {options.map(([key, word]) => (
          <Radio key={key} value={key} className="option">
            {word}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
