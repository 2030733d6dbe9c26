import { useEffect } from 'react';
import type { RoundBoard, RoundState } from '../../../shared-core/contract/round.ts';
import { unsavedOf, useDraftsOf } from '../../stores/drafts.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useRound } from '../../stores/round.ts';
import { finishRound, reopenRound } from '../../stores/round-opening.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { CallShape, callsInOrder, groundOf, inkOf } from '../../ui/CallBadge.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { QuestionableMeter } from '../meter-check/QuestionableMeter.tsx';
import { NoteSheet } from '../notes/NoteSheet.tsx';
import { PicturesSheet } from '../pictures/PicturesSheet.tsx';
import { ChangeDate } from './ChangeDate.tsx';
import { FindingsTable } from './FindingsTable.tsx';
import css from './RoundSummaryPage.module.css';
import { UnsavedValue } from './UnsavedValue.tsx';

/** What a finished round found: how many of each call, then board by board with the reason that decides. */
export function RoundSummaryPage({ round }: { round: RoundState }) {
  const { say, formats } = useWords();
  const trouble = useRound((store) => store.trouble);
  // The keys went with the screen that this one takes the place of.
  useEffect(() => document.querySelector('h1')?.focus(), []);
  const probed = round.boards.filter((board) => board.isRead);
  const ready = probed.filter((board) => board.finding?.call === 'ready');
  /** A notebook has more pages: labels come after the last. */
  const isPage = round.isDated && round.finishedAt !== null;
  const labelsFor = (boards: RoundBoard[]) =>
    hrefOf({ name: 'labels', boardIds: boards.map((board) => board.boardId) });
  return (
    <Screen
      title={say('round-page.title', { stackName: round.stackName })}
      lead={say('round-page.lead', {
        startedOn: round.startedAt,
        summary: round.summary.message,
        endUseName: round.endUseName,
        placeName: round.placeName,
      })}
      actions={
        <>
          {isPage && (
            <ButtonLink kind="main" href={hrefOf({ name: 'past-round', stackId: round.stackId })}>
              {say('round-page.next-page')}
            </ButtonLink>
          )}
          {probed.length > 0 && (
            <ButtonLink {...(!isPage && { kind: 'main' })} href={labelsFor(probed)}>
              {say('round-page.labels-probed', { boards: probed.length })}
            </ButtonLink>
          )}
          {ready.length > 0 && ready.length < probed.length && (
            <ButtonLink href={labelsFor(ready)}>
              {say('round-page.labels-ready', { boards: ready.length })}
            </ButtonLink>
          )}
          <ButtonLink href={hrefOf({ name: 'stack', id: round.stackId })}>
            {say('round-page.go-to-stack')}
          </ButtonLink>
          {round.finishedAt === null ? (
            <Button onClick={() => void finishRound()}>{say('round.finish')}</Button>
          ) : (
            <>
              <ChangeDate round={round} />
              <Button onClick={() => void reopenRound()}>{say('round-page.reopen')}</Button>
            </>
          )}
        </>
      }
    >
      {trouble !== null && <Banner kind="problem">{trouble}</Banner>}
      {unsavedOf(useDraftsOf(round.id)).map((draft) => (
        <UnsavedValue key={`${draft.boardId} ${draft.spotIndex}`} draft={draft} isFinished />
      ))}
      <QuestionableMeter roundId={round.id} />
      <ul className={css.counts}>
        {callsInOrder.map((call) => (
          <li key={call} className={css.count} style={{ ...inkOf(call), ...groundOf(call) }}>
            <CallShape call={call} />
            <strong>{formats.number(round.summary.calls[call])}</strong>
            <span>{say(`call.${call}`)}</span>
          </li>
        ))}
      </ul>
      {round.updating > 0 && (
        <p className="soft" role="status">
          {say('round-page.updating', { boards: round.updating })}
        </p>
      )}
      {probed.length === 0 ? (
        <EmptyState sentence={say('round-page.nothing-probed')} />
      ) : (
        <Sheet title={say('round-page.boards')}>
          <FindingsTable boards={round.boards} />
        </Sheet>
      )}
      <NoteSheet subject={{ kind: 'round', id: round.id }} title={say('note.of-round')} />
      <PicturesSheet
        subject={{ kind: 'round', id: round.id }}
        recordName={say('pictures.the-round', { startedOn: round.startedAt })}
      />
    </Screen>
  );
}
