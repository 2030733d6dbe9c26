let isPressed = false;
addEventListener('pointerdown', () => (isPressed = true), true);
for (const end of ['pointerup', 'pointercancel']) addEventListener(end, () => (isPressed = false), true);

/**
 * What a field says once it was left, said after the press that left it: sooner, it would move the button from under
 * the pointer, and the press would be lost.
 */
export function afterPress(say: () => void): void {
  if (isPressed) addEventListener('pointerup', () => setTimeout(say), { once: true });
  else say();
}
