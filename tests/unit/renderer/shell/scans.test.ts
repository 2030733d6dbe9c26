// @vitest-environment jsdom

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { useNavigation } from '../../../../renderer/stores/navigation.ts';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { followScans } from '../../../../renderer/stores/scans.ts';
import { EXAMPLE_CHECK_CODE } from '../../../../shared-core/reports/check-code.ts';
import { forgetEverything, playMachine } from './machine.ts';

let stop: () => void = () => undefined;
function open() {
  forgetEverything();
  location.hash = '#/places';
  useNavigation.setState({ route: { name: 'places' } });
  const machine = playMachine({
    'labels.boardOf': ({ code }) => ({ boardId: code === 'OAK-07' ? 7 : null }),
  });
  stop = followScans();
  return machine;
}
beforeEach(() => document.body.replaceChildren());
afterEach(() => stop());

/** Keys so far apart, ms, on what has the focus. */
function keys(text: string, apartMs: number): boolean {
  let atMs = 1000;
  let wasTaken = false;
  for (const key of [...text, 'Enter']) {
    const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
    atMs += apartMs;
    Object.defineProperty(event, 'timeStamp', { value: atMs });
    (document.activeElement ?? document.body).dispatchEvent(event);
    wasTaken = event.defaultPrevented;
  }
  return wasTaken;
}

function focused<K extends keyof HTMLElementTagNameMap>(name: K): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  document.body.append(element);
  element.focus();
  return element;
}

describe('a label scanner', () => {
  test('leads to the board of the label, on any screen', async () => {
    open();
    expect(keys('OAK-07', 4)).toBe(true);
    await vi.waitFor(() => expect(location.hash).toBe('#/boards/7'));
  });

  test('does so while a button has the focus, which its Enter does not press', async () => {
    open();
    const button = focused('button');
    expect(keys('OAK-07', 4)).toBe(true);
    await vi.waitFor(() => expect(location.hash).toBe('#/boards/7'));
    expect(document.activeElement).toBe(button);
  });

  test('of the code of a printed report goes on to check it', async () => {
    const machine = open();
    keys(EXAMPLE_CHECK_CODE, 4);
    await vi.waitFor(() =>
      expect(location.hash).toBe(`#/check?code=${encodeURIComponent(EXAMPLE_CHECK_CODE)}`),
    );
    expect(machine.inputsOf('labels.boardOf')).toEqual([]);
  });

  test('of an ID that no board has says so, and stays where it is', async () => {
    open();
    keys('ASH-99', 4);
    await vi.waitFor(() =>
      expect(useNotices.getState().notices).toMatchObject([
        { kind: 'problem', sentence: 'No board here has the ID ASH-99. Scan again, or search All boards.' },
      ]),
    );
    expect(location.hash).toBe('#/places');
  });

  test.each(['input', 'textarea', 'select'] as const)('types into a field: %s', (name) => {
    const machine = open();
    focused(name);
    expect(keys('OAK-07', 4)).toBe(false);
    expect(machine.inputsOf('labels.boardOf')).toEqual([]);
  });

  test('is left to a round, and to a dialog', () => {
    const machine = open();
    useNavigation.setState({ route: { name: 'round', id: 1 } });
    keys('OAK-07', 4);
    useNavigation.setState({ route: { name: 'places' } });
    document.body.innerHTML = '<div role="dialog"></div>';
    keys('OAK-07', 4);
    expect(machine.inputsOf('labels.boardOf')).toEqual([]);
  });

  test('is told from a hand, which is slower', () => {
    const machine = open();
    expect(keys('OAK-07', 90)).toBe(false);
    expect(machine.inputsOf('labels.boardOf')).toEqual([]);
  });
});
