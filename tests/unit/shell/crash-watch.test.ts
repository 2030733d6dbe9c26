import { expect, test } from 'vitest';
import { createCrashWatch } from '../../../electron/shell/crash-watch.ts';
import { menuTemplate } from '../../../electron/shell/menu.ts';
import { guideOn, isOurPage, openedAgain, pageUrl } from '../../../electron/shell/pages.ts';
import { say } from '../app/a-window.ts';

test('a window that stopped is opened again, but the third time in a minute the person is asked', () => {
  let nowMs = 0;
  const watch = createCrashWatch(() => nowMs);
  const endsAt = (ms: number) => {
    nowMs = ms;
    return watch.ended();
  };
  expect([0, 20_000, 40_000].map(endsAt)).toEqual(['open-again', 'open-again', 'ask']);
  watch.forget();
  expect([50_000, 55_000, 110_001, 115_001].map(endsAt)).toEqual([
    'open-again',
    'open-again',
    'open-again',
    'open-again',
  ]);
});

test('a window that is opened again shows the screen that it had', () => {
  expect(openedAgain(`${pageUrl}#/round/3`)).toBe(`${pageUrl}?opened-again#/round/3`);
  expect(openedAgain('')).toBe(`${pageUrl}?opened-again`);
  expect(isOurPage(openedAgain(`${pageUrl}#/round/3`))).toBe(true);
});

test.each([
  undefined,
  '',
  'https://window/',
  'pintally://other/',
  'pintally://window/x.html',
  'file:///window/',
])('no page of ours: %s', (url) => expect(isOurPage(url)).toBe(false));

const entriesOf = (isPackaged: boolean, opened: string[] = []) =>
  menuTemplate({
    say,
    isMac: false,
    isPackaged,
    openGuide: () => opened.push('guide'),
    openLog: () => opened.push('log'),
  }).flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []));
const rolesOf = (isPackaged: boolean): unknown[] => entriesOf(isPackaged).map(({ role }) => role);

test('the menu has Reload and Zoom, and the developer tools only in development', () => {
  for (const role of ['reload', 'zoomIn', 'zoomOut', 'resetZoom', 'copy', 'paste', 'quit']) {
    expect(rolesOf(true)).toContain(role);
  }
  expect(rolesOf(false)).toContain('toggleDevTools');
  expect(rolesOf(true)).not.toContain('toggleDevTools');
});

test('Help opens the guide, at the page that is open, and the error report', () => {
  const opened: string[] = [];
  for (const { click } of entriesOf(true, opened)) (click as (() => void) | undefined)?.();
  expect(opened).toEqual(['guide', 'log']);
  expect(guideOn(`${pageUrl}?opened-again#/round/3`)).toBe(`${pageUrl}?opened-again#/help`);
  expect(guideOn('')).toBe(`${pageUrl}#/help`);
});
