import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkWorkshopDocument, readJobFile } from '../../src/job-file/read.ts';
import type { Fault } from '../../src/results/fault.ts';

/** Every fault of a broken job file, with its line, and how much of the rest still derives. */
const FOLDER = new URL('../fixtures/broken/', import.meta.url);
const workshop = checkWorkshopDocument({ scantling: 'workshop/1', name: 'Test' }).workshop!;

function outcome(name: string): { faults: Fault[]; groups: number | undefined; joints: number | undefined } {
  const read = readJobFile(readFileSync(new URL(`${name}.yaml`, FOLDER), 'utf8'));
  const derived = read.document && deriveJob(read.document, workshop, { today: '2026-11-25' }).derived;
  return {
    faults: [...read.faults, ...(derived?.faults ?? []).map(read.locate)],
    groups: derived?.piece.groups.length,
    joints: derived?.piece.joints.length,
  };
}

interface Expected {
  /** Line, place, and a word of the fault and of the mend, of the first fault. */
  first: [line: number | undefined, place: string, fault: string, mend: string];
  /** Rows of the parts list and joints that still derive; absent when nothing can be opened. */
  rest?: [groups: number, joints: number];
}

const TABLE: Record<string, Expected> = {
  'alias-bomb': { first: [undefined, 'file', 'aliases', 'write the values out'] },
  'ambiguous-pair': {
    first: [25, 'joints.rail_to_block', 'block and block_2 at once', 'list the pairs'],
    rest: [2, 2],
  },
  'bad-date': { first: [4, 'deadline', 'a date is written 2026-12-24', 'docs/job-file.md'], rest: [2, 4] },
  'comma-decimal': { first: [21, 'parts.rail.width', 'has a comma', '59.5'], rest: [1, 0] },
  cycle: {
    first: [7, 'parameters.half', 'parameters.leg -> parameters.half -> parameters.leg', 'type a figure'],
    rest: [0, 0],
  },
  'deep-nesting': { first: [3, 'file', 'nested too deep', '24 levels'] },
  'division-by-nothing': {
    first: [11, 'parts.leg.length', 'divides by nothing', 'other than 0'],
    rest: [0, 0],
  },
  'duplicate-id': { first: [18, 'file', 'the same id stands here twice', 'another id'] },
  empty: { first: [1, 'file', 'not a Scantling file', 'scantling: job/1'] },
  'facing-along-the-length': {
    first: [15, 'parts.leg.facing', 'along the length itself', 'square to each other'],
    rest: [0, 0],
  },
  'forbidden-id': { first: [8, 'file', '__proto__ cannot be an id', 'another word'] },
  'half-a-part': {
    first: [26, 'parts.rail.repeat.count', 'the count comes to 2.5', 'whole number'],
    rest: [4, 2],
  },
  'huge-repeat': {
    first: [26, 'parts.rail.repeat.count', 'more than can be set out', 'check the count'],
    rest: [3, 2],
  },
  'list-for-entries': {
    first: [28, 'joints', 'where entries should be', 'entries with their ids'],
    rest: [2, 0],
  },
  'malformed-yaml': { first: [17, 'file', 'bracket or brace above is not closed', 'line the entries up'] },
  'mass-for-length': { first: [6, 'parameters.leg', 'this gives a mass', 'write a length'], rest: [0, 0] },
  'misspelt-field': {
    first: [22, 'parts.rail.thikness', 'is not known here', 'docs/job-file.md'],
    rest: [1, 0],
  },
  'misspelt-joint-figure': {
    first: [33, 'joints.rail_to_leg.set.tenon.lenght', 'no figure called tenon.lenght', 'tenon.length'],
    rest: [2, 4],
  },
  'negative-size': { first: [21, 'parts.rail.width', 'comes to -60 mm', 'above 0'], rest: [1, 0] },
  'newer-version': { first: [1, 'scantling', 'version 99', 'left as it is'] },
  'no-place': { first: [25, 'parts.rail.at', 'no place from front to back', 'centre_y'], rest: [1, 0] },
  'not-ours': { first: [1, 'scantling', 'is missing', 'scantling: job/1'] },
  'nothing-meets': { first: [29, 'joints.rail_to_leg', 'no rail meets leg', '3 mm apart'], rest: [2, 0] },
  'only-a-list': { first: [1, 'file', 'not a Scantling file', 'scantling: job/1'] },
  'screw-comes-through': {
    first: [40, 'joints.cleat_to_rail.set.length', 'comes through', 'use 35 mm'],
    rest: [3, 5],
  },
  'tab-indent': { first: [5, 'file', 'a tab is used to indent', 'spaces'] },
  'tenon-longer-than-leg': {
    first: [33, 'joints.rail_to_leg.set.tenon.length', '45 mm long, the member only 40', 'at most 26 mm'],
    rest: [2, 4],
  },
  'tenon-thicker-than-rail': {
    first: [33, 'joints.rail_to_leg.set.tenon.thickness', '24 mm thick, the rail only 20', '7 mm'],
    rest: [2, 4],
  },
  'unknown-joint': {
    first: [29, 'joints.rail_to_leg.type', 'no joint called mortice-and-tenon', 'mortise-and-tenon'],
    rest: [2, 0],
  },
  'unknown-material': {
    first: [20, 'parts.rail.material', 'no material is called oak-europaen', 'oak-european'],
    rest: [2, 4],
  },
  'unknown-name': { first: [11, 'parts.leg.length', 'no figure hieght', 'height'], rest: [0, 0] },
  'unknown-part': { first: [30, 'joints.rail_to_leg.from', 'no part called rial', 'rail'], rest: [2, 0] },
  'workshop-instead': { first: [1, 'scantling', 'this is a workshop file', 'open a job file'] },
  'wrong-count': {
    first: [32, 'joints.rail_to_leg.count', '4 joints are made, 6 are expected', 'mend the places'],
    rest: [2, 4],
  },
  'wrong-unit': { first: [11, 'parts.leg.length', 'a length minus a plain number', '25 mm'], rest: [0, 0] },
};

test('every broken file stands in the table', () => {
  const files = readdirSync(FOLDER).map(f => f.replace(/\.yaml$/, ''));
  expect(files.filter(f => f !== 'healthy').sort()).toEqual(Object.keys(TABLE).sort());
});

test('the healthy file they are all made from has no fault', () => {
  expect(outcome('healthy')).toMatchObject({ faults: [], groups: 2, joints: 4 });
});

test.each(Object.entries(TABLE))(
  '%s: place, fault and mend are named, the rest still derives',
  (name, { first, rest }) => {
    const { faults, groups, joints } = outcome(name);
    const [line, place, fault, mend] = first;
    expect(faults[0]).toMatchObject({ place, ...(line === undefined ? {} : { line }) });
    expect(faults[0]?.fault).toContain(fault);
    expect(faults[0]?.mend).toContain(mend);
    expect([groups, joints]).toEqual(rest ?? [undefined, undefined]);
  },
);

test('what follows from a fault is not told as another', () => {
  for (const name of [
    'wrong-unit',
    'cycle',
    'comma-decimal',
    'unknown-part',
    'nothing-meets',
    'tab-indent',
    'screw-comes-through',
  ])
    expect(outcome(name).faults, name).toHaveLength(1);
});
