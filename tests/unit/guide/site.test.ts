import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeSite } from '../../../electron/guide/site.ts';
import ids from '../../../renderer/help/guide/chapters.json' with { type: 'json' };

const folder = join(mkdtempSync(join(tmpdir(), 'pintally-guide-')), 'guide');
writeSite(folder);
const pages = readdirSync(folder).filter((file) => file.endsWith('.html'));
const read = (page: string) => readFileSync(join(folder, page), 'utf8');

test('the site has a page for each chapter, and one that lists them', () => {
  expect(pages.sort()).toEqual(['index', ...ids].map((id) => `${id}.html`).sort());
});

test.each(pages)(
  '%s links to pages, headings and pictures that are there, and to nothing elsewhere',
  (page) => {
    const addresses = [...read(page).matchAll(/(?:href|src)="([^"]*)"/g)].map(([, address]) => address!);
    expect(addresses.length).toBeGreaterThan(ids.length);
    const broken = addresses.filter((address) => {
      const [file, heading] = address.split('#') as [string, string?];
      const target = file || page;
      return !existsSync(join(folder, target)) || (heading && !read(target).includes(`id="${heading}"`));
    });
    expect(broken).toEqual([]);
  },
);
