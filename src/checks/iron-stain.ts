/** Iron against timber with tannin turns black with the first damp. */
import { sourceOf } from '../reference/sourced.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, speciesOf, type View } from './view.ts';
import { capital, mid } from './words.ts';

export const CHK_36 = rule(
  'CHK-36',
  'Plain iron and steel do not touch timber that holds much tannin.',
  'Iron, tannin and water make ink: oak and chestnut go black.',
  'USDA treesearch 48449; stainless, brass or a coat keeps them apart',
  'read',
);

const isIron = (part: Instance): boolean =>
  part.kind !== 'timber' && /^(mild-)?steel|^steel-|iron/.test(part.material);

function judge({ piece }: CheckInput, view: View): Check[] {
  const meetings = piece.joints.flatMap(joint => {
    const parts = joint.instances.flatMap(id => view.instance(id) ?? []);
    const iron = parts.find(isIron);
    return iron
      ? parts.flatMap(timber => {
          const stain = speciesOf(timber)?.ironStain;
          return stain && stain.value !== 'low' ? [{ joint, iron, timber, stain }] : [];
        })
      : [];
  });
  return gather(meetings, m => `${m.iron.part} ${m.timber.part}`).map(of => {
    const { joint, iron, timber, stain } = of[0]!;
    return finding({
      check: 'iron stain',
      subject: joint.joint,
      severity: stain.value === 'high' ? 'attend' : 'note',
      rule: CHK_36,
      title: `${capital(iron.name)} will stain ${mid(timber.name)}`,
      figure: null,
      limit: null,
      unit: 'text',
      remedy: 'Take stainless or brass, or coat the metal before it touches the wood.',
      say: say('{iron} is {metal} against {timber}, {stain} in tannin.', {
        iron: text(capital(iron.name)),
        metal: text(iron.material),
        timber: text(timber.material),
        stain: text(stain.value),
      }),
      sources: [sourceOf(stain)],
    });
  });
}

export const ironStainCheck: CheckMaker = { name: 'iron stain', rules: [CHK_36], judge };
