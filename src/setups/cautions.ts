/** Cautions by what the hands do. They stand on the card; the machine's own rules come first. */
import { say1 } from './figures.ts';

export const CAUTIONS = {
  upright:
    'Crown guard off for this cut: clamp the work in the jig, hands high on the jig. Guard back on after.',
  noKnife: 'Not a through cut: the riving knife stands below the tooth or comes off; it goes back after.',
  knife: 'Guard on, riving knife no more than 8 mm from the blade. Push stick for the last 300 mm.',
  kickback: 'Stand beside the line of the blade. Waste stays free of the fence.',
  sled: 'Hold the work to the sled, fingers clear of the blade path on both sides. Let the blade stop before clearing waste.',
  router: 'Feed against the turn of the cutter; a climbing cut snatches. Ear and eye protection.',
  handRouter:
    'Clamp the work. Feed against the turn of the cutter, left to right with the fence on the right.',
  drill: 'Clamp small work; a drill that grabs turns it. Sleeves and hair clear.',
  chiselMortiser: 'Chuck key out. Clear the chips often; a packed chisel burns.',
  mitreSaw: 'Guard working, hands 150 mm clear of the blade, piece held to the fence until the blade stands.',
  dust: 'Extraction on; oak and tropical dust harms, wear a mask.',
  hand: 'Both hands behind the edge of the chisel; work held in vice or by clamps.',
  metal: 'Eye protection. Clamp metal: it grabs as the drill breaks through. Keep steel dust from oak.',
  taper: 'Clamp the part to the sled with both toggles; hands on the sled, not on the part.',
  narrowCutter: 'A cutter under 6 mm breaks under a deep pass: shallow steps.',
  backing: 'Scrap behind the exit, so that the far arris does not break out.',
} as const;

export const wasteFalls = (width: number): string =>
  width > 0.5
    ? `Waste ${say1(width)} falls free on the left. Leave it until the blade stands.`
    : 'The kerf takes all of the waste.';

export const twice = (thing: string): string =>
  `Both sides shift: an error on the fence shows twice in the ${thing}.`;

export const caught = (width: number): string =>
  width > 0.5
    ? `The waste, ${say1(width)}, lies between blade and jig: clamp it with the work, take it out when the blade stands.`
    : 'The kerf takes all of the waste.';

export const smallPart = (length: number): string =>
  `Small part, ${say1(length)} long: cut it from a longer piece, or hold it in a sled.`;
