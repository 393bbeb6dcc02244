/** Does each coat go over the one below it, on this material, at this temperature, after its wait? */
import { compatibility } from '../reference/finish-compatibility.ts';
import type { FinishFamily, FinishProduct } from '../reference/finish-row.ts';
import { finishProduct } from '../reference/finishes.ts';
import { sourceOf } from '../reference/sourced.ts';
import type { Check, Severity } from '../results/checks.ts';
import type { FinishRecipe, FinishStep } from '../results/commission.ts';
import { say } from '../results/message.ts';
import { minutes, q, text } from '../results/quantity.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import type { View } from './view.ts';
import { capital, mid } from './words.ts';

export const CHK_17 = rule(
  'CHK-17',
  'Each coat goes over the one below it; where the tables are silent a sample on an offcut of the job decides.',
  'A coat that does not hold peels, crazes or lifts the one below, and the piece is stripped.',
  'the table of finishes over one another',
  'common practice',
);

export const CHK_18 = rule(
  'CHK-18',
  'A coat waits as long as the tin says before the next.',
  'A soft coat is torn or trapped: it stays tacky.',
  'the tin, else the table of finishes',
  'read',
);

export const CHK_19 = rule(
  'CHK-19',
  'The shop is no colder than the finish asks.',
  'Cold, it does not dry, and a film stays soft or turns cloudy.',
  'the tin, else the table of finishes',
  'read',
);

export const CHK_20 = rule(
  'CHK-20',
  'A finish for timber goes on timber, a lacquer for metal on metal.',
  'Neither holds on the other.',
  'common practice',
  'common practice',
);

const STAINS: readonly FinishFamily[] = ['water stain', 'spirit dye', 'oil stain', 'ink', 'filler', 'epoxy'];

interface Coat {
  step: FinishStep;
  product: FinishProduct | undefined;
  key: string;
}

const productOf = (key: string, workshop: Workshop): FinishProduct | undefined =>
  finishProduct(workshop.finishes[key]?.like ?? key) ?? finishProduct(key);

const nameOf = (coat: Coat, workshop: Workshop): string =>
  workshop.finishes[coat.key]?.name ?? coat.product?.name ?? coat.key;

const coatsOf = (recipe: FinishRecipe, workshop: Workshop): Coat[] =>
  recipe.steps.flatMap(step =>
    step.product === undefined
      ? []
      : [{ step, key: step.product, product: productOf(step.product, workshop) }],
  );

/** The client's sample has shown what the tables do not say. */
const proved = (recipe: FinishRecipe): boolean => recipe.sample?.agreed !== undefined;

interface Verdict {
  severity: Severity;
  words: string;
  source: {
    text: string;
    basis: 'read' | 'memory' | 'computed' | 'common practice' | 'workshop' | 'maker' | 'measured';
  };
}

function verdictOn(over: Coat, under: Coat | undefined, recipe: FinishRecipe): Verdict {
  const silent: Verdict = {
    severity: proved(recipe) ? 'note' : 'unknown',
    words: proved(recipe) ? 'the agreed sample has shown it' : 'the tables are silent: try it on an offcut',
    source: { text: 'no row', basis: 'maker' },
  };
  if (!over.product || (under && !under.product)) return silent;
  const below = under?.product?.family ?? (over.product.on === 'timber' ? 'bare timber' : undefined);
  if (below === undefined || (below === 'bare timber' && STAINS.includes(over.product.family))) {
    return { severity: 'pass', words: 'the first on the bare surface', source: CHK_17.source };
  }
  const row = compatibility(over.product.family, below);
  if (!row) {
    return over.product.family === below
      ? { severity: 'pass', words: 'the same again', source: CHK_17.source }
      : silent;
  }
  const severity =
    row.verdict === 'yes' ? 'pass' : row.verdict === 'no' ? 'stop' : proved(recipe) ? 'note' : 'attend';
  return { severity, words: row.say.value, source: sourceOf(row.say) };
}

const RANK: Record<Severity, number> = { stop: 0, attend: 1, unknown: 2, pending: 3, note: 4, pass: 5 };

/** The worst of a recipe's pairs of coats speaks for the recipe. */
function overOneAnother(recipe: FinishRecipe, workshop: Workshop): Check[] {
  const coats = coatsOf(recipe, workshop);
  if (coats.length === 0) return [];
  const pairs = coats.map((over, i) => ({
    over,
    under: coats[i - 1],
    ...verdictOn(over, coats[i - 1], recipe),
  }));
  const worst = pairs.reduce((w, p) => (RANK[p.severity] < RANK[w.severity] ? p : w));
  const below = worst.under ? nameOf(worst.under, workshop) : 'bare timber';
  const good = worst.severity === 'pass';
  return [
    finding({
      check: 'finish',
      subject: recipe.id,
      severity: worst.severity,
      rule: CHK_17,
      title: good
        ? `${capital(recipe.name)}: each coat holds on the last`
        : `${capital(nameOf(worst.over, workshop))} over ${below}`,
      figure: null,
      limit: null,
      unit: 'text',
      remedy: good
        ? ''
        : worst.severity === 'stop'
          ? worst.words
          : 'Try the whole recipe on an offcut of the job.',
      say: say('{over} over {under}: {words}.', {
        over: text(nameOf(worst.over, workshop)),
        under: text(below),
        words: text(worst.words.charAt(0).toLowerCase() + worst.words.slice(1)),
      }),
      sources: [worst.source],
    }),
  ];
}

/** A wait the maker wrote that is shorter than the tin's or the table's. */
function waits(recipe: FinishRecipe, workshop: Workshop): Check[] {
  const coats = coatsOf(recipe, workshop);
  return coats.slice(0, -1).flatMap(coat => {
    const own = workshop.finishes[coat.key]?.recoatMinutes;
    const table = coat.product?.recoatMinutes;
    const least = own ?? table?.low;
    const given = coat.step.waitMinutes;
    if (given === undefined || least === undefined || given >= least) return [];
    return [
      finding({
        check: 'recoat',
        subject: `${recipe.id}.${coat.step.name}`,
        severity: 'attend',
        rule: CHK_18,
        title: `${capital(nameOf(coat, workshop))}: next coat too soon`,
        figure: given,
        limit: least,
        unit: 'time',
        remedy: 'Lengthen the wait, or take a faster finish.',
        say: say('{finish} waits {given} before the next; it asks {least}.', {
          finish: text(nameOf(coat, workshop)),
          given: minutes(given),
          least: minutes(least),
        }),
        sources:
          own === undefined && table ? [sourceOf(table)] : [{ text: 'the workshop', basis: 'workshop' }],
      }),
    ];
  });
}

function temperatures(recipe: FinishRecipe, workshop: Workshop): Check[] {
  const shop = workshop.climate.temperature;
  const asking = coatsOf(recipe, workshop).filter(c => c.product?.minTemperatureC);
  const coat = asking.reduce<Coat | undefined>(
    (w, c) => (w && w.product!.minTemperatureC!.high >= c.product!.minTemperatureC!.high ? w : c),
    undefined,
  );
  const least = coat?.product?.minTemperatureC;
  if (!coat || !least) return [];
  const cold = shop < least.low;
  return [
    finding({
      check: 'finish temperature',
      subject: recipe.id,
      severity: cold ? 'attend' : 'pass',
      rule: CHK_19,
      title: cold ? `The shop is cold for ${nameOf(coat, workshop)}` : 'The shop is warm enough to finish',
      figure: shop,
      limit: least.low,
      unit: 'temperature',
      remedy: cold ? 'Warm the shop until it is dry, or finish when it is warmer.' : '',
      say: say('{finish} asks {least}; the shop stands at {shop}.', {
        finish: text(nameOf(coat, workshop)),
        least: q('temperature', least.low),
        shop: q('temperature', shop),
      }),
      sources: [sourceOf(least)],
    }),
  ];
}

function rightMaterial(recipe: FinishRecipe, { workshop }: CheckInput, view: View): Check[] {
  const parts = recipe.instances.flatMap(id => view.instance(id) ?? []);
  const metalPart = parts.find(p => p.kind === 'bar' || p.kind === 'tube');
  const woodPart = parts.find(p => p.kind === 'timber');
  return coatsOf(recipe, workshop).flatMap(coat => {
    const wrong =
      coat.product?.on === 'timber' ? metalPart : coat.product?.on === 'metal' ? woodPart : undefined;
    if (!wrong || !coat.product) return [];
    return [
      finding({
        check: 'finish',
        subject: `${recipe.id}.${coat.step.name}`,
        severity: 'attend',
        rule: CHK_20,
        title: `${capital(nameOf(coat, workshop))} on ${mid(wrong.name)}`,
        figure: null,
        limit: null,
        unit: 'text',
        remedy: 'Give the metal a recipe of its own.',
        say: say('{finish} is for {on}; {part} is {material}.', {
          finish: text(nameOf(coat, workshop)),
          on: text(coat.product.on),
          part: text(mid(wrong.name)),
          material: text(wrong.material),
        }),
      }),
    ];
  });
}

export const finishesCheck: CheckMaker = {
  name: 'finish',
  rules: [CHK_17, CHK_18, CHK_19, CHK_20],
  judge: (input, view) =>
    input.commission.finishes.flatMap(recipe => [
      ...overOneAnother(recipe, input.workshop),
      ...waits(recipe, input.workshop),
      ...temperatures(recipe, input.workshop),
      ...rightMaterial(recipe, input, view),
    ]),
};
