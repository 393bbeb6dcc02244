import type { Figure } from '../figures/book.ts';
import { FigureFault, type Read, Withheld } from '../figures/evaluate.ts';
import { lengthOf, numberOf, textOf } from '../figures/measure.ts';
import { nearest } from '../figures/nearest.ts';
import type { LengthUnit } from '../quantities/length.ts';
import { FACE_AXIS } from '../results/cuts.ts';
import { copyFromId } from './copies.ts';
import { enteredFigure } from './entered.ts';
import { SIZE_OF_AXIS } from './faces.ts';
import type { JointCatalogue, JointFigure, JointReader, Role } from './joint-type.ts';
import type { Pairings } from './pairings.ts';
import type { JobDocument, JointDocument } from './schema.ts';

/** Figures of every joint: the maker's own where set, else the numbered rule of the trade. */
export function jointFigures(
  document: JobDocument,
  catalogue: JointCatalogue,
  pairings: Pairings,
  unit: LengthUnit,
  resolve: (name: string) => string,
): Figure[] {
  return Object.entries(document.joints ?? {}).flatMap(([id, joint]) => {
    const type = catalogue.get(joint.type);
    if (!type) return [];
    const set = joint.set ?? {};
    const figures = type.figures.map(f => {
      const own = set[f.name];
      const name = `joints.${id}.${f.name}`;
      const label = `${type.title.toLowerCase()}, ${f.label}`;
      return own === undefined
        ? ruled(name, label, f, id, joint, document, pairings)
        : checked(enteredFigure(name, label, `joints.${id}.set.${f.name}`, own, f.kind, unit, resolve), f);
    });
    for (const name of Object.keys(set))
      if (!type.figures.some(f => f.name === name))
        figures.push(
          stray(
            id,
            name,
            type.figures.map(f => f.name),
          ),
        );
    if (joint.count !== undefined)
      figures.push(
        enteredFigure(
          `joints.${id}.count.expected`,
          'joints expected',
          `joints.${id}.count`,
          joint.count,
          'count',
          unit,
          resolve,
        ),
      );
    figures.push({
      name: `joints.${id}.count`,
      label: `${type.title.toLowerCase()}, how many`,
      place: `joints.${id}`,
      kind: 'count',
      how: 'computed',
      formula: `where ${joint.from} meets ${joint.into}`,
      compute: () => numberOf(pairings.of(id)?.contacts.length ?? 0),
    });
    return figures;
  });
}

function stray(id: string, name: string, known: string[]): Figure {
  return {
    name: `joints.${id}.set.${name}`,
    label: name,
    place: `joints.${id}.set.${name}`,
    kind: 'length',
    how: 'entered',
    compute: () => {
      const near = nearest(name, known);
      throw new FigureFault(
        `this joint has no figure called ${name}`,
        near ? `did you mean ${near}?` : `known are ${known.join(', ')}`,
      );
    },
  };
}

/** A choice outside its list, or a negative size, is refused where it stands. */
function checked(figure: Figure, f: JointFigure): Figure {
  return {
    ...figure,
    compute: read => {
      const value = figure.compute(read);
      if (value.type === 'text' && f.choices && !f.choices.includes(value.value))
        throw new FigureFault(
          `${value.value} is not a choice for ${f.label}`,
          `choose one of ${f.choices.join(', ')}`,
        );
      if (value.type === 'number' && value.value < 0 && f.kind === 'length')
        throw new FigureFault(`${f.label} comes to ${value.value} mm`, 'it must not be below 0');
      return value;
    },
  };
}

function ruled(
  name: string,
  label: string,
  f: JointFigure,
  id: string,
  joint: JointDocument,
  document: JobDocument,
  pairings: Pairings,
): Figure {
  return {
    name,
    label,
    place: `joints.${id}`,
    kind: f.kind,
    how: 'rule',
    formula: f.formula,
    rule: f.rule,
    source: f.rule.source,
    compute: read => {
      const value = f.value(readerFor(id, joint, document, pairings, read));
      if (typeof value === 'string') return textOf(value);
      return f.kind === 'length' ? lengthOf(value) : numberOf(value);
    },
  };
}

function readerFor(
  id: string,
  joint: JointDocument,
  document: JobDocument,
  pairings: Pairings,
  read: Read,
): JointReader {
  const parts = document.parts ?? {};
  const partOf = (role: Role): string => copyFromId(joint[role], parts)?.part ?? joint[role];
  const number = (figure: string): number => {
    const value = read(figure);
    return value.type === 'number' ? value.value : Number.NaN;
  };
  const contact = () => {
    const first = pairings.of(id)?.contacts[0];
    // Why nothing meets is told once, at the joint.
    if (!first) throw new Withheld(`joints.${id}`);
    return first;
  };
  const size: JointReader['size'] = (role, which) => {
    if (!Object.hasOwn(parts, partOf(role))) throw new Withheld(`joints.${id}.${role}`);
    return number(`parts.${partOf(role)}.body.${which}`);
  };
  return {
    size,
    wall: role =>
      parts[partOf(role)]?.wall === undefined ? undefined : number(`parts.${partOf(role)}.wall`),
    depthOf: role =>
      size(role, SIZE_OF_AXIS[FACE_AXIS[role === 'into' ? contact().intoFace : contact().fromFace]]),
    figure: figure => number(`joints.${id}.${figure}`),
    word: figure => {
      const value = read(`joints.${id}.${figure}`);
      return value.type === 'text' ? value.value : '';
    },
    get contact() {
      return contact();
    },
    kind: role => parts[partOf(role)]?.kind ?? 'timber',
    material: role => parts[partOf(role)]?.material ?? '',
  };
}
