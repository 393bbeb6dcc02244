import { describe, expect, it } from 'vitest';
import { ORDER_RULES } from '../../src/operations/order-rules.ts';
import { planOperations } from '../../src/operations/plan-operations.ts';
import { type Cut, ON_PART } from '../../src/results/cuts.ts';
import type { Operation } from '../../src/results/operations.ts';
import {
  assembly,
  byId,
  commission,
  copy,
  edge,
  hole,
  joint,
  mitre,
  onAssembly,
  piece,
  pocket,
  recipe,
  rulesBetween,
  shop,
  size,
  step,
  taper,
  tenon,
} from './making.ts';

const quoted = new Set<string>();

/** Operations of a piece without faults; the rules they quote are collected for the last test. */
function operationsOf(...of: Parameters<typeof planOperations>): Operation[] {
  const { operations, faults } = planOperations(...of);
  expect(faults).toEqual([]);
  for (const o of operations) for (const a of o.after) quoted.add(a.rule.number);
  return operations;
}

/** A door: two stiles, two rails, a solid panel measured at the dry fit and finished before the glue-up. */
function door(): Operation[] {
  const corners = ['stile.1', 'stile.2'].flatMap(s => ['rail.1', 'rail.2'].map(r => joint('corner', [r, s])));
  const held = ['stile.1', 'stile.2', 'rail.1', 'rail.2'].map(i =>
    joint('held', ['panel', i], {
      dry: true,
      room: { instance: 'panel', width: 270, swell: 2.5, shrink: 2.5, what: 'panel in groove' },
    }),
  );
  const stile = () => [
    pocket('corner', 'mortise'),
    pocket('corner', 'mortise'),
    pocket('held', 'groove', 'x', 600),
  ];
  const rail = () => [tenon('corner'), tenon('corner'), pocket('held', 'groove', 'x', 300)];
  const parts = [
    copy('stile.1', size(636, 55, 21), stile()),
    copy('stile.2', size(636, 55, 21), stile()),
    copy('rail.1', size(346, 55, 21), rail()),
    copy('rail.2', size(346, 55, 21), rail()),
    copy('panel', size(529, 291, 12), [edge('raise', 'chamfer')], {
      measureFirst: { when: 'dry fit of the door', reserve: size(540, 300, 12) },
    }),
  ];
  const made = [...corners, ...held];
  return operationsOf(
    piece(parts, made, [
      assembly(
        'door',
        parts.map(p => p.id),
        made,
        { glue: 'pva' },
      ),
    ]),
    commission(
      recipe('panel_first', ['panel'], [step('coat', 'oil', { product: 'danish-oil' })], {
        when: 'before glue-up',
      }),
      recipe(
        'stained',
        ['stile.1', 'stile.2', 'rail.1', 'rail.2'],
        [
          step('prepare', 'sand 120', { grit: 120 }),
          step('prepare', 'sand 180', { grit: 180 }),
          step('raise grain', 'raise'),
          step('stain', 'stain', { product: 'water-stain' }),
          step('seal', 'seal', { product: 'shellac' }),
          step('coat', 'first', {
            product: 'water-based-polyurethane',
            waitMinutes: 360,
            withinMinutes: 1440,
          }),
          step('coat', 'second', { product: 'water-based-polyurethane', waitMinutes: 360 }),
        ],
        { sample: { asked: true } },
      ),
    ),
    shop(),
  );
}

describe('a panelled door', () => {
  const operations = door();
  const between = (first: string, next: string) => rulesBetween(operations, first, next);

  it('ORD-3 to 5: crosscut, rip, rest, face, edge, thickness, width, length', () => {
    expect(between('crosscut:ash-european', 'rip:ash-european')).toEqual(['ORD-4']);
    expect(between('rip:ash-european', 'rest:ash-european')).toEqual(['ORD-3']);
    expect(between('rest:ash-european', 'face:ash-european')).toEqual(['ORD-3']);
    const chain = ['face', 'edge', 'thickness', 'width', 'length'].map(s => `${s}:ash-european`);
    chain.slice(1).forEach((id, k) => {
      expect(between(chain[k]!, id)).toEqual(['ORD-5']);
    });
  });

  it('ORD-6, 7, 10: test piece and marks before the cut, mortise before tenon', () => {
    expect(between('test:rail:corner:tenon', 'cut:rail:corner:tenon')).toEqual(['ORD-6']);
    expect(between('mark:rail', 'cut:rail:corner:tenon')).toEqual(['ORD-7']);
    expect(between('cut:stile:corner:mortise', 'cut:rail:corner:tenon')).toEqual(['ORD-10']);
    expect(between('cut:stile:corner:mortise', 'test:rail:corner:tenon')).toEqual(['ORD-10']);
  });

  it('ORD-69, 70: the rod before the marks, cuts before the dry fit', () => {
    expect(between('rod', 'mark:rail')).toEqual(['ORD-69']);
    expect(between('cut:rail:corner:tenon', 'dry:door')).toEqual(['ORD-70']);
  });

  it('ORD-22, 48: the panel sized from the dry frame, in before the frame is closed', () => {
    expect(between('dry:door', 'measure:panel')).toEqual(['ORD-22']);
    expect(between('measure:panel', 'width-of:panel')).toEqual(['ORD-22']);
    expect(between('cut:panel:raise:chamfer', 'glue:door')).toEqual(['ORD-48']);
    expect(byId(operations, 'dry:door').after.some(a => a.operation.includes('panel'))).toBe(false);
  });

  it('ORD-38, 44, 47: sanded inside, panel finished, run dry before the glue', () => {
    expect(between('sand:door', 'glue:door')).toEqual(['ORD-38']);
    expect(between('finish:panel_first:oil', 'glue:door')).toEqual(['ORD-44']);
    expect(between('dry:door', 'glue:door')).toEqual(['ORD-47']);
    expect(between('dry:door', 'prepare:panel_first')).toEqual(['ORD-74']);
  });

  it('ORD-46, 51: squeeze-out off, then cured, then flushed', () => {
    expect(between('glue:door', 'unclamp:door')).toEqual(['ORD-51']);
    expect(between('unclamp:door', 'flush:door')).toEqual(['ORD-46']);
    expect(between('set:door', 'flush:door')).toEqual(['ORD-46']);
    const [glue, set] = [byId(operations, 'glue:door'), byId(operations, 'set:door')];
    expect(glue.wait?.what).toBe('clamp');
    expect(glue.wait!.minutes + set.wait!.minutes).toBe(24 * 60);
  });

  it('ORD-39, 41, 42, 43: flush, grit by grit, grain raised, edges broken', () => {
    expect(between('flush:door', 'finish:stained:sand-120')).toEqual(['ORD-41']);
    expect(between('finish:stained:sand-120', 'finish:stained:sand-180')).toEqual(['ORD-39']);
    expect(between('finish:stained:raise', 'finish:stained:stain')).toEqual(['ORD-42']);
    expect(between('edges:stained', 'finish:stained:stain')).toEqual(['ORD-43']);
  });

  it('ORD-56, 57, 59: the sample signed, stain, sealer, coats inside their window', () => {
    expect(between('sample:stained', 'finish:stained:stain')).toEqual(['ORD-56']);
    expect(between('finish:stained:stain', 'finish:stained:seal')).toEqual(['ORD-57']);
    expect(between('finish:stained:seal', 'finish:stained:first')).toEqual(['ORD-57']);
    expect(between('finish:stained:first', 'finish:stained:second')).toEqual(['ORD-59']);
    expect(byId(operations, 'finish:stained:first').window).toMatchObject({
      minutes: 1440,
      next: 'finish:stained:second',
    });
  });

  it('ORD-50, 58, 60 stand on the operations as cautions', () => {
    expect(byId(operations, 'glue:door').cautions).toContain(
      'Check diagonals and twist before the glue grabs: the wind stays',
    );
    const oil = byId(operations, 'finish:panel_first:oil').cautions.join();
    expect(oil).toContain('Hidden face first');
    expect(oil).toContain('Rags into water');
    for (const number of ['ORD-50', 'ORD-58', 'ORD-60']) quoted.add(number);
  });

  it('ORD-62, 75: hard before it is packed', () => {
    expect(
      between('finish:stained:second', 'pack').concat(between('finish:stained:second', 'cure:stained')),
    ).toContain('ORD-62');
  });
});

describe('cuts of one part', () => {
  const leg = copy('leg', size(423, 45, 45), [
    pocket('rail', 'mortise'),
    hole('pin', 'plain'),
    pocket('shelf', 'housing', 'y', 20),
    pocket('ply', 'groove', 'x', 300),
    taper('slim'),
    edge('soft', 'round-over'),
    edge('foot', 'chamfer'),
    mitre('end'),
  ]);
  const rail = copy('rail', size(300, 60, 22), [tenon('rail')]);
  const ply = copy('ply', size(300, 300, 6), [], { kind: 'sheet', material: 'birch-plywood' });
  const joints = [joint('rail', ['rail', 'leg']), joint('ply', ['ply', 'leg'], { dry: true })];
  const operations = operationsOf(
    piece([leg, rail, ply], joints, [assembly('frame', ['leg', 'rail', 'ply'], joints)]),
    commission(recipe('oil', ['leg', 'rail'], [step('coat', 'oil', { product: 'danish-oil' })])),
    shop(),
  );
  const between = (first: string, next: string) => rulesBetween(operations, first, next);

  it('ORD-11, 12: joints before tapers, tapers before the inside is sanded', () => {
    expect(between('cut:leg:rail:mortise', 'cut:leg:slim:taper')).toEqual(['ORD-11']);
    expect(between('mark:leg', 'cut:leg:slim:taper')).toEqual(['ORD-12', 'ORD-7']);
    expect(between('cut:leg:slim:taper', 'sand:frame')).toEqual(['ORD-12']);
  });

  it('ORD-13, 23: grooves before the mitre, a test ring before both', () => {
    expect(between('cut:leg:ply:groove', 'cut:leg:end:end-cut')).toEqual(['ORD-13']);
    expect(between('test:leg:end:end-cut', 'cut:leg:end:end-cut')).toEqual(['ORD-23']);
  });

  it('ORD-14, 17, 43: holes and stopped housings before moulded edges, joints before chamfers', () => {
    expect(between('cut:leg:pin:hole', 'cut:leg:soft:round-over')).toEqual(['ORD-14']);
    expect(between('cut:leg:shelf:housing', 'cut:leg:soft:round-over')).toEqual(['ORD-17', 'ORD-43']);
    expect(between('cut:leg:rail:mortise', 'cut:leg:foot:chamfer')).toEqual(['ORD-43']);
    expect(between('cut:leg:foot:chamfer', 'finish:oil:oil')).toEqual(['ORD-43']);
  });

  it('ORD-16: holes before the glue-up', () => {
    expect(between('cut:leg:pin:hole', 'dry:frame')).toEqual(['ORD-16']);
  });

  it('ORD-24, 25: the sheet measured before its groove, ripped before crosscut', () => {
    expect(between('calipers:birch-plywood:6', 'cut:leg:ply:groove')).toEqual(['ORD-24']);
    expect(between('rip:birch-plywood', 'crosscut:birch-plywood')).toEqual(['ORD-25']);
    expect(between('order:birch-plywood', 'calipers:birch-plywood:6')).toEqual(['ORD-68']);
  });

  it('need no calipers when the sheet is measured', () => {
    const measured = { ...ply, measured: { thickness: 6.4 } };
    const again = operationsOf(
      piece([leg, rail, measured], joints, [assembly('frame', ['leg', 'rail', 'ply'], joints)]),
      commission(),
      shop(),
    );
    expect(again.some(o => o.id.startsWith('calipers'))).toBe(false);
  });

  it('ORD-8: cuts of one setting share a batch', () => {
    const two = operationsOf(
      piece([
        copy('a', size(300, 60, 22), [tenon('one')]),
        copy('b', size(500, 60, 22), [tenon('two')]),
        copy('c', size(500, 80, 22), [tenon('three')]),
      ]),
      commission(),
      shop(),
    );
    const batch = (id: string) => byId(two, id).batch;
    expect(batch('cut:a:one:tenon')).toBe(batch('cut:b:two:tenon'));
    expect(batch('cut:c:three:tenon')).not.toBe(batch('cut:a:one:tenon'));
    quoted.add('ORD-8');
  });

  it('ORD-15: the draw-bore hole in the mortised part first', () => {
    const drawn = operationsOf(
      piece([
        copy('post', size(423, 45, 45), [pocket('bored', 'mortise'), hole('bored', 'dowel')]),
        copy('bar', size(300, 60, 22), [tenon('bored'), hole('bored', 'dowel')]),
      ]),
      commission(),
      shop(),
    );
    expect(rulesBetween(drawn, 'cut:post:bored:hole', 'cut:bar:bored:hole')).toEqual(['ORD-15']);
  });
});

describe('bought and seasoned', () => {
  it('ORD-2, 68: timber that is not in the rack is ordered, seasoned, then broken down', () => {
    const supplier = {
      id: 'yard',
      name: 'The yard',
      delivery: 0,
      leadDays: 4,
      items: [
        {
          id: 'w',
          kind: 'board' as const,
          material: 'walnut-european',
          label: 'walnut',
          length: 2500,
          width: 200,
          thickness: 27,
          round: false,
          price: 9000,
        },
      ],
    };
    const part = copy('top', size(900, 150, 22), [], { material: 'walnut-european' });
    const bought = operationsOf(piece([part]), commission(), shop({ suppliers: [supplier] }));
    expect(byId(bought, 'order:walnut-european').wait).toMatchObject({ minutes: 4 * 1440, what: 'delivery' });
    expect(rulesBetween(bought, 'order:walnut-european', 'season:walnut-european')).toEqual(['ORD-68']);
    expect(rulesBetween(bought, 'season:walnut-european', 'crosscut:walnut-european')).toEqual(['ORD-2']);
    expect(byId(bought, 'season:walnut-european').wait?.minutes).toBe(7 * 1440);
  });

  it('says so when nobody sells it', () => {
    const part = copy('top', size(900, 150, 22), [], { material: 'walnut-european' });
    const bought = operationsOf(piece([part]), commission(), shop());
    expect(byId(bought, 'order:walnut-european').wait).toBeUndefined();
    expect(byId(bought, 'order:walnut-european').cautions[0]).toContain('lead time');
  });
});

describe('a carcase with hardware and metal', () => {
  const side = (id: string) =>
    copy(id, size(720, 278, 18), [pocket('shelf', 'housing', 'y', 278), pocket('hinge', 'recess')], {
      kind: 'sheet',
      material: 'birch-plywood',
    });
  const parts = [
    side('side.1'),
    side('side.2'),
    copy('shelf', size(435, 251, 18), [], { kind: 'sheet', material: 'birch-plywood' }),
    copy('back', size(720, 450, 6), [], {
      kind: 'sheet',
      material: 'birch-plywood',
      measureFirst: { when: 'after the glue-up of the carcase', reserve: size(730, 460, 6) },
    }),
    copy('hinge.1', size(50, 30, 2), [], { kind: 'bought-in', material: 'butt hinge 50' }),
    copy('hinge.2', size(50, 30, 2), [], { kind: 'bought-in', material: 'butt hinge 50' }),
    copy('rail', size(450, 16, 16), [hole('rail', 'pilot')], { kind: 'bar', material: 'brass', round: true }),
    copy('plate', size(300, 200, 0.9), [], { kind: 'sheet', material: 'brass' }),
    copy('core', size(300, 200, 4), [], { kind: 'sheet', material: 'mdf' }),
  ];
  const shelves = ['side.1', 'side.2'].map(s => joint('shelf', ['shelf', s]));
  const bond = joint('bond', ['plate', 'core'], {
    bond: { sheet: 'plate', core: 'core', adhesive: 'epoxy', glueLine: 0.1, bothFaces: false },
  });
  const loose = [
    joint('hinge', ['hinge.1', 'side.1'], {
      dry: true,
      fasteners: [{ item: '3.0 x 16', kind: 'screw', quantity: 4, length: 16, diameter: 3 }],
    }),
    joint('hinge', ['hinge.2', 'side.1'], { dry: true }),
    joint('rail', ['rail', 'side.1'], { dry: true }),
    joint('back', ['back', 'side.1'], { dry: true }),
  ];
  const operations = operationsOf(
    piece(
      parts,
      [...shelves, bond, ...loose],
      [
        assembly('carcase', ['side.1', 'side.2', 'shelf'], shelves),
        assembly('brass_panel', ['plate', 'core'], [bond]),
      ],
    ),
    commission(
      recipe('clear', ['side.1', 'side.2', 'shelf', 'back'], [step('coat', 'coat', { product: 'shellac' })]),
      recipe('lacquer', ['plate'], [step('coat', 'lacquer', { product: 'brass-lacquer' })], {
        when: 'before glue-up',
      }),
      recipe('bright', ['rail'], [step('coat', 'lacquer', { product: 'brass-lacquer' })]),
    ),
    shop(),
  );
  const between = (first: string, next: string) => rulesBetween(operations, first, next);

  it('ORD-1, 53: hardware in hand before its recess, fitted dry, off for the finish, on when it is hard', () => {
    expect(between('buy:hinge', 'cut:side:hinge:recess')).toEqual(['ORD-1']);
    expect(between('fit:hinge', 'prepare:clear')).toEqual(['ORD-53']);
    expect(byId(operations, 'refit:hinge').after.map(a => a.rule.number)).toContain('ORD-53');
  });

  it('ORD-30, 32, 34: metal worked before it is finished, fitted dry first, its dust gone before wood is finished', () => {
    expect(between('cut:rail:rail:hole', 'finish:bright:lacquer')).toEqual(['ORD-30']);
    expect(between('fit:rail', 'prepare:clear')).toEqual(['ORD-32']);
    expect(between('cut:rail:rail:hole', 'finish:clear:coat')).toEqual(['ORD-34']);
  });

  it('ORD-21: the back sized from the glued carcase', () => {
    expect(between('unclamp:carcase', 'measure:back')).toEqual(['ORD-21']);
    expect(between('measure:back', 'width-of:back')).toEqual(['ORD-21']);
  });

  it('ORD-36, 37: brass lacquered, then cleaned and bonded within the hour', () => {
    expect(between('degrease:brass_panel', 'glue:brass_panel')).toEqual(['ORD-36']);
    expect(byId(operations, 'degrease:brass_panel').window).toMatchObject({
      minutes: 60,
      next: 'glue:brass_panel',
    });
    expect(between('finish:lacquer:lacquer', 'glue:brass_panel')).toEqual(['ORD-37']);
  });

  it('ORD-45: glue faces masked before the coat', () => {
    expect(between('mask:lacquer', 'finish:lacquer:lacquer')).toEqual(['ORD-45']);
  });

  it('ORD-64: put together before it is packed', () => {
    expect(between('refit:hinge', 'pack')).toEqual(['ORD-64']);
  });
});

describe('a table', () => {
  const boards = [1, 2, 3].map(k => copy(`board.${k}`, size(1300, 130, 24)));
  const seams = [
    joint('seam', ['board.1', 'board.2'], { grain: 'long' }),
    joint('seam', ['board.2', 'board.3'], { grain: 'long' }),
  ];
  const end = (n: string) => copy(`end.${n}`, size(500, 90, 22), [tenon('end')]);
  const leg = (n: string) =>
    copy(`leg.${n}`, size(716, 42, 42), [pocket('end', 'mortise'), onAssembly(hole('cross'), 'side')]);
  const sideJoints = [joint('end', ['end.1', 'leg.1']), joint('end', ['end.1', 'leg.2'])];
  const long = copy('long', size(1190, 90, 22), [tenon('long')]);
  const frameJoints = [joint('long', ['long', 'leg.1'])];
  const drawer = copy('drawer', size(450, 57, 10), [], {
    measureFirst: { when: 'drawer opening of the frame', reserve: size(460, 60, 10) },
  });
  const wedge = copy('wedge', size(100, 20, 10), [], {
    measureFirst: { when: 'dry fit of the side', reserve: size(110, 25, 10) },
  });
  const buttons = joint('buttons', ['board.1', 'end.1'], {
    dry: true,
    room: { instance: 'board.1', width: 300, swell: 3, shrink: 3, what: 'button' },
  });
  const operations = operationsOf(
    piece(
      [...boards, end('1'), leg('1'), leg('2'), long, drawer, wedge],
      [...seams, ...sideJoints, ...frameJoints, buttons],
      [
        assembly(
          'top',
          boards.map(b => b.id),
          seams,
          { dryFit: false, order: 1 },
        ),
        assembly('side', ['end.1', 'leg.1', 'leg.2'], sideJoints, { order: 2 }),
        assembly('frame', ['long'], frameJoints, { assemblies: ['side'], order: 3 }),
      ],
    ),
    commission(
      recipe('oil', ['end.1', 'leg.1', 'leg.2', 'long'], [step('coat', 'oil', { product: 'hardwax-oil' })]),
      recipe(
        'wax',
        boards.map(b => b.id),
        [step('coat', 'one', { product: 'hardwax-oil' }), step('coat', 'two', { product: 'hardwax-oil' })],
      ),
    ),
    shop(),
  );
  const between = (first: string, next: string) => rulesBetween(operations, first, next);

  it('ORD-49: sub-frames before the long rails', () => {
    expect(between('flush:side', 'dry:frame')).toEqual(['ORD-49']);
  });

  it('ORD-72: a hole on the glued side waits for its glue-up', () => {
    expect(between('unclamp:side', 'cut:leg:cross:hole@side')).toEqual(['ORD-72']);
    expect(between('cut:leg:cross:hole@side', 'dry:frame')).toEqual(['ORD-49']);
  });

  it('ORD-20, 71: drawers and other held parts sized from their measurement', () => {
    expect(between('dry:frame', 'measure:drawer')).toEqual(['ORD-20']);
    expect(between('measure:wedge', 'width-of:wedge')).toEqual(['ORD-71']);
  });

  it('ORD-61: top and base finished before the top is fixed', () => {
    expect(between('finish:oil:oil', 'assemble:buttons')).toEqual(['ORD-61']);
    expect(between('finish:wax:two', 'assemble:buttons')).toEqual(['ORD-61']);
  });

  it('shoots the edges of a glued panel and flattens it, and sands no inside of it', () => {
    expect(between('shoot:top', 'glue:top')).toEqual(['ORD-70']);
    expect(byId(operations, 'flush:top').title).toBe('Flatten top');
    expect(operations.some(o => o.id === 'sand:top')).toBe(false);
  });

  it('closes the recoat window of hardwax oil from the table: 48 h from the coat, 24 of them waited', () => {
    const first = byId(operations, 'finish:wax:one');
    expect(first.wait?.minutes).toBe(1440);
    expect(first.window).toMatchObject({ minutes: 1440, next: 'finish:wax:two' });
  });

  it('keeps what is put together without glue until the finish is dry', () => {
    const parts = [copy('post', size(400, 40, 40)), copy('key', size(80, 20, 10))];
    const tusk = joint('tusk', ['key', 'post'], { dry: true });
    const whole = operationsOf(
      piece(parts, [tusk], [assembly('whole', ['post', 'key'], [tusk])]),
      commission(recipe('oil', ['post', 'key'], [step('coat', 'oil', { product: 'danish-oil' })])),
      shop(),
    );
    expect(rulesBetween(whole, 'finish:oil:oil', 'glue:whole')).toEqual(['ORD-61']);
    expect(byId(whole, 'glue:whole').kind).toBe('assemble');
  });
});

describe('hardware on a piece that is closed after its finish', () => {
  const parts = [
    copy('post', size(400, 40, 40), [pocket('corner', 'mortise')]),
    copy('rail', size(300, 60, 22), [tenon('corner')]),
    copy('door', size(300, 200, 20)),
    copy('knob', size(30, 30, 30), [], { kind: 'bought-in', material: 'knob' }),
  ];
  const corner = joint('corner', ['rail', 'post']);
  const operations = operationsOf(
    piece(
      parts,
      [corner],
      [
        assembly('frame', ['post', 'rail'], [corner], { order: 1 }),
        assembly('whole', ['door'], [], { assemblies: ['frame'], order: 2 }),
      ],
    ),
    commission(recipe('oil', ['post', 'rail', 'door'], [step('coat', 'oil', { product: 'hardwax-oil' })])),
    shop(),
  );
  const between = (first: string, next: string) => rulesBetween(operations, first, next);

  it('ORD-53: fitted to what stands dry, fixed to what is closed and hard', () => {
    expect(between('dry:whole', 'fit:knob')).toEqual(['ORD-70']);
    expect(between('fit:knob', 'prepare:oil')).toEqual(['ORD-53']);
    expect(between('cure:oil', 'refit:knob')).toEqual(['ORD-53']);
    expect(between('glue:whole', 'refit:knob')).toEqual(['ORD-70']);
  });
});

describe('a rule set aside', () => {
  it('ORD-76: clamps come off after the glue all the same', () => {
    const glued = joint('seam', ['a', 'b']);
    const operations = operationsOf(
      piece(
        [copy('a', size(300, 60, 20)), copy('b', size(300, 60, 20))],
        [glued],
        [assembly('pair', ['a', 'b'], [glued])],
      ),
      commission(),
      shop(),
      { 'order.ORD-51': { reason: 'wiped wet' } },
    );
    expect(rulesBetween(operations, 'glue:pair', 'unclamp:pair')).toEqual(['ORD-76']);
  });
});

describe('rows of dovetails, and doors', () => {
  const waste = (by: string, axis: 'x' | 'z'): Cut => ({
    id: `${by}.${axis}`,
    by,
    stage: ON_PART,
    kind: 'dovetail',
    face: axis === 'x' ? 'end1' : 'face',
    axis,
    from: 0,
    to: 12,
    polygon: [
      [0, 0],
      [10, 2],
      [10, 8],
    ],
    through: true,
  });

  it('ORD-18: tails before the pins that are marked from them', () => {
    const box = operationsOf(
      piece([
        copy('side', size(300, 90, 12), [waste('corner', 'z')]),
        copy('end', size(200, 90, 15), [waste('corner', 'x')]),
      ]),
      commission(),
      shop(),
    );
    expect(rulesBetween(box, 'cut:side:corner:dovetail', 'cut:end:corner:dovetail')).toEqual(['ORD-18']);
    expect(rulesBetween(box, 'cut:end:corner:dovetail', 'cut:side:corner:dovetail')).toEqual([]);
  });

  it('ORD-54: the door hangs before its knob; a knob elsewhere does not wait', () => {
    const bought = (id: string, material: string) =>
      copy(id, size(30, 30, 30), [], { kind: 'bought-in', material });
    const hung = operationsOf(
      piece(
        [
          copy('door', size(600, 300, 20)),
          copy('drawer', size(300, 100, 20)),
          bought('butt', 'butt hinge 50'),
          bought('knob', 'knob'),
          bought('pull', 'pull'),
        ],
        [
          joint('hang', ['butt', 'door'], { dry: true }),
          joint('closed', ['knob', 'door'], { dry: true }),
          joint('drawn', ['pull', 'drawer'], { dry: true }),
        ],
      ),
      commission(),
      shop(),
    );
    expect(rulesBetween(hung, 'fit:butt', 'fit:knob')).toEqual(['ORD-54']);
    expect(rulesBetween(hung, 'fit:butt', 'fit:pull')).toEqual([]);
  });
});

describe('welding', () => {
  it('77: welds are dressed once they are cold, and nobody sets that aside', () => {
    const weld = { ...joint('corner', ['leg.1', 'rail.1']), glue: [], weld: { length: 120 } };
    const bar = { kind: 'tube' as const, material: 'mild-steel' };
    const operations = operationsOf(
      piece(
        [copy('leg.1', size(700, 30, 30), [], bar), copy('rail.1', size(400, 30, 30), [], bar)],
        [weld],
        [assembly('frame', ['leg.1', 'rail.1'], [weld])],
      ),
      commission(),
      shop(),
    );
    expect(rulesBetween(operations, 'glue:frame', 'dress:frame')).toEqual(['ORD-77']);
  });
});

describe('the list of rules', () => {
  it('has one rule to a number, each with its reason and source', () => {
    expect(new Set(ORDER_RULES.map(r => r.number)).size).toBe(ORDER_RULES.length);
    for (const rule of ORDER_RULES)
      expect([rule.says, rule.reason, rule.source.text].every(Boolean)).toBe(true);
  });

  it('holds no rule that no operation ever quotes', () => {
    expect(ORDER_RULES.map(r => r.number).filter(number => !quoted.has(number))).toEqual([]);
  });
});
