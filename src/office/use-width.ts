import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element, CSS pixels, as it changes; 0 before it is known. */
export function useWidth(host: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = host.current;
    if (!element) return;
    setWidth(Math.round(element.getBoundingClientRect().width));
    const sizes = new ResizeObserver(([entry]) => entry && setWidth(Math.round(entry.contentRect.width)));
    sizes.observe(element);
    return () => sizes.disconnect();
  }, [host]);
  return width;
}
