import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** Far longer than what comes between two changes here, as two seconds are to a person who probes quickly. */
withYardOfTwo({ forecastAfterMs: 400 });

test('forecasts are made also while a person never pauses for as long as they wait', async () => {
  await yard.command('boards.add', [{ ...yard.board('SAWN-01'), sawnOn: '2026-05-31' }]);
  const outlook = async () =>
    (await yard.query('boards.list', { stackId: null, search: 'SAWN-01', offset: 0, limit: 1 })).rows[0]
      ?.outlook;
  const beganMs = performance.now();
  let isSound = true;
  while ((await outlook()) === null && performance.now() - beganMs < 15_000) {
    isSound = !isSound;
    await yard.command('settings.edit', { sound: isSound });
    await pause(20);
  }
  expect(await outlook()).not.toBeNull();
});
