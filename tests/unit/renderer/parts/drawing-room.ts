/** jsdom lays nothing out. This gives every element a size, as drawings and scrolling lists ask for one. */
globalThis.ResizeObserver ??= class {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
};
for (const [size, px] of [
  ['clientWidth', 800],
  ['clientHeight', 600],
] as const) {
  Object.defineProperty(Element.prototype, size, { configurable: true, get: () => px });
}
