import { useNavigation } from '../stores/navigation.ts';
import { useRound } from '../stores/round.ts';
import { useEach } from './useQuery.ts';

/**
 * An open round that is not on this window's screen: the one that it showed last, else the newest; null for none.
 * @param isAsked  where false, nobody needs to know
 */
export function usePausedRound(isAsked = true): { id: number; stackName: string } | null {
  const route = useNavigation((navigation) => navigation.route);
  const shown = useRound(({ round }) => round);
  const onScreen = route.name === 'round' ? route.id : null;
  // Every reading changes the list of stacks, and a round that takes readings need not wait for it.
  const isProbing = shown !== null && shown.id === onScreen && shown.finishedAt === null;
  const [stacks] = useEach('stacks.list', isAsked && !isProbing ? [{}] : []);
  const open = (stacks?.output ?? []).flatMap(({ openRoundId, name }) =>
    openRoundId === null ? [] : [{ id: openRoundId, stackName: name }],
  );
  if (isProbing || open.some(({ id }) => id === onScreen)) return null;
  return open.find(({ id }) => id === shown?.id) ?? open.toSorted((a, b) => b.id - a.id)[0] ?? null;
}
