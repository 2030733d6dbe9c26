import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { writeSite } from '../../../electron/guide/site.ts';
import ids from '../../../renderer/help/guide/chapters.json' with { type: 'json' };
import { languages } from '../../../shared-core/words/languages.ts';

const folder = join(mkdtempSync(join(tmpdir(), 'pintally-guide-')), 'guide');
await writeSite(folder);
const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.html'),
);
const read = (page: string) => readFileSync(join(folder, page), 'utf8');

test('the site has a page for each chapter and one that lists them in each language, and one to choose', () => {
  const inLanguages = languages.flatMap((language) =>
    ['index', ...ids].map((id) => join(language, `${id}.html`)),
  );
  expect(pages.sort()).toEqual(['index.html', ...inLanguages].sort());
});

test.each(pages)(
  '%s links to pages, headings and pictures that are there, and to nothing elsewhere',
  (page) => {
    const addresses = [...read(page).matchAll(/(?:href|src)="([^"]*)"/g)].map(([, address]) => address!);
    expect(addresses.length).toBeGreaterThan(page === 'index.html' ? languages.length : ids.length);
    const broken = addresses.filter((address) => {
      const [file, heading] = decodeURI(address).split('#') as [string, string?];
      const target = file === '' ? page : join(dirname(page), file);
      return !existsSync(join(folder, target)) || (heading && !read(target).includes(`id="${heading}"`));
    });
    expect(broken).toEqual([]);
  },
);

test.each(languages)('each page in %s says so, and leads to the same page in the others', (language) => {
  for (const id of ['index', ...ids]) {
    const html = read(join(language, `${id}.html`));
    expect(html).toContain(`<html lang="${language}">`);
    const others = [...html.matchAll(/href="([^"]*)" lang="(\w+)"/g)].map(([, address, to]) => [address, to]);
    expect(others).toEqual(
      languages.filter((each) => each !== language).map((each) => [`../${each}/${id}.html`, each]),
    );
  }
});
