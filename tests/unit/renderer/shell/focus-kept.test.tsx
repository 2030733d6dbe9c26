// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, expect, test, vi } from 'vitest';
import { useFocusKept } from '../../../../renderer/app/useFocusKept.ts';

afterEach(cleanup);

/** A meter's buttons: "Connect" gives way to "Disconnect"; "Save" is off for a moment. */
function Frame() {
  useFocusKept();
  const [isConnected, setConnected] = useState(false);
  const [isBusy, setBusy] = useState(false);
  return (
    <main>
      <h1 tabIndex={-1}>Meter</h1>
      <p>
        {isConnected && <button type="button">Disconnect</button>}
        {!isConnected && (
          <button type="button" onClick={() => setConnected(true)}>
            Connect
          </button>
        )}
      </p>
      {!isConnected && (
        <button type="button" onClick={() => setConnected(true)}>
          Connect by name
        </button>
      )}
      <button
        type="button"
        disabled={isBusy}
        onClick={() => {
          setBusy(true);
          setTimeout(() => setBusy(false), 20);
        }}
      >
        Save
      </button>
    </main>
  );
}

const button = (name: string) => screen.getByRole('button', { name });

async function pressByKey(name: string): Promise<void> {
  render(<Frame />);
  act(() => button(name).focus());
  await userEvent.keyboard('{Enter}');
}

test('where a button gives way to another, that one has the focus', async () => {
  await pressByKey('Connect');
  await vi.waitFor(() => expect(document.activeElement).toBe(button('Disconnect')));
});

test('where nothing is left beside it, the heading has the focus', async () => {
  await pressByKey('Connect by name');
  await vi.waitFor(() => expect(document.activeElement).toBe(screen.getByRole('heading')));
});

test('a button that was off for a moment has the focus again', async () => {
  await pressByKey('Save');
  act(() => button('Save').blur());
  await vi.waitFor(() => expect(document.activeElement).toBe(button('Save')));
});

test('a press on the page beside all controls is meant', async () => {
  await pressByKey('Save');
  await userEvent.click(screen.getByRole('paragraph'));
  await new Promise((passed) => setTimeout(passed, 200));
  expect(document.activeElement).toBe(document.body);
});
