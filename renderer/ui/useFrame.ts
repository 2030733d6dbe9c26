import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

interface Frame {
  frame: RefObject<HTMLDivElement | null>;
  widthRem: number;
  /** Where it begins, from the top of the page. */
  topPx: number;
  /** Whether what is in it is larger than the frame. */
  scrolls: boolean;
}

/** How much room a frame has, and whether its only child needs more. */
export function useFrame(): Frame {
  const frame = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState({ widthRem: 50, topPx: 0, scrolls: false });
  useLayoutEffect(() => {
    const element = frame.current;
    if (!element) return;
    const look = () => {
      const { clientWidth, clientHeight, scrollWidth, scrollHeight } = element;
      const now = {
        widthRem:
          clientWidth / Number.parseFloat(getComputedStyle(document.documentElement).fontSize || '16'),
        topPx: Math.round(element.getBoundingClientRect().top + scrollY),
        scrolls: scrollWidth > clientWidth || scrollHeight > clientHeight,
      };
      setRoom((before) => (JSON.stringify(before) === JSON.stringify(now) ? before : now));
    };
    look();
    const watch = new ResizeObserver(look);
    // The page as well: what is above the frame moves it.
    for (const each of [document.body, element, ...element.children]) watch.observe(each);
    return () => watch.disconnect();
  }, []);
  return { frame, ...room };
}
