import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';

/**
 * A frame within which a table that is too wide scrolls, and not the window. As long as it is too wide, it can be
 * reached by the keyboard and is known to screen readers by its name.
 */
export function TableFrame({ name, children }: { name: string; children: ReactNode }) {
  const frame = useRef<HTMLDivElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useLayoutEffect(() => {
    const element = frame.current;
    const table = element?.firstElementChild;
    if (!element || !table) return;
    const look = () => setScrolls(element.scrollWidth > element.clientWidth);
    look();
    const watch = new ResizeObserver(look);
    watch.observe(element);
    watch.observe(table);
    return () => watch.disconnect();
  }, []);
  return (
    <div
      ref={frame}
      className="table-frame"
      {...(scrolls && { role: 'region', tabIndex: 0, 'aria-label': name })}
    >
      {children}
    </div>
  );
}
