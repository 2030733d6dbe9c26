// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StackVolume } from '../../../../renderer/screens/stacks/StackVolume.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { StackVolume as Volume } from '../../../../shared-core/contract/stack-volume.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const volume: Volume = {
  boards: 6,
  measured: 6,
  boardFeet: 1033,
  cubicMetres: 2.43,
  mass: { boards: 6, nowKg: 1655, targetKg: 1541 },
  endUseName: 'Furniture',
  targetPct: 7,
  missing: [],
};

function open(answer: () => Volume) {
  playMachine({ 'stacks.volume': answer });
  render(
    <main>
      <StackVolume stackId={1} />
    </main>,
  );
}
const facts = async () => {
  await screen.findAllByRole('definition');
  return screen.getAllByRole('term').map((term) => [term.textContent, term.nextElementSibling?.textContent]);
};

beforeEach(forgetEverything);
afterEach(cleanup);

describe('What a stack amounts to', () => {
  test('is its board feet, cubic metres, and mass now and when fit for use', async () => {
    open(() => volume);
    expect(await facts()).toEqual([
      ['Board feet, tallied', '1,033'],
      ['Cubic metres, tallied', '2.430 m³'],
      ['Mass now', '1655 kg'],
      ['Mass at 7.0 %, for Furniture', '1541 kg'],
    ]);
    await expectNoBarriers();
  });

  test('says how many boards the mass is of, and what is left out', async () => {
    open(() => ({
      ...volume,
      boards: 7,
      mass: { boards: 4, nowKg: 900, targetKg: 850 },
      missing: ['1 board without width or length left out.', '2 boards not probed yet: mass not known.'],
    }));
    expect((await facts())[2]).toEqual(['Mass now, of 4 boards', '900 kg']);
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      '1 board without width or length left out.',
      '2 boards not probed yet: mass not known.',
    ]);
  });

  test('of boards without sizes, nothing is counted', async () => {
    open(() => ({
      ...volume,
      measured: 0,
      boardFeet: 0,
      cubicMetres: 0,
      mass: null,
      missing: ['6 boards without width or length left out.'],
    }));
    expect(await screen.findByText(/6 boards without/)).toBeTruthy();
    expect(screen.queryAllByRole('definition')).toEqual([]);
  });

  test('that cannot be told says why', async () => {
    open(() => {
      throw new Refusal(message('refusal.not-found', { what: 'stack' }));
    });
    expect(await screen.findByText(/That stack is not in this yard\./)).toBeTruthy();
  });
});
