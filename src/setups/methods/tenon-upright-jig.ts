import type { TenonCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import type { Blade, Jig, Machine } from '../../workshop/workshop.ts';
import { CAUTIONS, caught, twice, wasteFalls } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { sawDraft } from '../saw-draft.ts';
import { beyond, bladeOf, jigOf, machineOf, noBlade } from '../shop.ts';
import { FACE_WORDS, FACES, opposite, trueSize } from '../sizes.ts';
import { mitredTip } from './mitred-tip.ts';
import { shoulderDrafts } from './shoulders.ts';
import { likeSides, planTenon, reachHow, type Side, type TenonPlan } from './tenon-plan.ts';

/** Longest work that is stood on end at the saw: above, it tips and meets the ceiling (common practice). */
export const TALLEST_ON_END = 1800;

interface Kit {
  machine: Machine;
  blade: Blade;
  jig: Jig;
}

/** Shoulders on the sled, then cheeks on end in the upright jig, then edges the same way. */
export const tenonUprightJig: Method = {
  name: 'table saw, upright jig',
  makes: ['tenon'],
  attempt(task) {
    const cut = task.cut as TenonCut;
    const tenon: Task<TenonCut> = { ...task, cut };
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const jig = jigOf(task.workshop, machine, 'upright tenon jig');
    if (!jig) return refuse('the table saw has no upright jig');
    const sled = jigOf(task.workshop, machine, 'cross-cut sled');
    if (!sled) return refuse('the table saw has no cross-cut sled for the shoulders');
    const rip = bladeOf(task.workshop, machine, ['rip', 'combination', 'cross']);
    const cross = bladeOf(task.workshop, machine, ['cross', 'combination', 'rip']);
    if (!rip || !cross) return refuse(noBlade(task.workshop, machine));
    const plan = planTenon(tenon);
    if (plan.thickness.value <= 0.5 || plan.thickness.value > plan.stock + 0.01)
      return refuse(`a tenon of ${say1(plan.thickness.value)} does not lie in stock of ${say1(plan.stock)}`);
    const length = trueSize(task.instance, 'x');
    if (length > TALLEST_ON_END)
      return refuse(`the part is ${say1(length)} long, too tall to stand on end at the saw`);
    const limit =
      beyond(machine, { depth: plan.length.value, piece: length }) ??
      beyond(machine, { fence: jig.offset + (plan.stock + plan.thickness.value) / 2 });
    if (limit) return refuse(limit);
    const kit = { machine, blade: rip, jig };
    return made(
      ...shoulderDrafts(tenon, plan, machine, cross, sled),
      ...cheeks(tenon, plan, kit),
      ...edges(tenon, plan, kit),
      ...mitredTip(tenon, plan),
    );
  },
};

const wantedTenon = (plan: TenonPlan) => ({
  label: 'Tenon wanted',
  value: mm(plan.thickness.value),
  how: plan.thickness.how,
});

function cheeks(task: Task<TenonCut>, plan: TenonPlan, kit: Kit): Draft[] {
  if (plan.centred) return [turnedCheeks(task, plan, kit)];
  if (plan.high && plan.low) return fromOneFace(task, plan, kit);
  const only = plan.high ?? plan.low;
  return only ? [bareFaced(task, plan, kit, only)] : [];
}

/** Both cheeks with one fence: jig + (stock + tenon) / 2, work turned (SET-3). */
function turnedCheeks(task: Task<TenonCut>, plan: TenonPlan, { machine, blade, jig }: Kit): Draft {
  const t = plan.thickness.value;
  const kept = (plan.stock + t) / 2;
  const { low, high } = FACES[plan.axis];
  const stand = FACES[plan.otherAxis].high;
  const fall = (plan.stock - t) / 2 - blade.kerf;
  return sawDraft({
    what: 'Tenon cheeks',
    method: 'cheeks in the upright jig, turned',
    machine,
    blade,
    jig,
    jigAtFence: true,
    from: 'fence',
    kerfAt: kept,
    reads: 'near',
    how: `half of ${plan.stockWords} + ${say1(t)}`,
    rule: 'flipped',
    height: plan.length.value,
    heightHow: plan.length.how,
    heightRule: task.cut.through ? 'through' : 'reference',
    lays: [
      { label: 'face', down: task.cut.end, against: high, entry: task.cut.end, end: stand },
      { label: 'turned', down: task.cut.end, against: low, entry: task.cut.end, end: stand },
    ],
    work: { width: plan.stock, height: plan.length.value * 1.55 },
    end: task.cut.end,
    waste: { from: kept + blade.kerf, to: plan.stock },
    secondWaste: { from: 0, to: plan.stock - kept },
    keep: { from: plan.stock - kept, to: kept, label: 'tenon' },
    kerfSide: 'outside the tenon, away from the fence',
    wanted: wantedTenon(plan),
    correction: {
      share: 'half',
      tooBig: 'Too thick: bring the fence closer by half the difference.',
      tooSmall: 'Too thin: take the fence away by half the difference.',
    },
    trial: true,
    before: [`Parts and test piece came through the thicknesser in one pass, ${plan.stockWords}`],
    after: ['Leave the jig set until the joint is dry fitted'],
    cautions: [CAUTIONS.upright, wasteFalls(fall), twice('tenon')],
    mark: plan.axis === 'z' ? 'face side' : 'face edge',
  });
}

/** Off the middle: two fences from the face side; the second cut sets the size, wholly (SET-5). */
function fromOneFace(task: Task<TenonCut>, plan: TenonPlan, kit: Kit): Draft[] {
  const { machine, blade, jig } = kit;
  const t = plan.thickness.value;
  const inset = plan.high!.amount;
  const { low, high } = FACES[plan.axis];
  const stand = FACES[plan.otherAxis].high;
  const shared = {
    machine,
    blade,
    jig,
    jigAtFence: true,
    from: 'fence' as const,
    height: plan.length.value,
    heightHow: plan.length.how,
    heightRule: task.cut.through ? ('through' as const) : ('reference' as const),
    work: { width: plan.stock, height: plan.length.value * 1.55 },
    end: task.cut.end,
    trial: true,
    wanted: wantedTenon(plan),
  };
  const far = sawDraft({
    ...shared,
    what: 'Tenon cheeks, back',
    method: 'cheeks in the upright jig, from one face',
    kerfAt: inset + t,
    reads: 'near',
    how: `inset ${say1(inset)} + tenon ${say1(t)}`,
    rule: 'oneFace',
    lays: [{ label: 'face', down: task.cut.end, against: high, entry: task.cut.end, end: stand }],
    waste: { from: inset + t + blade.kerf, to: plan.stock },
    secondWaste: { from: 0, to: inset },
    keep: { from: inset, to: inset + t, label: 'tenon' },
    kerfSide: 'outside the tenon, away from the fence',
    correction: {
      share: 'whole',
      tooBig: 'Too thick: bring the fence closer by the whole difference.',
      tooSmall: 'Too thin: take the fence away by the whole difference.',
    },
    cautions: [CAUTIONS.upright, wasteFalls(plan.stock - inset - t - blade.kerf)],
    mark: plan.axis === 'z' ? 'face side' : 'face edge',
  });
  const fits = inset >= blade.kerf - 0.01;
  const front = fits
    ? sawDraft({
        ...shared,
        what: 'Tenon cheeks, face',
        method: 'cheeks in the upright jig, from one face',
        kerfAt: inset - blade.kerf,
        reads: 'far',
        how: `inset ${say1(inset)}`,
        rule: 'oneFace',
        lays: [{ label: 'face', down: task.cut.end, against: high, entry: task.cut.end, end: stand }],
        waste: { from: 0, to: inset - blade.kerf },
        keep: { from: inset, to: inset + t, label: 'tenon' },
        kerfSide: 'outside the tenon, towards the fence',
        trial: false,
        cautions: [CAUTIONS.upright, caught(inset - blade.kerf)],
        mark: plan.axis === 'z' ? 'face side' : 'face edge',
      })
    : sawDraft({
        ...shared,
        what: 'Tenon cheeks, face',
        method: 'cheeks in the upright jig, each from its own side',
        kerfAt: plan.stock - inset,
        reads: 'near',
        how: `${plan.stockWords} less inset ${say1(inset)}`,
        rule: 'reference',
        lays: [{ label: 'turned', down: task.cut.end, against: low, entry: task.cut.end, end: stand }],
        waste: { from: plan.stock - inset + blade.kerf, to: plan.stock },
        kerfSide: 'outside the tenon, away from the fence',
        trial: false,
        cautions: [CAUTIONS.upright, wasteFalls(inset - blade.kerf)],
      });
  return [far, front];
}

/** One shoulder only: the whole side stands against the jig and the fence is jig + tenon. */
function bareFaced(task: Task<TenonCut>, plan: TenonPlan, { machine, blade, jig }: Kit, side: Side): Draft {
  const t = plan.thickness.value;
  return sawDraft({
    what: 'Tenon cheek, bare-faced',
    method: 'cheek in the upright jig',
    machine,
    blade,
    jig,
    jigAtFence: true,
    from: 'fence',
    kerfAt: t,
    reads: 'near',
    how: `tenon ${say1(t)}`,
    rule: 'kerf',
    height: plan.length.value,
    heightHow: plan.length.how,
    heightRule: task.cut.through ? 'through' : 'reference',
    lays: [
      {
        label: FACE_WORDS[opposite(side.face)],
        down: task.cut.end,
        against: opposite(side.face),
        entry: task.cut.end,
        end: FACES[plan.otherAxis].high,
      },
    ],
    work: { width: plan.stock, height: plan.length.value * 1.55 },
    end: task.cut.end,
    waste: { from: t + blade.kerf, to: plan.stock },
    keep: { from: 0, to: t, label: 'tenon' },
    kerfSide: 'outside the tenon, away from the fence',
    wanted: wantedTenon(plan),
    correction: {
      share: 'whole',
      tooBig: 'Too thick: bring the fence closer by the whole difference.',
      tooSmall: 'Too thin: take the fence away by the whole difference.',
    },
    trial: true,
    cautions: [CAUTIONS.upright, wasteFalls(plan.stock - t - blade.kerf)],
  });
}

/** Edges of the tenon: the opposite edge against the jig, the kerf outside. */
function edges(task: Task<TenonCut>, plan: TenonPlan, { machine, blade, jig }: Kit): Draft[] {
  const width = trueSize(task.instance, plan.otherAxis);
  return likeSides(plan.edges).map(sides => {
    const side = sides[0]!;
    const kept = width - side.amount;
    return sawDraft({
      what: side.reach < plan.length.value - 0.01 ? 'Tenon edges at the haunch' : 'Tenon edges',
      method: 'edges in the upright jig',
      machine,
      blade,
      jig,
      jigAtFence: true,
      from: 'fence',
      kerfAt: kept,
      reads: 'near',
      how: `${say1(width)} less ${say1(side.amount)}`,
      rule: 'kerf',
      height: side.reach,
      heightHow: reachHow(plan, side),
      heightRule: 'reference',
      lays: sides.map((s, i) => ({
        label: i === 0 ? FACE_WORDS[opposite(s.face)] : 'turned',
        down: task.cut.end,
        against: opposite(s.face),
        entry: task.cut.end,
        end: FACES[plan.axis].high,
      })),
      work: { width, height: side.reach * 1.55 },
      end: task.cut.end,
      waste: { from: kept + blade.kerf, to: width },
      keep: { from: 0, to: kept, label: 'kept' },
      kerfSide: 'outside the tenon, away from the fence',
      cautions: [CAUTIONS.upright, wasteFalls(side.amount - blade.kerf)],
    });
  });
}
