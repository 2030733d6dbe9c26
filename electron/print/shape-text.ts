/// <reference path="./font-engines.d.ts" />
import bidiFactory from 'bidi-js';
import type { Font } from 'fontkit';
import { UNITS_PER_EM } from '../../shared-core/drawing/page.ts';
import type { Shape, Shapes } from '../../shared-core/drawing/shapes.ts';
import { createScriptFonts } from './script-fonts.ts';

const bidi = bidiFactory();

/** In place of a character that no font has, so that the gap is seen. */
const MISSING = '□';

/** Joins letters, or is written over or under one: goes with the font of what is before it. */
const goesWithLast = (character: string): boolean => /^[\p{M}\p{Cf}\s]$/u.test(character);

/** Characters of one direction and one font. */
interface Run {
  text: string;
  level: number;
  font: Font;
}

/** Shapes lines of text of any script: letters that join, marks in their places, both directions of writing. */
export function createShaper() {
  const fonts = createScriptFonts();

  function runsOf(text: string, missing: Set<string>): Run[] {
    const { levels } = bidi.getEmbeddingLevels(text);
    const runs: Run[] = [];
    let at = 0;
    for (const character of text) {
      const level = levels[at] ?? 0;
      at += character.length;
      const last = runs.at(-1);
      const codePoint = character.codePointAt(0) as number;
      const stays = last && goesWithLast(character) && last.font.hasGlyphForCodePoint(codePoint);
      const found = stays ? last.font : fonts.of(codePoint);
      // Marks of direction have done their work, and one box is enough for a letter with what is written over or under it:
      // a line has no room for more.
      if (found === null && /^[\p{Cf}\p{M}]$/u.test(character)) continue;
      if (found === null) missing.add(character);
      const font = found ?? fonts.usual();
      const shown = found ? (level % 2 && bidi.getMirroredCharacter(character)) || character : MISSING;
      if (last && last.font === font && last.level === level) last.text += shown;
      else runs.push({ text: shown, level, font });
    }
    return inSight(runs);
  }

  return function shape(texts: readonly string[]): Shapes {
    const outlines: string[] = [];
    const missing = new Set<string>();
    const known = new Map<Font, Map<number, number>>();
    const outlineOf = (font: Font, { id, path }: ReturnType<Font['layout']>['glyphs'][number]): number => {
      const ofFont = known.get(font) ?? new Map<number, number>();
      known.set(font, ofFont);
      const index = ofFont.get(id) ?? outlines.push(pathData(path, UNITS_PER_EM / font.unitsPerEm)) - 1;
      ofFont.set(id, index);
      return index;
    };
    const shapeOf = (text: string): Shape => {
      const line = text
        .normalize('NFC')
        .replace(/[\s\p{Cc}]+/gu, ' ')
        .trim();
      const glyphs: Shape['glyphs'] = [];
      let atEm = 0;
      for (const { text: part, level, font } of runsOf(line, missing)) {
        const made = font.layout(part, undefined, undefined, undefined, level % 2 ? 'rtl' : 'ltr');
        for (const [index, glyph] of made.glyphs.entries()) {
          const { xAdvance, xOffset, yOffset } = made.positions[index] as (typeof made.positions)[number];
          const [widthEm, xEm, yEm] = [xAdvance, xOffset, yOffset].map(
            (units) => units / font.unitsPerEm,
          ) as [number, number, number];
          glyphs.push({ outline: outlineOf(font, glyph), xEm: atEm + xEm, yEm, widthEm });
          atEm += widthEm;
        }
      }
      return {
        widthEm: atEm,
        isRtl: (bidi.getEmbeddingLevels(line).paragraphs[0]?.level ?? 0) % 2 === 1,
        glyphs,
      };
    };
    const shaped = texts.map((text) => [text, shapeOf(text)] as const);
    return { texts: Object.fromEntries(shaped), outlines, missing: [...missing] };
  };
}

/** Runs as they stand from the left: from the highest level down, each stretch of it is turned round (UAX #9, L2). */
function inSight(runs: readonly Run[]): Run[] {
  const found = [...runs];
  for (let level = Math.max(0, ...runs.map((run) => run.level)); level > 0; level--) {
    let from = 0;
    while (from < found.length) {
      let to = from;
      while (to < found.length && (found[to] as Run).level >= level) to++;
      found.splice(from, to - from, ...found.slice(from, to).reverse());
      from = Math.max(to, from + 1);
    }
  }
  return found;
}

const letters: Record<string, string> = {
  moveTo: 'M',
  lineTo: 'L',
  quadraticCurveTo: 'Q',
  bezierCurveTo: 'C',
  closePath: 'Z',
};

/** Fonts have y up; drawings have it down. */
const pathData = ({ commands }: { commands: { command: string; args: number[] }[] }, scale: number): string =>
  commands
    .map(
      ({ command, args }) =>
        `${letters[command]}${args.map((value, index) => Math.round((index % 2 ? -value : value) * scale)).join(' ')}`,
    )
    .join('');
