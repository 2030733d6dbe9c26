import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { type AWindow, openWindow, say } from './a-window.ts';
import { noMeter } from './no-meter.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

const saysOf = async (window: Pick<AWindow, 'query'>) => {
  const { problem } = await window.query('rounds.clock', {});
  return problem && say(problem);
};

// The clock of the yard begins on June 1, 2026.
withYardOfTwo();

test('a clock that tells a time before the last change cannot be right: a round starts once the person was asked', async () => {
  expect(await saysOf(yard)).toBeNull();
  yard.later(-60_000);
  expect(await saysOf(yard)).toBeNull();
  yard.later(-6 * 365 * DAY_MS);
  expect(await saysOf(yard)).toMatch(
    /clock .* Jun 2, 2020.*last change was saved Jun 1, 2026.*Set the clock/,
  );
  const start = { stackId: yard.stack.id, woodTempC: 20 };
  expect(await yard.refusal('rounds.start', start)).toMatch(/clock says Jun 2, 2020/);
  const { openRoundId } = (await yard.query('stacks.list', {}))[0]!;
  expect(openRoundId).toBeNull();
  const round = await yard.command('rounds.start', { ...start, isDateRight: true });
  expect(round.startedAt).toBe(yard.now());
});

test('nor can one that tells a time before the app was built', async () => {
  const app = createApp({
    dataDir: mkdtempSync(join(tmpdir(), 'pintally-app-')),
    links: noMeter,
    threads: threadSources,
    clock: () => new Date('2020-01-01T08:00:00.000Z'),
    built: '2026-05-01T08:00:00.000Z',
  });
  expect(await saysOf(openWindow(app))).toMatch(
    /clock says Jan 1, 2020.*This version of Pintally is from May 1, 2026, which is later/,
  );
  await app.close();
});

test('a typed day long before the stack is asked about, one within three years is not', async () => {
  const start = { stackId: yard.stack.id, woodTempC: 20 };
  expect(await yard.refusal('rounds.start', { ...start, startedOn: '1970-01-01' })).toContain(
    'That is 56 years before this stack was added. No round was started. Is the year right?',
  );
  const round = await yard.command('rounds.start', { ...start, startedOn: '2024-06-02' });
  expect(round.isDated).toBe(true);
});

test('a round that runs is resumed without a question', async () => {
  const start = { stackId: yard.stack.id, woodTempC: 20 };
  const { id } = await yard.command('rounds.start', start);
  yard.later(-6 * 365 * DAY_MS);
  expect((await yard.command('rounds.start', start)).id).toBe(id);
});
