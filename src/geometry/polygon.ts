type Flat = readonly [number, number];

/** Area of a simple polygon, positive when it runs anticlockwise, in the square of its unit. */
export const signedArea = (ring: readonly Flat[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + x * v - u * y;
  }, 0) / 2;

export const polygonArea = (ring: readonly Flat[]): number => Math.abs(signedArea(ring));
