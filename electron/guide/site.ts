/**
 * The guide as a site of plain pages, from the Markdown that Help shows, in `dist/guide/`:
 *
 *     npm run guide:site
 */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Marked, type Tokens } from 'marked';
import { headingId, readChapter } from './read-chapter.ts';

const root = resolve(import.meta.dirname, '../..');
const help = join(root, 'renderer/help');
const ids: string[] = JSON.parse(readFileSync(join(help, 'guide/chapters.json'), 'utf8'));

const reader = new Marked({
  renderer: {
    heading({ tokens, depth, text }: Tokens.Heading) {
      return `<h${depth} id="${headingId(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
  },
  walkTokens(token) {
    if (token.type === 'link') token.href = token.href.replace(/\.md(?=#|$)/, '.html');
    if (token.type === 'image') token.href = token.href.replace('../../', '');
  },
});

/** Writes the site to a folder, which is emptied first. */
export function writeSite(folder: string): void {
  const chapters = ids.map((id) => {
    const markdown = readFileSync(join(help, `guide/en/${id}.md`), 'utf8');
    // What a chapter may not have is refused here as well.
    return { id, title: readChapter(markdown).title, html: reader.parse(markdown) as string };
  });
  const contents = chapters.map(({ id, title }) => `<li><a href="${id}.html">${title}</a></li>`).join('\n');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  cpSync(join(help, 'pictures'), join(folder, 'pictures'), { recursive: true });
  cpSync(join(help, 'site.css'), join(folder, 'site.css'));
  const write = (id: string, title: string, main: string) =>
    writeFileSync(
      join(folder, `${id}.html`),
      `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · Pintally</title>
<link rel="stylesheet" href="site.css">
<nav><ol>
${contents}
</ol></nav>
<main>
${main}</main>
</html>
`,
    );
  write('index', 'Guide', `<h1>Pintally</h1>\n<ol>\n${contents}\n</ol>\n`);
  chapters.forEach(({ id, title, html }, at) => {
    const next = chapters[at + 1];
    write(id, title, `${html}${next ? `<p><a href="${next.id}.html">${next.title}</a></p>\n` : ''}`);
  });
}

if (resolve(process.argv[1] ?? '') === import.meta.filename) {
  const folder = join(root, 'dist/guide');
  writeSite(folder);
  console.log(join(folder, 'index.html'));
}
