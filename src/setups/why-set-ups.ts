import type { Piece } from '../results/piece.ts';
import { minutes, mm, q, text } from '../results/quantity.ts';
import type { SetUp, SetUpPlan } from '../results/setups.ts';
import type { Rule } from '../results/source.ts';
import type { Why } from '../results/why.ts';
import { SET_RULES } from './rules.ts';

const RULES: ReadonlyMap<string, Rule> = new Map(Object.values(SET_RULES).map(r => [r.number, r]));

/**
 * Why a figure of the set-ups is what it is: `setups.value`, `setups.bound`, `setups.partByPart`, `setups.ID`,
 * `setups.ID.fence` (any setting by name, spaces as hyphens), `setups.ID.changeOver`, `setups.ID.wanted`,
 * `setups.ID.correction`. Undefined for a path that names none.
 */
export function whySetUp(figure: string, plan: SetUpPlan, piece: Piece): Why | undefined {
  const [root, id, name] = figure.split('.');
  if (root !== 'setups' || id === undefined) return undefined;
  if (id === 'value' || id === 'bound' || id === 'partByPart') return wholePlan(figure, id, plan);
  const setUp = plan.setups.find(s => s.id === id);
  if (!setUp) return undefined;
  if (name === undefined)
    return {
      figure,
      label: setUp.title,
      value: text(`${setUp.machine}, ${setUp.tool}`),
      how: 'rule',
      rule: SET_RULES.alike,
      inputs: setUp.settings.map(s => settingWhy(setUp, slug(s.name), piece)).filter(w => w !== undefined),
    };
  if (name === 'changeOver')
    return {
      figure,
      label: 'change-over',
      value: minutes(setUp.changeOver),
      how: 'computed',
      formula: setUp.changeHow ?? '',
      source: { text: 'minutes per change of the workshop file', basis: 'workshop' },
      inputs: [],
    };
  if (name === 'wanted' && setUp.wanted)
    return {
      figure,
      label: setUp.wanted.label,
      value: setUp.wanted.value,
      how: 'rule',
      formula: setUp.wanted.how,
      rule: SET_RULES.fit,
      inputs: partInputs(setUp, piece),
    };
  if (name === 'correction' && setUp.correction)
    return {
      figure,
      label: 'correction after the trial cut',
      value: text(setUp.correction.share),
      how: 'rule',
      formula: `${setUp.correction.tooBig} ${setUp.correction.tooSmall}`,
      rule: SET_RULES.correction,
      inputs: [],
    };
  return settingWhy(setUp, name, piece);
}

const slug = (name: string): string => name.replace(/\s+/g, '-');

function settingWhy(setUp: SetUp, name: string, piece: Piece): Why | undefined {
  const setting = setUp.settings.find(s => slug(s.name) === name || s.name === name);
  if (!setting) return undefined;
  const rule = setting.rule === undefined ? undefined : RULES.get(setting.rule);
  const kerf: Why[] =
    setUp.removal && setUp.removal.width > 0 && (setting.name === 'fence' || setting.name === 'stop')
      ? [
          {
            figure: `setups.${setUp.id}.tool`,
            label: setUp.tool,
            value: mm(setUp.removal.width),
            how: 'entered',
            source: { text: 'kerf or diameter of the workshop file', basis: 'workshop' },
            inputs: [],
          },
        ]
      : [];
  return {
    figure: `setups.${setUp.id}.${name}`,
    label: `${setting.name}${setting.to ? `, to the ${setting.to}` : ''}`,
    value: setting.value,
    how: 'rule',
    formula: setting.how,
    ...(rule ? { rule, source: rule.source } : {}),
    inputs: [
      ...(setUp.wanted
        ? [
            {
              figure: `setups.${setUp.id}.wanted`,
              label: setUp.wanted.label,
              value: setUp.wanted.value,
              how: 'rule' as const,
              formula: setUp.wanted.how,
              inputs: [],
            },
          ]
        : []),
      ...kerf,
      ...partInputs(setUp, piece),
    ],
  };
}

/** Sizes of the parts that are run, measured where somebody measured. */
function partInputs(setUp: SetUp, piece: Piece): Why[] {
  const seen = new Set<string>();
  return setUp.runs.flatMap(run => {
    const instance = piece.instances.find(i => i.id === run.instance);
    if (!instance || seen.has(instance.part)) return [];
    seen.add(instance.part);
    const measured = instance.measured?.thickness;
    return [
      {
        figure: `parts.${instance.part}.thickness`,
        label: `${instance.name}, thickness`,
        value: mm(measured ?? instance.size.thickness),
        how: measured === undefined ? ('computed' as const) : ('measured' as const),
        inputs: [],
      },
    ];
  });
}

function wholePlan(figure: string, which: 'value' | 'bound' | 'partByPart', plan: SetUpPlan): Why {
  const labels = {
    value: 'change-over minutes of this order',
    bound: 'no order needs less',
    partByPart: 'change-over minutes part by part',
  };
  return {
    figure,
    label: labels[which],
    value: minutes(plan[which]),
    how: 'computed',
    formula:
      which === 'value'
        ? 'sum of the change-overs, machine by machine'
        : which === 'bound'
          ? 'Lagrangian bound and exact search over each machine, added up'
          : 'the same set-ups visited again for each part of the list in turn',
    rule: SET_RULES.alike,
    inputs:
      which === 'value'
        ? plan.setups
            .filter(s => s.changeOver > 0)
            .map(s => ({
              figure: `setups.${s.id}.changeOver`,
              label: `${s.number} ${s.title}`,
              value: q('time', s.changeOver),
              how: 'computed' as const,
              ...(s.changeHow ? { formula: s.changeHow } : {}),
              inputs: [],
            }))
        : [],
  };
}
