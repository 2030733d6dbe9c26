import { useEffect, useLayoutEffect } from 'react';
import { dropHeldKeys, holdKeys } from '../../stores/held-keys.ts';
import { useLink } from '../../stores/link.ts';
import { useRound } from '../../stores/round.ts';
import { followRound } from '../../stores/round-news.ts';
import { leaveRound, openRound } from '../../stores/round-opening.ts';
import { Failed, Loading, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { Probe } from './Probe.tsx';
import { RoundSummaryPage } from './RoundSummaryPage.tsx';

/** One walk over a stack's boards: probing while it is open, what came of it once it is finished or no board is left. */
export function RoundScreen({ id }: { id: number }) {
  const { say } = useWords();
  const { round, error } = useRound();
  const returns = useLink((link) => link.returns);
  useLayoutEffect(holdKeys, []);
  useEffect(followRound, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the machine's return is a reason to ask again.
  useEffect(() => void openRound(id), [id, returns]);
  useEffect(() => () => leaveRound(id), [id]);
  const takesNoValue = error !== null || (round?.id === id && round.aim === null);
  useEffect(() => {
    if (takesNoValue) dropHeldKeys();
  }, [takesNoValue]);

  if (round?.id !== id) {
    return (
      <Screen title={say('round.title')}>
        {error ? <Failed sentence={error} again={() => void openRound(id)} /> : <Loading />}
      </Screen>
    );
  }
  if (round.aim === null) return <RoundSummaryPage round={round} />;
  const board = round.boards.find(({ boardId }) => boardId === round.aim?.boardId);
  return board && <Probe round={round} board={board} />;
}
