/** A welded frame of steel tube, for tests of outwork and its papers. */
const tube = (over: object) => ({
  kind: 'tube',
  material: 'mild-steel',
  width: 30,
  thickness: 30,
  wall: 2,
  ...over,
});

export const table = (over: { frame?: object; coat?: object | undefined } = {}) => ({
  scantling: 'job/1',
  title: 'Steel table',
  start: '2026-11-30',
  parts: {
    front: tube({
      length: 900,
      along: 'right',
      facing: 'up',
      at: { left: 0, front: 0, top: 720 },
      mirror: { y: 250 },
    }),
    side: tube({
      length: 500,
      along: 'back',
      facing: 'up',
      at: { left: 0, front: 0, top: 720 },
      mirror: { x: 450 },
    }),
    leg: tube({
      length: 690,
      along: 'up',
      facing: 'front',
      at: { left: 0, front: 0, bottom: 0 },
      mirror: { x: 450, y: 250 },
    }),
  },
  joints: {
    corners: { type: 'welded-mitre', from: 'front', into: 'side', count: 4 },
    legs: { type: 'welded', from: 'leg', into: 'front', count: 4 },
  },
  assemblies: {
    frame: {
      name: 'Frame',
      parts: ['front', 'front_y', 'side', 'side_x', 'leg', 'leg_x', 'leg_y', 'leg_xy'],
      ...over.frame,
    },
  },
  ...(over.coat
    ? { finishes: { coat: { name: 'Powder coat', on: ['front', 'side', 'leg'], ...over.coat } } }
    : {}),
});

export const WELDER = { by: 'The welder', days: 4, price: 140 };
export const COATER = { by: 'The coater', days: 6, price: '85.50' };
