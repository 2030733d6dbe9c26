import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { readyWords } from '../../../shared-core/history-chart/ready-words.ts';
import type { IfMoved as Outcome } from '../../../shared-core/probing/plan/if-moved.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** When boards are likely ready in each place, and what the place chosen could do to them. */
export function IfMoved({
  boards,
  butNot,
  placeId,
}: {
  boards: RequestInput<'stacks.ifMoved'>;
  /** Where all of it is. */
  butNot: number | undefined;
  /** The place chosen; null where none is. */
  placeId: number | null;
}) {
  const words = useWords();
  const { output } = useQuery('stacks.ifMoved', boards);
  const elsewhere = output?.places.filter((place) => place.placeId !== butNot) ?? [];
  const dated = elsewhere.flatMap((place) => {
    const readyText = readyThere(place, output!.boards, words);
    return readyText === null ? [] : [{ ...place, readyText }];
  });
  return (
    <>
      {elsewhere
        .find((place) => place.placeId === placeId)
        ?.cautions.map((caution) => (
          <Banner key={caution.code} kind="caution">
            {words.say(caution)}
          </Banner>
        ))}
      {dated.length > 0 && (
        <section aria-label={words.say('stacks.if-moved')}>
          <p className="soft">{words.say('stacks.if-moved')}</p>
          <ul className="soft list">
            {dated.map(({ placeId, placeName, readyText }) => (
              <li key={placeId}>{words.say('stacks.if-moved-place', { placeName, readyText })}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** Null where nothing is known of it. */
function readyThere(place: Outcome['places'][number], all: number, words: Words): string | null {
  const { say, formats } = words;
  if (all === 1) return readyWords(place, words);
  if (place.dated === 0) {
    if (place.leaving > 0) return say('stacks.if-moved-leaving', { boards: place.leaving, all });
    const { driestInterval } = place;
    if (driestInterval) return say('stacks.if-moved-driest', { driestInterval });
    return place.isForecast ? say('stacks.if-moved-none') : null;
  }
  return say('stacks.if-moved-boards', {
    boards: place.dated,
    all,
    how: place.last === null ? 'any-day' : place.isLikely ? 'likely' : 'about',
    date: place.last === null ? '' : formats.likely(place.last),
  });
}
