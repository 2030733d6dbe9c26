/** A frame and a little more: what leaves the sight so soon after a scroll was scrolled away. */
const SAME_FRAME_MS = 30;
/** What a person scrolls by. The browser scrolls as well, for what comes in or moves. */
const SCROLLING = ['wheel', 'touchmove', 'pointerdown'];
const SCROLLING_KEYS = /^(Page|Arrow)|^(Home|End)$/;

/** Scrolls to it, and tells whether that moved it. */
function bring(target: Element): boolean {
  const { top, left } = target.getBoundingClientRect();
  target.scrollIntoView({ block: 'nearest' });
  const now = target.getBoundingClientRect();
  return now.top !== top || now.left !== left;
}

/**
 * What has the focus by keyboard stays in sight when something comes in above it, or when it moves in its list. What a
 * person scrolls away stays away.
 */
export function keepFocusInSight(): void {
  let watched: EventTarget | null = null;
  let wasInSight = false;
  let scrolledAt = Number.NEGATIVE_INFINITY;
  let isByHand = false;
  const watch = new IntersectionObserver((changes) => {
    const { target, isIntersecting, time } = changes.at(-1) as IntersectionObserverEntry;
    const hasMoved = wasInSight && !isIntersecting && time - scrolledAt > SAME_FRAME_MS;
    // More may come in above it before the next look, which must not take that for a scroll.
    wasInSight = isIntersecting || (hasMoved && target.matches(':focus-visible') && bring(target));
    if (!wasInSight || isIntersecting) return;
    watch.unobserve(target);
    watch.observe(target);
  });
  addEventListener('focusin', ({ target }) => {
    // React gives it back to what it moved in its list.
    if (target === watched) return;
    watched = target;
    watch.disconnect();
    wasInSight = false;
    watch.observe(target as Element);
  });
  const byHand = (is: boolean) => () => {
    isByHand = is;
  };
  for (const type of SCROLLING) addEventListener(type, byHand(true), { capture: true, passive: true });
  addEventListener('keydown', ({ key }) => byHand(SCROLLING_KEYS.test(key))(), { capture: true });
  addEventListener(
    'scroll',
    () => {
      if (isByHand) scrolledAt = performance.now();
    },
    { capture: true, passive: true },
  );
}
