/** Cross-sections: area, second moment, section modulus. The load acts in the direction of the depth. */

export interface Section {
  readonly areaMm2: number;
  /** Second moment of area about the axis across the depth, mm4. */
  readonly secondMomentMm4: number;
  /** Section modulus, mm3. */
  readonly modulusMm3: number;
  /** Greatest shear stress over the mean: 3/2 of a rectangle, 4/3 of a circle (FPL-GTR-282 (2021) Eq 9-14). */
  readonly shearFactor?: number;
  /** Area for shear deflection, mm2: 5/6 b h, 9/40 pi d^2 (FPL-GTR-282 (2021) below Eq 9-2). */
  readonly shearAreaMm2?: number;
}

/** I = b h^3/12, S = b h^2/6. */
export function rectangle(widthMm: number, depthMm: number): Section {
  const areaMm2 = widthMm * depthMm;
  return {
    areaMm2,
    secondMomentMm4: (areaMm2 * depthMm * depthMm) / 12,
    modulusMm3: (areaMm2 * depthMm) / 6,
    shearFactor: 3 / 2,
    shearAreaMm2: (5 / 6) * areaMm2,
  };
}

/** I = pi d^4/64, S = pi d^3/32. */
export function round(diameterMm: number): Section {
  return {
    areaMm2: (Math.PI * diameterMm ** 2) / 4,
    secondMomentMm4: (Math.PI * diameterMm ** 4) / 64,
    modulusMm3: (Math.PI * diameterMm ** 3) / 32,
    shearFactor: 4 / 3,
    shearAreaMm2: (9 / 40) * Math.PI * diameterMm ** 2,
  };
}

/** A tube is the outer section less the bore. */
export function roundTube(outerMm: number, wallMm: number): Section {
  return hollow(round(outerMm), round(outerMm - 2 * wallMm), outerMm);
}

/** Square or rectangular tube, its corners taken as sharp. */
export function rectangularTube(widthMm: number, depthMm: number, wallMm: number): Section {
  return hollow(rectangle(widthMm, depthMm), rectangle(widthMm - 2 * wallMm, depthMm - 2 * wallMm), depthMm);
}

/**
 * A rectangle less a box open or closed over part of its depth: angle, channel, tube. Steiner about the middle that is left.
 * @param gap its width, and where it lies across the depth, mm
 */
export function rectangleLess(
  widthMm: number,
  depthMm: number,
  gap: { widthMm: number; from: number; to: number },
): Section {
  const deep = gap.to - gap.from;
  const [whole, gone] = [widthMm * depthMm, gap.widthMm * deep];
  const areaMm2 = whole - gone;
  const middle = (whole * (depthMm / 2) - gone * ((gap.from + gap.to) / 2)) / areaMm2;
  const about = (area: number, height: number, at: number): number =>
    (area * height * height) / 12 + area * (at - middle) ** 2;
  const secondMomentMm4 = about(whole, depthMm, depthMm / 2) - about(gone, deep, (gap.from + gap.to) / 2);
  return { areaMm2, secondMomentMm4, modulusMm3: secondMomentMm4 / Math.max(middle, depthMm - middle) };
}

function hollow(outer: Section, bore: Section, depthMm: number): Section {
  const secondMomentMm4 = outer.secondMomentMm4 - bore.secondMomentMm4;
  return {
    areaMm2: outer.areaMm2 - bore.areaMm2,
    secondMomentMm4,
    modulusMm3: secondMomentMm4 / (depthMm / 2),
  };
}
