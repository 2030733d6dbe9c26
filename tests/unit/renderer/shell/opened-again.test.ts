// @vitest-environment jsdom
import { beforeEach, expect, test } from 'vitest';
import { tellIfOpenedAgain } from '../../../../renderer/app/opened-again.ts';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { forgetEverything } from './machine.ts';

beforeEach(forgetEverything);

test('a window that was opened again says so once, and stays at its screen', () => {
  history.replaceState(null, '', '/?opened-again#/round/3');
  tellIfOpenedAgain();
  tellIfOpenedAgain();
  expect(useNotices.getState().notices).toMatchObject([
    { kind: 'problem', sentence: 'The window stopped and was opened again. Nothing saved was lost.' },
  ]);
  expect(location.search + location.hash).toBe('#/round/3');
});

test('a window that was opened by the person says nothing', () => {
  history.replaceState(null, '', '/#/round/3');
  tellIfOpenedAgain();
  expect(useNotices.getState().notices).toEqual([]);
});
