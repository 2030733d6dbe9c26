/** jsdom lays nothing out. This gives every element a size, as drawings and scrolling lists ask for one; rows are low. */
globalThis.ResizeObserver ??= class {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
};
for (const [size, px] of [
  ['clientWidth', 800],
  ['clientHeight', 600],
  ['offsetHeight', 60],
] as const) {
  Object.defineProperty(size === 'offsetHeight' ? HTMLElement.prototype : Element.prototype, size, {
    configurable: true,
    get: () => px,
  });
}
// jsdom has it, and only says that it cannot.
window.scrollTo = () => undefined;
