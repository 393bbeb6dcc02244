/** How much finish and glue a surface takes. */

/**
 * Litres of a finish: area x coats/spread x (1 + loss).
 * @param spreadM2PerL m2 a litre and coat, by the tin
 * @param lossShare left in brush, rag and pot; a tenth unless the maker knows better (common practice)
 */
export function finishLitres(areaM2: number, coats: number, spreadM2PerL: number, lossShare = 0.1): number {
  return ((areaM2 * coats) / spreadM2PerL) * (1 + lossShare);
}

/**
 * Spread, m2 a litre, that leaves a film: 1 L over 1 m2 stands 1 mm high.
 * @param solidsShare share by volume that stays when it is dry; 1 for the wet film
 */
export function spreadForFilm(filmMm: number, solidsShare = 1): number {
  return solidsShare / filmMm;
}

/** Glue for a joint, g: area x spread x faces coated. */
export function glueGrams(areaM2: number, spreadGPerM2: number, faces: 1 | 2 = 1): number {
  return areaM2 * spreadGPerM2 * faces;
}
