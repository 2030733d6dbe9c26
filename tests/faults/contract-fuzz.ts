/** Every request of the contract with inputs that are nearly right, at a bound, or hostile, against the app on a real file. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { isOfYard, type RequestName, requests } from '../../shared-core/contract/requests.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { inputFor } from './contract-inputs.ts';
import type { FaultResult } from './fault.ts';
import { oneOf, type Random, randomFrom } from './random.ts';

/** What a person entered, as against what is made from it. */
const RECORDS = [
  'act',
  'place',
  'stack',
  'board',
  'move',
  'round',
  'reading',
  'amendment',
  'wood_temperature',
  'oven_check',
  'oven_weight',
  'sample_cut',
  'sample_section',
  'sample_weight',
  'label_print',
];
/** Requests that show all of the yard, each of which a sound one answers. */
const VIEWS = (['stacks.list', 'places.list', 'species.list', 'endUses.list', 'settings.get'] as const).map(
  (name) => ({ name, input: {} as object }),
);

/**
 * Asks each request about the open yard so many times. It survives where it is answered, or refused by a sentence that is
 * no fault of ours and leaves the records as they were, and every view still answers.
 */
export async function fuzzContract(inputsPerRequest: number, seed: number): Promise<FaultResult> {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-fuzz-'));
  const faults: unknown[] = [];
  const app = createApp({
    dataDir,
    links: noMeter,
    threads: threadSources,
    reportFault: (error) => faults.push(error),
    // Forecasts of what comes to nothing sensible are the matter of other tests.
    forecastAfterMs: 3_600_000,
  });
  const connection = app.connect('fuzz', () => undefined);
  const opened = await connection.answer('yard.openDemo', {}, { yard: null, act: null });
  if (!opened.ok) throw new Error('The demo yard could not be opened.');
  const { uuid: yard, file } = opened.output as YardInfo;
  const db = new Database(file, { readonly: true });
  const counts = RECORDS.map((table) => db.prepare(`SELECT count(*) FROM ${table}`).pluck());
  const records = (): string => counts.map((count) => count.get()).join(' ');
  const ask = (name: string, input: unknown) => connection.answer(name, input, { yard, act: randomUUID() });

  const result: FaultResult = { tried: 0, survived: 0, lost: [] };
  const names = (Object.keys(requests) as RequestName[]).filter(isOfYard);
  for (const [index, name] of names.entries()) {
    const random = randomFrom(seed + index * 7919);
    for (let n = 0; n < inputsPerRequest; n++) {
      const input = inputFor(requests[name].input, random);
      const before = records();
      const answer = await ask(name, input);
      const reasons = [
        ...(!answer.ok && answer.problem.code === 'refusal.unexpected'
          ? [`a fault of ours: ${String(faults.at(-1))}`]
          : []),
        ...(!answer.ok && records() !== before ? ['refused, and yet written'] : []),
        ...(answer.ok && !requests[name].output.safeParse(answer.output).success
          ? ['an answer that does not fit']
          : []),
        ...(answer.ok ? await broken(random) : []),
      ];
      result.tried++;
      if (reasons.length === 0) result.survived++;
      else
        result.lost.push(
          `seed ${seed}: ${name} ${JSON.stringify(input)?.slice(0, 300)}: ${reasons.join('; ')}`,
        );
    }
  }

  /** Views that the yard does not answer any more. */
  async function broken(random: Random): Promise<string[]> {
    const id = 1 + Math.floor(random() * 20);
    const pages = { stackId: null, search: '', offset: 0, limit: 500 };
    const { name, input } = oneOf(random, [
      ...VIEWS,
      { name: 'boards.list', input: pages },
      { name: 'boards.get', input: { id } },
      { name: 'samples.get', input: { boardId: id } },
      { name: 'rounds.get', input: { roundId: id } },
      { name: 'stacks.plan', input: { id, certainty: 0.9 } },
      { name: 'stacks.volume', input: { id } },
      { name: 'ovenChecks.ofSpecies', input: { speciesId: 'walnut-black' } },
      { name: 'labels.boards', input: { stackId: null, search: '' } },
    ]);
    const view = await ask(name, input);
    if (view.ok || view.problem.code === 'refusal.not-found') return [];
    return [`then ${name} ${JSON.stringify(input)} failed: ${view.problem.code} ${String(faults.at(-1))}`];
  }

  db.close();
  await app.close();
  rmSync(dataDir, { recursive: true, force: true });
  return result;
}
