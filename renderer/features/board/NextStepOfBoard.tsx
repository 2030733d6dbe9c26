import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bestElsewhere } from '../../../shared-core/probing/calls/forecast-reasons.ts';
import type { NextStep } from '../../../shared-core/probing/calls/next-step.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { ReadyWhen } from './ReadyWhen.tsx';

/** When the board is likely ready here and where that comes first, and the one thing to do next. */
export function NextStepOfBoard({
  board,
  forecast: { details },
  next,
  onMove,
}: {
  board: BoardRow;
  forecast: BoardForecast;
  next: NextStep;
  /** With the place to move to; null where it is still to be chosen. */
  onMove: (placeId: number | null) => void;
}) {
  const { say } = useWords();
  const [here] = details?.forecast.places ?? [];
  const best = details && bestElsewhere(details.forecast.places);
  const nameOf = (placeId: number | null) => details?.places.find((each) => each.placeId === placeId)?.name;
  const placeName = next.step === 'move' && nameOf(next.placeId);
  return (
    <>
      {details && here && (
        <Facts
          of={[here, ...(best ? [best] : [])].map((place) => [
            place === here
              ? say('board.ready-here')
              : say('board.ready-in', { placeName: nameOf(place.placeId)! }),
            <ReadyWhen key={place.placeId} place={place} details={details} />,
          ])}
        />
      )}
      <p className={css.next}>
        {next.step === 'move' && (
          <Button kind="main" onClick={() => onMove(next.placeId)}>
            {placeName ? say('next-step.move-to', { placeName }) : say('next-step.move')}
          </Button>
        )}
        {next.step === 'label' && (
          <ButtonLink kind="main" href={hrefOf({ name: 'labels', boardIds: [board.id] })}>
            {say('next-step.label')}
          </ButtonLink>
        )}
        {(next.step === 'probe' || next.step === 'wait') && (
          <ButtonLink
            kind={next.step === 'probe' ? 'main' : 'plain'}
            href={hrefOf({ name: 'round-start', stackId: board.stackId })}
          >
            {say('board.probe')}
          </ButtonLink>
        )}
        {next.why && <span>{say(next.why)}</span>}
      </p>
    </>
  );
}
