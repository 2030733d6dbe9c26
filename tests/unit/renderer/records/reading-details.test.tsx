// @vitest-environment jsdom
import { act, cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ReadingMore } from '../../../../renderer/features/records/ReadingMore.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import type { MeterOfYard } from '../../../../shared-core/contract/meter.ts';
import { unknownProfile } from '../../../../shared-core/probing/readings/meter-profile.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aReading } from '../round/a-round.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';

const ACT = '9b1c9d1e-7e0b-4b6e-9d57-6f1f1f1f1f1f';
const WORK = '11111111-1111-4111-8111-111111111111';
const aHandMeter = (id: number): MeterOfYard => ({
  id,
  version: 1,
  kind: 'typed',
  name: `Hand meter ${id}`,
  unit: 'pct',
  profile: unknownProfile,
  isTypedFrom: id === 4,
});

async function open(reading: JudgedReading, more: Parameters<typeof playMachine>[0] = {}) {
  const moved = { act: ACT, readings: 3, boardIds: [101], roundIds: [12] };
  const undone = { id: ACT, at: '2026-06-01T08:00:00.000Z', line: message('act.title'), isUndone: true };
  const machine = playMachine({
    'meters.list': () => [aHandMeter(4), aHandMeter(5)],
    'species.list': () => [],
    'readings.asReadWith': () => ({
      raw: 14.2,
      unit: 'pct',
      corrected: {
        mcPct: 15.1,
        steps: [{ step: 'species-curve', pct: 15.1 }],
        standardUncertaintyPct: 0.9,
        warnings: [],
      },
    }),
    'readings.setMeter': () => moved,
    'acts.undo': () => undone,
    ...more,
  });
  const user = userEvent.setup();
  render(<ReadingMore reading={reading} depth="shell" actions={['details']} />);
  await user.click(screen.getByRole('button', { name: /^More for shell reading 14.2%/ }));
  await user.click(screen.getByRole('menuitem', { name: 'Details' }));
  return { machine, user, dialog: within(screen.getByRole('dialog')) };
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('a corrected value opens to what the meter showed, and what each step did to it', async () => {
  const { dialog } = await open(
    aReading(1, {
      raw: 14.2,
      corrected: {
        mcPct: 16.4,
        steps: [
          { step: 'temperature', pct: 14.6 },
          { step: 'usual-scale', pct: 14.5 },
          { step: 'species-linear', pct: 16.4 },
        ],
        standardUncertaintyPct: 0.9,
        warnings: [],
      },
    }),
  );
  const facts = dialog
    .getAllByRole('term')
    .slice(0, 5)
    .map((term) => [term.textContent, term.nextElementSibling?.textContent]);
  expect(facts).toEqual([
    ['Meter shows', '14.2%'],
    ['Scale', '−0.1 points'],
    ['Temperature, wood 14°C', '+0.4 points'],
    ['Species', '+1.9 points'],
    ['MC', '16.4%'],
  ]);
  await expectNoBarriers();
});

test('one that cannot be a moisture content says so', async () => {
  const corrected = { mcPct: null, steps: [], standardUncertaintyPct: null, warnings: [] };
  const { dialog } = await open(aReading(1, { raw: 14.2, corrected }));
  expect(dialog.getByText(/cannot be a moisture content/)).toBeTruthy();
});

test('a meter that is just chosen shows what its steps would make of the value', async () => {
  const { machine, user, dialog } = await open(aReading(1, { raw: 14.2, meterId: 4, meterProfileId: 4 }));
  expect(dialog.getByText('12.1%', { selector: 'strong' })).toBeTruthy();
  await user.selectOptions(await dialog.findByLabelText('Read with'), 'Hand meter 5');
  expect(await dialog.findByText('15.1%', { selector: 'strong' })).toBeTruthy();
  expect(machine.inputsOf('readings.asReadWith')).toEqual([{ readingId: 1, meterId: 5 }]);
  await user.selectOptions(dialog.getByLabelText('Read with'), 'Hand meter 4');
  expect(dialog.queryByText('15.1%')).toBeNull();
});

test('all of its round are moved to another meter, and back by one press', async () => {
  const { machine, user, dialog } = await open(aReading(1, { raw: 14.2, meterId: 4, meterProfileId: 4 }));
  await user.selectOptions(await dialog.findByLabelText('Read with'), 'Hand meter 5');
  await user.click(dialog.getByRole('radio', { name: 'All readings of this round with this meter' }));
  await user.click(dialog.getByRole('button', { name: 'Save' }));
  expect(machine.inputsOf('readings.setMeter')).toMatchObject([{ readingId: 1, scope: 'round', meterId: 5 }]);
  expect(screen.queryByRole('dialog')).toBeNull();
  const [notice] = useNotices.getState().notices;
  expect(notice?.sentence).toBe('3 readings are corrected again.');
  await notice?.undo?.(WORK);
  expect(machine.inputsOf('acts.undo')).toEqual([{ act: ACT, work: WORK }]);
});

test('moving many readings to another meter shows how far it is, and can be stopped', async () => {
  const { machine, user, dialog } = await open(aReading(1, { raw: 14.2, meterId: 4, meterProfileId: 4 }), {
    'readings.setMeter': () => new Promise(() => undefined),
    'work.cancel': () => ({}),
  });
  await user.selectOptions(await dialog.findByLabelText('Read with'), 'Hand meter 5');
  await user.click(dialog.getByRole('button', { name: 'Save' }));
  const [{ work }] = machine.inputsOf('readings.setMeter') as [{ work: string }];
  act(() => machine.tell('work.progress', { work, done: 250, total: 8000 }));
  const progress = dialog.getByRole('progressbar', { name: 'Correcting readings …' });
  expect(progress.getAttribute('value')).toBe('250');
  await user.click(dialog.getByRole('button', { name: 'Cancel' }));
  expect(machine.inputsOf('work.cancel')).toEqual([{ work }]);
});

test('a reading of a meter that nobody named is moved only once one is chosen', async () => {
  const { dialog } = await open(aReading(1, { raw: 14.2 }));
  expect(await dialog.findByRole('option', { name: 'Unknown meter' })).toBeTruthy();
  expect(dialog.queryByRole('button', { name: 'Save' })).toBeNull();
});
