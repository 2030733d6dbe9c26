import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

const CONTENT_TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

/** Stands in the built page for the word that lets a style in. */
const NONCE = '__NONCE__';

/**
 * A file of the built window, with the headers it is served under. Each load of the page gets another nonce: the
 * window's parts write a few style elements, and only those that carry it are taken.
 *
 * @param path     within the folder; empty for the page itself
 * @param connect  what the page may connect to, besides its own origin
 * @param read     reads a file; throws where there is none
 * @returns        null for a path outside the folder
 * @throws         where there is no such file
 */
export async function windowFile(
  rendererDir: string,
  path: string,
  connect: string,
  read: (file: string) => Promise<Buffer> = readFile,
) {
  const file = normalize(join(rendererDir, path === '' ? 'index.html' : decodeURIComponent(path)));
  if (!file.startsWith(normalize(rendererDir) + sep)) return null;
  const nonce = randomBytes(16).toString('base64');
  const bytes = await read(file);
  return {
    bytes: extname(file) === '.html' ? Buffer.from(bytes.toString('utf8').replaceAll(NONCE, nonce)) : bytes,
    headers: {
      'Content-Type': CONTENT_TYPES[extname(file)] ?? 'application/octet-stream',
      'Content-Security-Policy': [
        "default-src 'none'",
        "script-src 'self'",
        `style-src 'self' 'nonce-${nonce}'`,
        "img-src 'self' data: blob:",
        "font-src 'self'",
        `connect-src 'self' ${connect}`,
        'frame-src blob:',
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
      ].join('; '),
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'no-referrer',
      'Cross-Origin-Resource-Policy': 'same-origin',
      'Cross-Origin-Opener-Policy': 'same-origin',
      'Cache-Control': 'no-store',
    },
  };
}
