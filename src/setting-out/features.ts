import type { FigureBook } from '../figures/book.ts';
import type { Cut } from '../results/cuts.ts';
import { ON_PART } from '../results/cuts.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Instance } from '../results/piece.ts';
import { localFace } from './faces.ts';
import { type Context, Lacking, sound } from './feature-context.ts';
import type { GroupContext } from './groups.ts';
import { mirrorCut } from './mirror-cut.ts';
import { edgeWork, groove, hole, mitre, notch, rebate, taper } from './plain-features.ts';
import type { FeatureDocument, JobDocument } from './schema.ts';
import { bent, bevel, cutOut, line, roundedCorner, turned } from './shaped-features.ts';
import { unsound } from './sound-cuts.ts';

const MAKERS: Record<FeatureDocument['type'], (c: Context) => Cut[]> = {
  rebate,
  groove,
  notch,
  hole,
  countersink: hole,
  chamfer: c => edgeWork(c, 'chamfer'),
  'round-over': c => edgeWork(c, 'round-over'),
  taper,
  mitre,
  curve: c => line(c, 'curve'),
  scribe: c => line(c, 'scribe'),
  'cut-out': cutOut,
  bevel,
  'rounded-corner': roundedCorner,
  turned,
  bent,
};

/** Neutral line of a bend where the workshop says nothing: between a third for tight bends and a half for wide ones (remembered). */
const USUAL_K = 0.42;

/** Cuts of a feature on one copy, in its cut-size frame. Mirrored copies get the mirror image. */
export function featureCuts(
  id: string,
  feature: FeatureDocument,
  instance: Instance,
  origin: Instance,
  book: FigureBook,
  document: JobDocument,
  shop: GroupContext,
): { cuts: Cut[]; faults: Fault[] } {
  if (feature.after !== undefined && !knowsAssembly(feature.after, document))
    return {
      cuts: [],
      faults: [
        fault(
          `features.${id}.after`,
          `there is no assembly called ${feature.after}`,
          'name an assembly of this job',
        ),
      ],
    };
  const context: Context = {
    id,
    feature,
    size: instance.size,
    stage: feature.after === undefined ? ON_PART : { when: 'after', assembly: feature.after },
    face: word => localFace(word, origin.frame),
    get: field => sound(field, book.number(`features.${id}.${field}`)),
    need: field => {
      const value = sound(field, book.number(`features.${id}.${field}`));
      if (value === undefined) throw new Lacking(field, `${field} is not given`, `give ${field}`);
      return value;
    },
    start: instance.added.end1 ?? 0,
    round: instance.round,
    material: instance.material,
    kFactor: shop.kFactor ?? USUAL_K,
    points: () =>
      feature.points?.map((_, i): [number, number] => {
        const [at, by] = [0, 1].map(k => book.number(`features.${id}.points.${i}.${k}`));
        if (at === undefined || by === undefined)
          throw new Lacking(`points.${i}`, 'the point is not given', 'give a station and a size');
        return [at, by];
      }),
  };
  try {
    const cuts = MAKERS[feature.type](context);
    const wrong = cuts.map(c => unsound(c, instance.size)).find(Boolean);
    if (wrong) return { cuts: [], faults: [fault(`features.${id}${wrong.field}`, wrong.fault, wrong.mend)] };
    return {
      cuts: instance.mirrored === origin.mirrored ? cuts : cuts.map(c => mirrorCut(c, instance.size)),
      faults: [],
    };
  } catch (error) {
    if (!(error instanceof Lacking)) throw error;
    const own = book.outcome(`features.${id}.${error.field}`);
    const told = !own.ok && own.because !== `features.${id}.${error.field}`;
    return {
      cuts: [],
      faults:
        !own.ok && (told || own.fault)
          ? []
          : [fault(`features.${id}.${error.field}`, error.message, error.mend)],
    };
  }
}

const knowsAssembly = (id: string, document: JobDocument): boolean =>
  Object.entries(document.assemblies ?? {}).some(
    ([a, d]) => a === id || (d.mirror !== undefined && `${a}_${d.mirror}` === id),
  );
