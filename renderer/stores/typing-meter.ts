import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';
import type { MeterOfYard } from '../../shared-core/contract/meter.ts';
import type { ReadingUnit } from '../../shared-core/wood/moisture/corrected.ts';
import { client, queryOf } from '../data/asking.ts';
import { bridge } from '../data/bridge.ts';
import { useQuery } from '../data/useQuery.ts';
import { type MeterStore, useMeter } from './meter.ts';
import { useRound } from './round.ts';
import { useYard } from './yard.ts';

/** What a person said here while a meter was connected: typed values are not its own, but another's. */
interface Instead {
  /** Of which both are. */
  yard: string | null;
  connectedId: number | null;
  meterId: number | null;
}
export const useInstead = create<Instead>()(
  persist((): Instead => ({ yard: null, connectedId: null, meterId: null }), {
    name: 'pintally-typed-instead',
    storage: createJSONStorage(() => sessionStorage),
  }),
);

const yardNow = (): string | null => useYard.getState().info?.uuid ?? null;

/** The meter of this window, also while its link is lost: a person then types what its display shows. */
const inHand = ({ state }: Pick<MeterStore, 'state'>): number | null =>
  state?.heldBy === 'this-window' && state.toConfirm === null ? state.meterId : null;

/**
 * The meter that typed values are read off here: the one that is connected, else the one that was chosen, else
 * the one that the round was last read with. A person may choose another while one is connected. Values of a past day are
 * not of the one that is connected now.
 */
function typedOff(
  meters: readonly MeterOfYard[],
  connectedId: number | null,
  instead: Instead,
  { isDated, lastMeterId }: { isDated: boolean; lastMeterId: number | null },
): MeterOfYard | null {
  const find = (meterId: number | null) => meters.find(({ id }) => id === meterId);
  const chosen = meters.find(({ isTypedFrom }) => isTypedFrom) ?? find(lastMeterId) ?? null;
  const isInstead =
    instead.yard === yardNow() && instead.connectedId === connectedId && instead.meterId === chosen?.id;
  if (connectedId === null || isInstead || isDated) return chosen;
  return find(connectedId) ?? chosen;
}

const isRoundDated = ({ round }: ReturnType<typeof useRound.getState>): boolean => round?.isDated ?? false;

/** The meter that the round on screen was last read with. */
const lastMeterId = ({ round, saved }: ReturnType<typeof useRound.getState>): number | null =>
  (saved?.reading.roundId === round?.id ? saved?.reading.meterId : null) ?? round?.lastMeterId ?? null;

/** The meter that typed values are read off in this window; undefined for none, and before the window knows. */
export function useTypingMeter(): MeterOfYard | undefined {
  const { output } = useQuery('meters.list', {});
  const connectedId = useMeter(inHand);
  const instead = useInstead();
  const round = { isDated: useRound(isRoundDated), lastMeterId: useRound(lastMeterId) };
  return (output && typedOff(output, connectedId, instead, round)) ?? undefined;
}

/** The meter that this window says typed values are read off, null for none; undefined before it knows. */
function typingMeter(): MeterOfYard | null | undefined {
  const meters = client.getQueryData(queryOf('meters.list', {}).queryKey);
  const now = useRound.getState();
  const round = { isDated: isRoundDated(now), lastMeterId: lastMeterId(now) };
  return meters && typedOff(meters, inHand(useMeter.getState()), useInstead.getState(), round);
}

export function typingMeterId(): number | null | undefined {
  const meter = typingMeter();
  return meter === null ? null : meter?.id;
}

/** The unit in which a value is typed now; undefined before the window knows the meter. */
export function typingUnit(): ReadingUnit | undefined {
  const meter = typingMeter();
  return meter === undefined ? undefined : (meter?.unit ?? 'pct');
}

/** Typed values are read off this meter from now on, also while another one is connected. */
export function chosenForTyping(meterId: number): void {
  useInstead.setState({ yard: yardNow(), connectedId: inHand(useMeter.getState()), meterId });
}

/** Chooses the meter that typed values are read off from now on. */
export async function typeFrom(meterId: number): Promise<void> {
  await bridge().command('meters.typeFrom', { meterId });
  chosenForTyping(meterId);
}
