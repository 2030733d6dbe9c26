// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { later } from '../../../../renderer/app/later.tsx';
import { setLink } from '../../../../renderer/stores/link.ts';
import { forgetEverything } from './machine.ts';

beforeEach(() => {
  forgetEverything();
  setLink('open');
});
afterEach(cleanup);

/** A part whose code comes, or fails to, when the test says so. */
function aPart() {
  const asked: { come(): void; fail(): void }[] = [];
  const Part = later(
    () =>
      new Promise<(props: { name: string }) => React.ReactNode>((resolve, reject) => {
        asked.push({
          come: () => resolve(({ name }) => <h1>{name}</h1>),
          fail: () => reject(new TypeError('Failed to fetch dynamically imported module')),
        });
      }),
  );
  return { Part, asked };
}
const then = (what: (() => void) | undefined) => act(async () => what?.());

test('a part is shown once its code has come, and at once from then on', async () => {
  const { Part, asked } = aPart();
  render(<Part name="Places" />);
  expect(screen.getByRole('status').textContent).toBe('Loading …');
  await then(asked[0]?.come);
  expect(screen.getByRole('heading').textContent).toBe('Places');
  cleanup();
  render(<Part name="Air" />);
  expect(screen.getByRole('heading').textContent).toBe('Air');
  expect(asked).toHaveLength(1);
});

test('one whose code was brought before is there at once', async () => {
  const { Part, asked } = aPart();
  const brought = Part.load();
  asked[0]?.come();
  await brought;
  render(<Part name="Places" />);
  expect(screen.getByRole('heading').textContent).toBe('Places');
});

test('while Pintally is away it is waited for, and it comes when Pintally is back', async () => {
  const { Part, asked } = aPart();
  render(<Part name="Places" />);
  await then(() => setLink('away'));
  await then(asked[0]?.fail);
  expect(screen.queryByRole('alert')).toBeNull();
  expect(screen.getByRole('status').textContent).toBe('Loading …');
  await then(() => setLink('open'));
  expect(asked).toHaveLength(2);
  await then(asked[1]?.come);
  expect(screen.getByRole('heading').textContent).toBe('Places');
});

test('where Pintally has other files by now, it says what to do', async () => {
  const { Part, asked } = aPart();
  render(<Part name="Places" />);
  await then(asked[0]?.fail);
  expect(screen.getByRole('alert').textContent).toContain(
    'This screen could not be loaded. Saved readings are safe. Reload Pintally.',
  );
  expect(screen.getByRole('button', { name: 'Reload' })).toBeTruthy();
});
