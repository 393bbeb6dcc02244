import type { Box } from '../../geometry/box.ts';
import { dot, sub, type Vec3, vec } from '../../geometry/vector.ts';

/** A point on the sheet, CSS pixels from its top left corner. */
export type Spot = [number, number];

/** Where the maker stands: degrees round the piece and degrees up. */
export interface Stance {
  azimuth: number;
  elevation: number;
}

/** The views that have a name. */
export const STANCES = {
  turned: { azimuth: 33, elevation: 17 },
  front: { azimuth: 0, elevation: 0 },
  end: { azimuth: 90, elevation: 0 },
  plan: { azimuth: 0, elevation: 90 },
} as const satisfies Record<string, Stance>;

export interface Camera extends Stance {
  /** Directions on the sheet and into it. */
  right: Vec3;
  up: Vec3;
  into: Vec3;
  /** CSS pixels a millimetre. */
  scale: number;
  /** World point that sits at `spot`. */
  centre: Vec3;
  spot: Spot;
}

/** Room kept round the piece for rods and figures, CSS pixels. */
export interface Room {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Sheet {
  width: number;
  height: number;
  small: boolean;
  /** Width of the longest figure on the rods, CSS pixels. */
  figures?: number;
  /** No rods stand beside the piece. */
  bare?: boolean;
}

/** An axis seen nearly end-on still gets this much rod. */
export const LEAST_ROD = 48;

/** Room is laid out for figures of this width; longer ones take more. */
export const PLAIN_FIGURE = 36;

const roomFor = ({ small, bare, figures = PLAIN_FIGURE }: Sheet): Room => {
  const more = Math.max(0, figures - PLAIN_FIGURE);
  if (bare) return { left: 24, right: 24, top: 24, bottom: 24 };
  return small
    ? { left: 18, right: 18, top: 16, bottom: 110 + more }
    : { left: 190 + 2 * more, right: 92 + more, top: 52, bottom: 118 + more };
};

export const project = (camera: Camera, p: Vec3): Spot => {
  const d = sub(p, camera.centre);
  return [
    camera.spot[0] + camera.scale * dot(camera.right, d),
    camera.spot[1] - camera.scale * dot(camera.up, d),
  ];
};

/** Turns and scales so that piece, rods and figures stay on the sheet at every angle. */
export function cameraFor(stance: Stance, bounds: Box, sheet: Sheet, zoom = 1): Camera {
  const az = (stance.azimuth * Math.PI) / 180;
  const el = (stance.elevation * Math.PI) / 180;
  const [c, s, ce, se] = [Math.cos(az), Math.sin(az), Math.cos(el), Math.sin(el)];
  const room = roomFor(sheet);
  const size = sub(bounds.max, bounds.min);
  const wide = size.x * Math.abs(c);
  const deep = size.y * Math.abs(s);
  const tall = size.z * Math.abs(ce) + (size.x * Math.abs(s) + size.y * Math.abs(c)) * Math.abs(se);
  const free = sheet.width - room.left - room.right;
  const [across, extra] =
    sheet.small || sheet.bare ? [free / (wide + deep), 0] : acrossScale(wide, deep, free);
  const scale = Math.min(across, (sheet.height - room.top - room.bottom) / tall) * zoom;
  const side = (deep < wide ? 1 : -1) * (s * c >= 0 ? 1 : -1);
  const x = (room.left + sheet.width - room.right) / 2 - (side * Math.min(Math.max(extra, 0), LEAST_ROD)) / 2;
  const middle = room.top + (sheet.height - room.top - room.bottom) / 2;
  const y = zoom > 1 ? middle : Math.min(sheet.height - room.bottom - (tall * scale) / 2, middle + 10);
  return {
    ...stance,
    right: vec(c, s, 0),
    up: vec(-s * se, c * se, ce),
    into: vec(-s * ce, c * ce, -se),
    scale,
    centre: vec(
      (bounds.min.x + bounds.max.x) / 2,
      (bounds.min.y + bounds.max.y) / 2,
      (bounds.min.z + bounds.max.z) / 2,
    ),
    spot: [x, y],
  };
}

/** Scale that fits both lying rods side by side, and what the shorter one needs beyond its axis. */
function acrossScale(wide: number, deep: number, free: number): [number, number] {
  const plain = free / (wide + deep);
  if (deep * plain < LEAST_ROD) {
    const scale = (free - LEAST_ROD) / wide;
    return [scale, LEAST_ROD - deep * scale];
  }
  if (wide * plain < LEAST_ROD) {
    const scale = (free - LEAST_ROD) / deep;
    return [scale, LEAST_ROD - wide * scale];
  }
  return [plain, 0];
}
