// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StackVolume } from '../../../../renderer/features/stacks/StackVolume.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { StackVolume as Volume } from '../../../../shared-core/contract/stack-volume.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const volume: Volume = {
  boards: 6,
  measured: 6,
  boardFeet: 1033,
  cubicMeters: 2.43,
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

describe('The volume and weight of a stack', () => {
  test('is its board feet, cubic meters, and weight now and at its target', async () => {
    open(() => volume);
    expect(await facts()).toEqual([
      ['Tally in board feet', '1,033'],
      ['Tally in cubic meters', '2.43 m³'],
      ['Weight now', '1,655 kg'],
      ['Weight at target, 7.0% (Furniture)', '1,541 kg'],
    ]);
    await expectNoBarriers();
  });

  test('shows how many boards the weight is of, and which are missing', async () => {
    open(() => ({
      ...volume,
      boards: 7,
      mass: { boards: 4, nowKg: 900, targetKg: 850 },
      missing: [
        message('stacks.size-missing', { boards: 1 }),
        message('stacks.weight-not-probed', { boards: 2 }),
        message('stacks.density-missing', { speciesName: 'Holly' }),
      ],
    }));
    expect((await facts())[2]).toEqual(['Weight now, of 4 boards', '900 kg']);
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      '1 board without width or length, not in these totals.',
      '2 boards not probed yet, not in the weight.',
      'The specific gravity of Holly is missing. Its boards are not in the weight.',
    ]);
  });

  test('in inch mode has nothing metric', async () => {
    useSettings.setState({ settings: { units: 'imperial' } as Settings });
    open(() => volume);
    expect(await facts()).toEqual([
      ['Tally in board feet', '1,033'],
      // 1 lb is 0.45359237 kg, exact by definition (international avoirdupois pound, 1959).
      ['Weight now', '3,649 lb'],
      ['Weight at target, 7.0% (Furniture)', '3,397 lb'],
    ]);
  });

  test('of boards without sizes, there are no totals', async () => {
    open(() => ({
      ...volume,
      measured: 0,
      boardFeet: 0,
      cubicMeters: 0,
      mass: null,
      missing: [message('stacks.size-missing', { boards: 6 })],
    }));
    expect(await screen.findByText(/6 boards without/)).toBeTruthy();
    expect(screen.queryAllByRole('definition')).toEqual([]);
  });

  test('that is refused shows the reason', async () => {
    open(() => {
      throw new Refusal(message('refusal.not-found', { what: 'stack' }));
    });
    expect(await screen.findByText(/That stack is not in this yard\./)).toBeTruthy();
  });
});
