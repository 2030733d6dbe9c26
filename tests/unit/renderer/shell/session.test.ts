// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createEntry, type Entry } from '../../../../renderer/data/session.ts';

const session = { key: 'a'.repeat(64), hostMark: 'b'.repeat(64) };
const ticket = 'c'.repeat(64);

/** Another tab has its own storage: this one's is emptied. */
function openTab(address: string, stored: object | null = null): Entry {
  history.replaceState(null, '', address);
  sessionStorage.clear();
  if (stored) sessionStorage.setItem('pintally.session', JSON.stringify(stored));
  return createEntry();
}

const channels: BroadcastChannel[] = [];
beforeEach(() => {
  const Real = BroadcastChannel;
  vi.stubGlobal(
    'BroadcastChannel',
    class extends Real {
      constructor(name: string) {
        super(name);
        channels.push(this);
      }
    },
  );
});
afterEach(() => {
  for (const channel of channels.splice(0)) channel.close();
  vi.unstubAllGlobals();
});

test('the ticket leaves the address, and the session is in none', () => {
  const entry = openTab(`/?open=${ticket}&words=pseudo#/meter`);
  expect(entry.shows()).toEqual({ ticket });
  expect(location.href).toBe(`${location.origin}/?words=pseudo#/meter`);
  expect(entry.letIn(session)).toBe(true);
  expect(entry.shows()).toEqual({ key: session.key });
  expect(location.href).not.toContain(session.key);
  expect(document.cookie).toBe('');
});

test('a reload shows the key again', () => {
  openTab(`/?open=${ticket}`).letIn(session);
  expect(createEntry().shows()).toEqual({ key: session.key });
});

test('a start link that was opened before leaves a tab with the session that it has', () => {
  const entry = openTab(`/?open=${ticket}`, session);
  entry.notLetIn();
  expect(entry.shows()).toEqual({ key: session.key });
});

test('another host than the one that let the tab in is not taken for it', () => {
  const entry = openTab('/', session);
  expect(entry.letIn(session)).toBe(true);
  expect(entry.letIn({ ...session, hostMark: 'd'.repeat(64) })).toBe(false);
});

test.each(['not json', '{"key":"short"}', 'null'])('what else is stored (%s) lets nobody in', (text) => {
  sessionStorage.setItem('pintally.session', text);
  history.replaceState(null, '', '/');
  expect(createEntry().shows()).toBeNull();
});

test('a second tab gets the session from the first, also where the first is let in later', async () => {
  const second = openTab('/');
  const given = vi.fn();
  second.onGiven(given);
  expect(second.shows()).toBeNull();
  const first = openTab(`/?open=${ticket}`);
  first.letIn(session);
  await vi.waitFor(() => expect(given).toHaveBeenCalledOnce());
  expect(second.shows()).toEqual({ key: session.key });

  const third = openTab('/');
  await vi.waitFor(() => expect(third.shows()).toEqual({ key: session.key }));
});

test('a session that the host refused is not taken from another tab again', async () => {
  const stale = openTab('/', session);
  const other = openTab('/', session);
  stale.notLetIn();
  const fresh = { key: 'e'.repeat(64), hostMark: 'f'.repeat(64) };
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(other.shows()).toEqual({ key: session.key });
  expect(stale.shows()).toBeNull();
  openTab(`/?open=${ticket}`).letIn(fresh);
  await vi.waitFor(() => expect(stale.shows()).toEqual({ key: fresh.key }));
});
