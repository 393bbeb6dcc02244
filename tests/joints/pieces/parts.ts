/** Each joint between two parts whose sizes are written for a thickness t of the thinner one, mm. */
export type Parts = Record<string, object>;
export const timber = (over: object) => ({ kind: 'timber', material: 'oak-european', ...over });
export const post = (t: number) =>
  timber({
    length: 40 * t,
    width: 2 * t,
    thickness: 2 * t,
    along: 'up',
    facing: 'front',
    at: { left: 0, front: 0, bottom: 0 },
  });
export const rail = (t: number, over: object = {}) =>
  timber({
    length: 20 * t,
    width: 3 * t,
    thickness: t,
    along: 'right',
    facing: 'front',
    at: { left: 'into.right', centre_y: 'into.centre_y', top: 'into.top - 10 mm' },
    ...over,
  });
export const board = (t: number, over: object = {}) =>
  timber({
    length: 20 * t,
    width: 8 * t,
    thickness: t,
    along: 'right',
    facing: 'up',
    at: { left: 0, front: 0, bottom: 0 },
    ...over,
  });

/** A sample of a joint at thickness t: the parts `from` and `into`, and figures set where the rule is not meant. */
export type Sample = (t: number) => { parts: Parts; set?: Record<string, unknown> };
