import { randomUUID } from 'node:crypto';
import type { Answer } from '../../shared-core/contract/answer.ts';
import type {
  CommandName,
  QueryName,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../shared-core/contract/requests.ts';
import type { Ledger, SavedReading } from './ledger.ts';
import { HostGone } from './socket-window.ts';

/** Every board has these: usual pins reach its middle, and its length is not known (`probing/readings/plan-basis.ts`). */
const SPOTS = 4;
/** So many readings are on their way at once. */
const AT_ONCE = 8;

/** A window, whatever is between it and the app. */
export interface AnyWindow {
  /** @throws HostGone */
  answer(name: RequestName, input: unknown, act?: string): Promise<Answer>;
  /** @throws the refusal's sentence */
  query<N extends QueryName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>>;
  command<N extends CommandName>(name: N, input: RequestInput<N>, act?: string): Promise<RequestOutput<N>>;
}

/** A new stack with its boards. */
export async function addStack(
  window: AnyWindow,
  name: string,
  boards: number,
): Promise<{ stackId: number; boardIds: number[] }> {
  const { id: stackId } = await window.command('stacks.start', {
    name,
    speciesId: 'walnut-black',
    thicknessMm: 16,
    thicknessQuarters: null,
    boards,
    place: {
      name: 'Shop',
      kind: 'shop',
      air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 })),
    },
  });
  return { stackId, boardIds: await boardIdsOf(window, stackId) };
}

export async function boardIdsOf(window: AnyWindow, stackId: number): Promise<number[]> {
  const { rows } = await window.query('boards.list', { stackId, search: '', offset: 0, limit: 500 });
  return rows.map(({ id }) => id);
}

export async function startRound(window: AnyWindow, stackId: number): Promise<number> {
  return (await window.command('rounds.start', { stackId, woodTempC: 20 })).id;
}

/** The readings of a round, board by board, each of another value than the one before. */
export function readingsOf(roundId: number, boardIds: readonly number[], firstRaw: number): SavedReading[] {
  return boardIds.flatMap((boardId, board) =>
    Array.from({ length: SPOTS }, (_, spotIndex) => ({
      roundId,
      boardId,
      spotIndex,
      raw: Math.round(firstRaw * 10 + ((board * SPOTS + spotIndex) % 97)) / 10,
    })),
  );
}

/** A reading that a window asked to save, with the act that it is. */
export interface AskedReading {
  reading: SavedReading;
  act: string;
}

export function askToSave(window: AnyWindow, { reading, act }: AskedReading): Promise<Answer> {
  return window.answer('rounds.saveTyped', { ...reading, newestReadingId: null }, act);
}

/**
 * Types readings as fast as the host takes them, several on their way at once.
 * @returns those that the window heard nothing of, as the host was gone
 */
export async function stream(
  window: AnyWindow,
  readings: readonly SavedReading[],
  ledger: Pick<Ledger, 'ask' | 'save'>,
): Promise<AskedReading[]> {
  const unheardOf: AskedReading[] = [];
  let next = 0;
  async function lane(): Promise<void> {
    while (next < readings.length && unheardOf.length === 0) {
      const asked = { reading: readings[next++] as SavedReading, act: randomUUID() };
      ledger.ask(asked.reading);
      try {
        const answer = await askToSave(window, asked);
        if (!answer.ok) throw new Error(`refused while nothing was wrong: ${answer.problem.code}`);
        ledger.save(asked.reading);
      } catch (error) {
        if (!(error instanceof HostGone)) throw error;
        unheardOf.push(asked);
      }
    }
  }
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  return unheardOf;
}
