import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Judgement } from '../../../shared-core/probing/calls/judgement.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';
import { AddDrierPlace } from '../places/AddDrierPlace.tsx';
import css from './board.module.css';
import { ReadyWhen } from './ReadyWhen.tsx';
import { roundOfBoard } from './round-of-board.ts';

/** When the board is likely ready here and where that comes first, and the one thing to do next. */
export function NextStepOfBoard({
  board,
  forecast: { details },
  judgement: { next, bestPlaceId },
  onMove,
}: {
  board: BoardRow;
  forecast: BoardForecast;
  judgement: Judgement;
  /** With the place to move to; null where it is still to be chosen. */
  onMove: (placeId: number | null) => void;
}) {
  const { say } = useWords();
  const placeOf = (placeId: number | null) => details?.places.find((each) => each.placeId === placeId);
  const [here, best] = [details?.places[0], placeOf(bestPlaceId)];
  const placeName = next.step === 'move' && placeOf(next.placeId)?.name;
  return (
    <>
      {here?.ready && (
        <Facts
          of={[here, ...(best ? [best] : [])].map((place) => [
            place === here ? say('board.ready-here') : say('board.ready-in', { placeName: place.name }),
            <ReadyWhen key={place.placeId} place={place} />,
          ])}
        />
      )}
      <div className={css.next}>
        {next.step === 'move' && next.due !== 'add-place' && (
          <Button kind="main" onClick={() => onMove(next.placeId)}>
            {placeName
              ? say('next-step.move-to', { placeName })
              : say(next.due === 'move-back' ? 'next-step.move-back' : 'next-step.move')}
          </Button>
        )}
        {next.due === 'add-place' && <AddDrierPlace kind="main" />}
        {next.step === 'label' && (
          <ButtonLink kind="main" href={hrefOf({ name: 'labels', boardIds: [board.id] })}>
            {say('next-step.label')}
          </ButtonLink>
        )}
        {(next.step === 'probe' || next.step === 'wait') && (
          <ButtonLink kind={next.step === 'probe' ? 'main' : 'plain'} href={hrefOf(roundOfBoard(board))}>
            {say('board.probe')}
          </ButtonLink>
        )}
        {next.why && <span>{say(next.why)}</span>}
      </div>
    </>
  );
}
