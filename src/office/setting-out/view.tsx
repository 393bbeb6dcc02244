import { type PointerEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';
import type { Derived } from '../../results/derived.ts';
import type { Triangles } from '../../results/kernel.ts';
import type { PartGroup } from '../../results/piece.ts';
import { showQuantity, showSize } from '../../results/show.ts';
import { STANCES, type Stance } from '../ink/camera.ts';
import { type PickedName, Stage, shortName } from '../ink/stage.ts';
import { type TakingApart, takingApart } from '../ink/take-apart.ts';
import { usePerson, useShow } from '../person.ts';

type ViewName = keyof typeof STANCES;
const VIEWS: [ViewName, string][] = [
  ['turned', 'Turned view'],
  ['front', 'Front'],
  ['end', 'End'],
  ['plan', 'Plan'],
];

interface Props {
  derived: Derived;
  surfaces: ReadonlyMap<string, Triangles>;
  picked: string | undefined;
  group: PartGroup | undefined;
  onPick: (instance: string | undefined) => void;
}

/** The piece in ink with its three rods: turned by hand or key, picked, and taken apart in the order it was made. */
export default function View({ derived, surfaces, picked, group, onPick }: Props): ReactNode {
  const frame = useRef<HTMLDivElement>(null);
  const [stage, trouble] = useStage(frame, derived, surfaces);
  const [named, setNamed] = useState<ViewName | undefined>('turned');
  const [apart, setApart] = useState(false);
  const [share, setShare] = useState(0);
  const steps = useMemo(() => takingApart(derived.piece), [derived.piece]);
  usePicked(stage, picked, group, derived);
  useEffect(() => stage?.apart(apart ? share : 0), [stage, apart, share]);
  const face = (name: ViewName): void => {
    setNamed(name);
    stage?.face(STANCES[name]);
  };
  const turn = (stance: Stance): void => {
    setNamed(undefined);
    stage?.turn(stance);
  };
  return (
    <>
      <div className="viewbar">
        {VIEWS.map(([name, word]) => (
          <button
            key={name}
            type="button"
            className="seat"
            aria-pressed={named === name}
            onClick={() => face(name)}
          >
            {word}
          </button>
        ))}
        <button
          type="button"
          className="seat"
          aria-pressed={apart}
          disabled={steps.length === 0}
          onClick={() => {
            setApart(!apart);
            setShare(1);
          }}
        >
          Take apart
        </button>
      </div>
      <Sheet frame={frame} stage={stage} title={derived.title} onTurn={turn} onPick={onPick} />
      {derived.piece.instances.length === 0 && (
        <p className="say wait">Nothing is set out yet. Begin from a template, or bring in a job file.</p>
      )}
      {trouble && <p className="say wait">{trouble}</p>}
      {apart && <ApartSlider steps={steps} share={share} onChange={setShare} />}
    </>
  );
}

function useStage(
  frame: React.RefObject<HTMLDivElement | null>,
  derived: Derived,
  surfaces: ReadonlyMap<string, Triangles>,
): [Stage | undefined, string | undefined] {
  const [stage, setStage] = useState<Stage>();
  const [trouble, setTrouble] = useState<string>();
  const show = useShow();
  const { unit, ground } = usePerson();
  useEffect(() => {
    const host = frame.current;
    const canvas = host?.querySelector('canvas');
    const [under, over] = host?.querySelectorAll('svg') ?? [];
    if (!host || !canvas || !under || !over) return;
    let made: Stage;
    try {
      made = new Stage({ canvas, under, over });
    } catch {
      setTrouble('This browser draws no solids (WebGL 2 is off). The tables and drawings are all here.');
      return;
    }
    setStage(made);
    const sizes = new ResizeObserver(([entry]) => {
      if (entry) made.resize(Math.round(entry.contentRect.width), Math.round(entry.contentRect.height));
    });
    sizes.observe(host);
    const grounds = ['(prefers-color-scheme: dark)', 'print'].map(query => matchMedia(query));
    for (const ground of grounds) ground.addEventListener('change', made.ground);
    return () => {
      sizes.disconnect();
      for (const ground of grounds) ground.removeEventListener('change', made.ground);
      made.dispose();
      setStage(undefined);
    };
  }, [frame]);
  useEffect(() => stage?.load(derived.piece, surfaces), [stage, derived.piece, surfaces]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground is read from the page when it changes
  useEffect(() => stage?.ground(), [stage, ground]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: figures depend on the unit alone
  useEffect(
    () => stage?.figures(mm => showQuantity({ kind: 'length', value: mm }, show).figure),
    [stage, unit],
  );
  return [stage, trouble];
}

function usePicked(
  stage: Stage | undefined,
  picked: string | undefined,
  group: PartGroup | undefined,
  derived: Derived,
): void {
  const show = useShow();
  const name = useMemo((): PickedName | undefined => {
    if (!picked || !group) return undefined;
    const instance = derived.piece.instances.find(i => i.id === picked);
    return {
      instance: picked,
      title: `${group.mark}\u2002${group.name}`,
      size: showSize(group.size, show, instance?.round ?? false),
      short: shortName(group.name),
    };
  }, [picked, group, derived, show]);
  useEffect(() => stage?.pick(name), [stage, name]);
}

/** Degrees a key turns by. */
const KEY_TURN = 5;
const ARROWS: Record<string, [number, number]> = {
  ArrowLeft: [KEY_TURN, 0],
  ArrowRight: [-KEY_TURN, 0],
  ArrowUp: [0, KEY_TURN],
  ArrowDown: [0, -KEY_TURN],
};

function Sheet({
  frame,
  stage,
  title,
  onTurn,
  onPick,
}: {
  frame: React.RefObject<HTMLDivElement | null>;
  stage: Stage | undefined;
  title: string;
  onTurn: (stance: Stance) => void;
  onPick: (instance: string | undefined) => void;
}): ReactNode {
  const drag = useRef<{ x: number; y: number; from: Stance; moved: boolean }>(undefined);
  const spot = (event: PointerEvent<HTMLDivElement>): [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that is turned is neither a field set nor a form
    <div
      ref={frame}
      className="stage"
      role="group"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys turn it
      tabIndex={0}
      aria-label={`${title}, drawn to scale. Arrow keys turn it; the parts table picks a part.`}
      onKeyDown={event => {
        const by = ARROWS[event.key];
        if (!by || !stage) return;
        event.preventDefault();
        onTurn({ azimuth: stage.eye.azimuth + by[0], elevation: stage.eye.elevation + by[1] });
      }}
      onPointerDown={event => {
        if (!stage || event.button !== 0) return;
        const [x, y] = spot(event);
        drag.current = { x, y, from: stage.eye, moved: false };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={event => {
        const d = drag.current;
        if (!d) return;
        const [x, y] = spot(event);
        d.moved ||= Math.hypot(x - d.x, y - d.y) >= 4;
        if (d.moved)
          onTurn({
            azimuth: d.from.azimuth - (x - d.x) * 0.35,
            elevation: d.from.elevation + (y - d.y) * 0.3,
          });
      }}
      onPointerUp={event => {
        const d = drag.current;
        drag.current = undefined;
        if (d && !d.moved) onPick(stage?.at(...spot(event)));
      }}
      onPointerCancel={() => {
        drag.current = undefined;
      }}
    >
      <svg className="under" aria-hidden="true" />
      <canvas />
      <svg className="over" aria-hidden="true" />
    </div>
  );
}

function ApartSlider({
  steps,
  share,
  onChange,
}: {
  steps: readonly TakingApart[];
  share: number;
  onChange: (share: number) => void;
}): ReactNode {
  const at = Math.min(steps.length, Math.ceil(share * steps.length - 1e-9));
  const words = at === 0 ? 'together' : `${at} of ${steps.length}: ${steps[at - 1]!.name.toLowerCase()}`;
  return (
    <Slider
      className="apart"
      minValue={0}
      maxValue={steps.length}
      step={0.05}
      value={share * steps.length}
      onChange={v => onChange(v / steps.length)}
    >
      <Label>Taken apart</Label>
      <SliderOutput>{words}</SliderOutput>
      <SliderTrack className="track">
        {steps.map((step, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: steps keep their order
          <span key={`${step.name} ${i}`} className="station" />
        ))}
        <SliderThumb className="thumb" aria-label="Taken apart, last glue-up first" />
      </SliderTrack>
    </Slider>
  );
}
