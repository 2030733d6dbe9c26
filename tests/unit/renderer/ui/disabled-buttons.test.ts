import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const renderer = join(import.meta.dirname, '../../../../renderer');
const read = (file: string) => readFileSync(join(renderer, file), 'utf8');

/** Relative luminance of a color like #aabbcc. Source: WCAG 2.2, definition of relative luminance. */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Source: WCAG 2.2, definition of contrast ratio. */
function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

// axe skips disabled buttons, but a person has to read what they could do once something is chosen.
test.each(['light', 'dark', 'high-contrast'])('a disabled button of any kind can be read, %s', (theme) => {
  const [, rule = ''] =
    /\n\.button:disabled,\s*\.button\[aria-disabled="true"\] \{([^}]*)\}/.exec(read('ui/button.css')) ?? [];
  const [, tokens = ''] = new RegExp(`data-theme="${theme}"\\] \\{([^}]*)\\}`).exec(read('tokens.css')) ?? [];
  const colorOf = (property: string): string => {
    const [, token] = new RegExp(`[\\s;]${property}: var\\((--[a-z-]+)\\)`).exec(rule) ?? [];
    const [, color] = new RegExp(`${token}: (#[0-9a-f]{6})`).exec(tokens) ?? [];
    return color ?? '';
  };
  expect(contrast(colorOf('background'), colorOf('color'))).toBeGreaterThanOrEqual(4.5);
});
