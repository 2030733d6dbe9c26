import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { PageBoard, ThereSince } from '../../../shared-core/contract/requests/past-rounds.ts';
import { message } from '../../../shared-core/words/message.ts';
import { Choice } from '../../form/Choice.tsx';
import { DateField } from '../../form/DateField.tsx';
import { useWords } from '../../words.ts';
import type { PageDraft } from './page-draft.ts';

type Placed = NonNullable<PageBoard['placedLater']>;

/** Of boards with readings, those that are known to be at their first place only since a later day. */
export const placedLaterOf = (boards: readonly PageBoard[], { texts }: Pick<PageDraft, 'texts'>): Placed[] =>
  boards.flatMap(({ boardId, placedLater }) =>
    placedLater !== null && texts[boardId]?.some((text) => text.trim() !== '') ? [placedLater] : [],
  );

/** Asks whether boards were at their first place on the day of the page already, and since when. */
export function PlacedLater({
  placed,
  startedAt,
  page,
  onChange,
}: {
  placed: readonly Placed[];
  /** When the page was written. */
  startedAt: string;
  page: Pick<PageDraft, 'day' | 'there' | 'thereDay'>;
  onChange: (changed: Partial<PageDraft>) => void;
}) {
  const { say } = useWords();
  const { there, thereDay } = page;
  const boards = placed.length;
  const placeNames = [...new Set(placed.map(({ placeName }) => placeName))];
  const [sinceOn] = placed.map(({ since }) => since).toSorted();
  if (sinceOn === undefined) return null;
  return (
    <div className="column">
      <Choice
        label={say('past-round.there', { boards, placeNames, sinceOn, startedOn: startedAt })}
        value={there}
        options={(['sawn', 'day', 'no'] as const)
          .filter((value) => value !== 'sawn' || placed.some(({ isSawnKnown }) => isSawnKnown))
          .map((value) => ({ value, label: say(`past-round.there.${value}`, { boards }) }))}
        onValue={(value) => onChange({ there: value })}
      />
      {there === 'day' && (
        <DateField
          label={say('past-round.there-day')}
          max={page.day ?? undefined}
          value={thereDay}
          onValue={(day) => onChange({ thereDay: day })}
        />
      )}
      {there !== null && there !== 'no' && <p className="soft">{say('past-round.there-effect')}</p>}
    </div>
  );
}

/**
 * The answer, as it is saved with the page.
 * @throws Refusal where it is missing
 */
export function readThere(
  placed: readonly Placed[],
  { there, thereDay }: Pick<PageDraft, 'there' | 'thereDay'>,
): ThereSince | null {
  if (placed.length === 0 || there === 'no') return null;
  if (there === null) throw new Refusal(message('past-round.there-missing'));
  if (there === 'sawn') return 'sawn';
  if (thereDay === null) throw new Refusal(message('past-round.there-day-missing'));
  return thereDay;
}
