import type { ReactNode } from 'react';
import type { Setting } from '../../results/setups.ts';
import { Figure } from '../figure.tsx';
import { useShow } from '../person.ts';

/** At the saw the trailing zero tells the precision: 45.0. */
export function SettingFigure({ setting, bare = false }: { setting: Setting; bare?: boolean }): ReactNode {
  const { unit } = useShow();
  const { kind, value } = setting.value;
  if (kind !== 'length' || typeof value !== 'number' || unit !== 'mm')
    return <Figure of={setting.value} bare={bare} />;
  return (
    <>
      {value.toFixed(1).replace('-', '\u2212')}
      {!bare && <span className="u">mm</span>}
    </>
  );
}
