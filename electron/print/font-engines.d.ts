/** What we use of two libraries that bring no types. */
declare module 'fontkit' {
  interface Path {
    commands: { command: string; args: number[] }[];
  }
  interface Glyph {
    id: number;
    path: Path;
  }
  interface GlyphPosition {
    xAdvance: number;
    xOffset: number;
    yOffset: number;
  }
  export interface Font {
    unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(
      text: string,
      features?: object,
      script?: string,
      language?: string,
      direction?: 'ltr' | 'rtl',
    ): { glyphs: Glyph[]; positions: GlyphPosition[] };
  }
  export function create(bytes: Uint8Array): Font;
}

declare module 'bidi-js' {
  interface Levels {
    levels: Uint8Array;
    paragraphs: { level: number }[];
  }
  export default function bidi(): {
    getEmbeddingLevels(text: string): Levels;
    getMirroredCharacter(character: string): string | null;
  };
}
