import { type RefObject, useEffect, useRef, useState } from 'react';

/** The width of an element as the layout gives it, px; drawings that fill a panel keep their type size by it. */
export function useWidth(first: number): [RefObject<SVGSVGElement | null>, number] {
  const element = useRef<SVGSVGElement>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    if (!element.current) return;
    const watcher = new ResizeObserver(([entry]) => setWidth(Math.max(120, Math.round(entry.contentRect.width))));
    watcher.observe(element.current);
    return () => watcher.disconnect();
  }, []);
  return [element, width];
}
