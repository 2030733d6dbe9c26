/** A protocol of our own: a page from a file could read other files. */
export const SCHEME = 'pintally';
export const pageUrl = `${SCHEME}://window/`;

/** Whether an address is the window's own page, at whatever screen. */
export function isOurPage(url: string | undefined): boolean {
  if (url === undefined || !URL.canParse(url)) return false;
  const { protocol, host, pathname } = new URL(url);
  return protocol === `${SCHEME}:` && host === 'window' && pathname === '/';
}

/** The same page at the same screen, which then says that the window stopped and was opened again. */
export function openedAgain(url: string): string {
  const hash = isOurPage(url) ? new URL(url).hash : '';
  return `${pageUrl}?opened-again${hash}`;
}

/** The same page with the guide on it: only the hash differs, so the page is not loaded again. */
export function guideOn(url: string): string {
  const guide = new URL(isOurPage(url) ? url : pageUrl);
  guide.hash = '#/help';
  return guide.href;
}
