// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StackTally } from '../../../../renderer/features/stacks/StackTally.tsx';
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
  targetPct: 7,
  missing: [],
};

function open(answer: () => Volume) {
  playMachine({ 'stacks.volume': answer });
  render(
    <main>
      <StackTally stackId={1} />
    </main>,
  );
}
const line = async () => {
  const tallied = await screen.findByText(/tallied/);
  return [tallied, tallied.nextElementSibling].map((part) => part?.textContent);
};

beforeEach(forgetEverything);
afterEach(cleanup);

describe('The volume and weight of a stack', () => {
  test('is its board feet, cubic meters, and weight now and at its target', async () => {
    open(() => volume);
    expect(await line()).toEqual([
      '2.43 m³ · 1,033 board feet tallied',
      '1,655 kg when last probed, 1,541 kg at 7.0%',
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
    expect((await line())[1]).toBe('900 kg when last probed (4 boards), 850 kg at 7.0%');
    for (const missing of [
      '1 board has no width or length. It is not in these totals.',
      '2 boards have no reliable reading. They are not in the weight.',
      'The specific gravity of Holly is missing. Its boards are not in the weight.',
    ]) {
      expect(screen.getByText(missing)).toBeTruthy();
    }
  });

  test('in inch mode has nothing metric', async () => {
    useSettings.setState({ settings: { units: 'imperial' } as Settings });
    open(() => volume);
    // 1 lb is 0.45359237 kg, exact by definition (international avoirdupois pound, 1959).
    expect(await line()).toEqual(['1,033 board feet tallied', '3,649 lb when last probed, 3,397 lb at 7.0%']);
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
    expect(await screen.findByText(/6 boards have no width or length/)).toBeTruthy();
    expect(screen.queryByText(/tallied|now/)).toBeNull();
  });

  test('that is refused shows the reason', async () => {
    open(() => {
      throw new Refusal(message('refusal.not-found', { what: 'stack' }));
    });
    expect(await screen.findByText(/That stack is not in this yard\./)).toBeTruthy();
  });
});
