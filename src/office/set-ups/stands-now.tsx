import type { ReactNode } from 'react';
import type { SetUp } from '../../results/setups.ts';
import type { JobSession } from '../session.ts';

/** As the job writes it: lengths with their unit, nothing for no jig. */
function written({ tool, jig, fence, height, tilt, mitre }: NonNullable<SetUp['state']>) {
  const mm = (length: number): string => `${Math.round(length * 100) / 100} mm`;
  return {
    tool,
    ...(jig ? { jig } : {}),
    ...(fence === undefined ? {} : { fence: mm(fence) }),
    ...(height === undefined ? {} : { height: mm(height) }),
    tilt,
    ...(mitre === undefined ? {} : { mitre }),
  };
}

/** Keeps what the machine stands at once this set-up is ready: the order starts from there. */
export function StandsNow({ setup, session }: { setup: SetUp; session: JobSession }): ReactNode {
  const { state } = setup;
  const machine = setup.machineId;
  if (!state || machine === undefined) return null;
  const value = written(state);
  return (
    <p className="row">
      <button
        type="button"
        className="act"
        onClick={() => void session.commit([{ path: ['standing', machine], value }])}
      >
        {setup.machine} stands so now: start the order here
      </button>
    </p>
  );
}
