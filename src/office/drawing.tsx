import { type ReactNode, useLayoutEffect, useRef } from 'react';
import type { DisplayList } from '../drawings/list.ts';
import { type SvgNode, svgTree } from '../drawings/svg.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** The drawing is one picture to a screen reader: its groups carry no names of their own. */
const LEFT_OUT = new Set(['xmlns', 'xml:space', 'aria-label']);

function elementOf(node: SvgNode): SVGElement {
  const element = document.createElementNS(SVG, node.tag);
  for (const [name, value] of Object.entries(node.attributes))
    if (!LEFT_OUT.has(name)) element.setAttribute(name, value);
  for (const child of node.children)
    element.append(typeof child === 'string' ? document.createTextNode(child) : elementOf(child));
  return element;
}

/** A display list as SVG elements of the page, so that colours follow the ground and parts can be found. */
export function Drawing({
  of,
  hidden = false,
  className,
  onPick,
}: {
  of: DisplayList;
  /** Said in words beside it, so not read out twice. */
  hidden?: boolean;
  className?: string;
  /** Called with the figure or instance of a pressed item. */
  onPick?: (figure: string) => void;
}): ReactNode {
  const host = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const svg = elementOf(svgTree(of));
    if (hidden) {
      svg.removeAttribute('role');
      svg.setAttribute('aria-hidden', 'true');
      svg.querySelector('title')?.remove();
    }
    host.current?.replaceChildren(svg);
  }, [of, hidden]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents lint/a11y/noStaticElementInteractions: a short cut; the tables beside every drawing do the same by keyboard
    <span
      ref={host}
      className={`drawing ${className ?? ''}`}
      onClick={
        onPick &&
        (event => {
          const found = (event.target as Element).closest('[data-figure]');
          const figure = found?.getAttribute('data-figure');
          if (figure) onPick(figure);
        })
      }
    />
  );
}
