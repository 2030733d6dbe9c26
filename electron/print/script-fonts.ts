/// <reference path="./font-engines.d.ts" />
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';

const packages = createRequire(import.meta.url);

/** Fonts of scripts that DejaVu does not have, each cut into files by characters; the first that has a character draws it. */
const families = [
  'noto-sans-sc',
  'noto-sans-kr',
  'noto-sans-devanagari',
  'noto-sans-bengali',
  'noto-sans-tamil',
  'noto-sans-thai',
] as const;
const WEIGHT = 400;

interface FontFile {
  path: string;
  ranges: readonly (readonly [first: number, last: number])[];
}

/** The files of a family, by the list of characters that comes with it. */
function filesOf(family: (typeof families)[number]): FontFile[] {
  const ranges = packages(`@fontsource/${family}/unicode.json`) as Record<string, string>;
  return Object.entries(ranges).map(([name, unicode]) => ({
    path: `@fontsource/${family}/files/${family}-${name.replace(/[[\]]/g, '')}-${WEIGHT}-normal.woff2`,
    ranges: unicode.split(',').map((range) => {
      const [first = Number.NaN, last = first] = range
        .replace('U+', '')
        .split('-')
        .map((hex) => Number.parseInt(hex, 16));
      return [first, last] as const;
    }),
  }));
}

/** Finds the font of a character. A file is read when its first character comes, some 10 ms to 90 ms. */
export function createScriptFonts() {
  const read = new Map<string, Font>();
  let files: FontFile[] | null = null;
  const font = (path: string): Font => {
    const known = read.get(path) ?? create(readFileSync(packages.resolve(path)));
    read.set(path, known);
    return known;
  };
  const usual = () => font('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf');
  return {
    usual,
    /** Null where no font has it. */
    of(codePoint: number): Font | null {
      if (usual().hasGlyphForCodePoint(codePoint)) return usual();
      files ??= families.flatMap(filesOf);
      for (const { path, ranges } of files) {
        if (!ranges.some(([first, last]) => codePoint >= first && codePoint <= last)) continue;
        if (font(path).hasGlyphForCodePoint(codePoint)) return font(path);
      }
      return null;
    },
  };
}
