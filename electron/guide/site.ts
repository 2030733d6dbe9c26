/**
 * The guide as a site of plain pages, from the Markdown that Help shows, in `dist/guide/`, in every language:
 *
 *     npm run guide:site
 */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Marked, type Tokens } from 'marked';
import { catalogOf, type Language, languages } from '../../shared-core/words/languages.ts';
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
    if (token.type === 'image') token.href = token.href.replace('../../', '../');
  },
});

interface Page {
  /** The file's name, without the ending. */
  id: string;
  title: string;
  html: string;
}

/** To a page in other languages, each called what it is called in itself. */
async function languageLinks(others: readonly Language[], addressIn: (language: Language) => string) {
  const links = others.map(async (language) => {
    const name = (await catalogOf(language))[`settings.language.${language}`];
    return `<a href="${addressIn(language)}" lang="${language}" hreflang="${language}">${name}</a>`;
  });
  return (await Promise.all(links)).join('\n');
}

/** What each page begins with. */
const head = (language: Language, title: string, toRoot = '') => `<!doctype html>
<html lang="${language}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="${toRoot}site.css">
`;

async function writePages(folder: string, language: Language): Promise<void> {
  const chapters: Page[] = ids.map((id) => {
    const markdown = readFileSync(join(help, `guide/${language}/${id}.md`), 'utf8');
    // What a chapter may not have is refused here as well.
    return { id, title: readChapter(markdown).title, html: reader.parse(markdown) as string };
  });
  const contents = chapters.map(({ id, title }) => `<li><a href="${id}.html">${title}</a></li>`).join('\n');
  mkdirSync(join(folder, language));
  const write = async ({ id, title, html }: Page) =>
    writeFileSync(
      join(folder, language, `${id}.html`),
      `${head(language, `${title} · Pintally`, '../')}<nav>
<p>
${await languageLinks(
  languages.filter((each) => each !== language),
  (other) => `../${other}/${id}.html`,
)}
</p>
<ol>
${contents}
</ol>
</nav>
<main>
${html}</main>
</html>
`,
    );
  const title = (await catalogOf(language))['help.title'];
  await write({ id: 'index', title, html: `<h1>Pintally</h1>\n<ol>\n${contents}\n</ol>\n` });
  for (const [at, chapter] of chapters.entries()) {
    const next = chapters[at + 1];
    const onward = next ? `<p><a href="${next.id}.html">${next.title}</a></p>\n` : '';
    await write({ ...chapter, html: chapter.html + onward });
  }
}

/** Writes the site to a folder, which is emptied first: one folder of pages for each language. */
export async function writeSite(folder: string): Promise<void> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  cpSync(join(help, 'pictures'), join(folder, 'pictures'), { recursive: true });
  cpSync(join(help, 'site.css'), join(folder, 'site.css'));
  for (const language of languages) await writePages(folder, language);
  const choice = await languageLinks(languages, (language) => `${language}/index.html`);
  writeFileSync(join(folder, 'index.html'), `${head('en', 'Pintally')}<nav>\n${choice}\n</nav>\n</html>\n`);
}

if (resolve(process.argv[1] ?? '') === import.meta.filename) {
  const folder = join(root, 'dist/guide');
  await writeSite(folder);
  console.log(join(folder, 'index.html'));
}
