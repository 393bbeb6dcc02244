import type { OfferInfo } from '../../src/papers/offer.ts';

export const OFFER: OfferInfo = {
  title: 'Bench, finished as the chosen sample',
  number: '31',
  settingOut: 4,
  date: '2026-11-04',
  programVersion: '0.1.0',
  currency: 'GBP',
  unit: 'mm',
  maker: ['The workshop', 'Furniture maker', 'street and town'],
  to: ['The client', 'house and street', 'town'],
  offer: '31, second',
  openUntil: '2026-12-04',
  heading: 'A bench for the porch, ash, with two stainless bars',
  make: [
    'One bench for two, of solid ash, jointed throughout; no metal shows but the two bars under the seat, on which wet boots may stand. The seat is three boards wide and lies on slotted screws, so that it can move with the weather.',
    'Finish as the sample you choose: clear oil, white oil, or grey stain and clear. The feet are sealed against wet.',
  ],
  notIncluded: ['Fixing to the wall, cushions, and work to the porch floor.'],
  expect: [
    'Ash is alive to the seasons. Across its width the seat will be up to 6.7 mm wider in a wet autumn than in a dry spring. That is allowed for and is not a fault.',
  ],
  lines: [],
  stages: [
    { label: 'With the order', share: 0.4 },
    { label: 'When it stands dry, before glue', share: 0.35 },
    { label: 'On delivery', share: 0.25 },
  ],
  taxWords: 'No tax is charged; the workshop is not registered for it.',
  terms: 'Made to your sizes. A change after the order is priced in writing before it is made.',
};
