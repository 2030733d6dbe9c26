// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { LicensesScreen } from '../../../../renderer/help/LicensesScreen.tsx';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

async function open() {
  playMachine({});
  render(
    <main>
      <LicensesScreen />
    </main>,
  );
  await screen.findByLabelText('Find a package');
  return userEvent.setup();
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('each package has a heading, and its license unfolds', async () => {
  const user = await open();
  expect(screen.getByRole('heading', { name: /^react \d/ })).toBeTruthy();
  await user.type(screen.getByLabelText('Find a package'), 'zod');
  await user.click(screen.getByText('License text'));
  expect(screen.getByText(/Copyright \(c\) 2025 Colin McDonnell/)).toBeTruthy();
});

test('can be searched by name and by license, and says where nothing is found', async () => {
  const user = await open();
  const field = screen.getByLabelText('Find a package');
  await user.type(field, 'ofl');
  const headings = screen.getAllByRole('heading', { level: 2 }).map(({ textContent }) => textContent);
  expect(headings.length).toBeGreaterThan(0);
  expect(headings.filter((text) => !text?.startsWith('@fontsource'))).toEqual([]);
  await expectNoBarriers();
  await user.type(field, 'zz');
  expect(screen.getByRole('status').textContent).toBe('No package has “oflzz”.');
});

test('says where a package came without the text', async () => {
  const user = await open();
  await user.type(screen.getByLabelText('Find a package'), 'fontkit');
  expect(screen.getByText(/came without the text/)).toBeTruthy();
  expect(screen.getByText(/Copyright \(c\) Devon Govett/)).toBeTruthy();
});
