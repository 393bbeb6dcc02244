import { type RefObject, useLayoutEffect, useState } from 'react';

export interface PixelSize {
  width: number;
  height: number;
}

const UNKNOWN: PixelSize = { width: 0, height: 0 };

/** Size of an element, CSS pixels, as it changes; 0 before it is known. */
export function useSize(host: RefObject<HTMLElement | null>): PixelSize {
  const [size, setSize] = useState(UNKNOWN);
  useLayoutEffect(() => {
    const element = host.current;
    if (!element) return;
    const take = ({ width, height }: PixelSize): void =>
      setSize({ width: Math.round(width), height: Math.round(height) });
    take(element.getBoundingClientRect());
    const sizes = new ResizeObserver(([entry]) => entry && take(entry.contentRect));
    sizes.observe(element);
    return () => sizes.disconnect();
  }, [host]);
  return size;
}
