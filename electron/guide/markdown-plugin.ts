import type { Plugin } from 'vite';
import { readChapter } from './read-chapter.ts';

/**
 * A chapter's Markdown becomes a module when the window is built: what it says, and the addresses of its pictures. The
 * window holds no reader of Markdown, and nothing in it is ever taken for HTML.
 */
export const guideMarkdown = (): Plugin => ({
  name: 'guide-markdown',
  transform(source, id) {
    if (!id.endsWith('.md')) return null;
    const chapter = readChapter(source);
    const names = chapter.blocks.flatMap((block) => (block.kind === 'picture' ? [block.name] : []));
    const imports = names.map((name, at) => `import picture${at} from '../../pictures/${name}.webp';`);
    const pictures = names.map((name, at) => `${JSON.stringify(name)}: picture${at}`);
    return {
      code: [
        ...imports,
        `export const chapter = ${JSON.stringify(chapter)};`,
        `export const pictures = { ${pictures.join(', ')} };`,
      ].join('\n'),
      map: null,
    };
  },
});
