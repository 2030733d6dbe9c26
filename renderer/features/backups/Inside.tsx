import type { Look, MissingParts } from '../../../shared-core/contract/backups.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';

/** What is in a backup or another yard file, and what of the current yard is not. */
export function Inside({
  look: { contents, sizeBytes, isOfOtherYard, missing },
  source,
}: {
  look: Look;
  source: 'backup' | 'file';
}) {
  const { say, formats } = useWords();
  const { stacks, boards, readings, pictures, lastRoundAt, isOlderLayout } = contents;
  const parts = missing && partsOf(missing);
  return (
    <>
      <Facts
        of={[
          [say('restore.stacks'), formats.number(stacks)],
          [say('restore.boards'), formats.number(boards)],
          [say('backups.readings'), formats.number(readings)],
          [say('restore.pictures'), pictures > 0 ? formats.number(pictures) : null],
          [say('restore.last-round'), lastRoundAt && formats.dateTime(lastRoundAt)],
          [say('backups.size'), formats.fileSize(sizeBytes)],
        ]}
      />
      {isOfOtherYard && parts?.length !== 0 && <p>{say('restore.other-yard')}</p>}
      {isOlderLayout && <p>{say('restore.older-layout')}</p>}
      {parts && (
        <p>
          {parts.length === 0 ? say('restore.has-all') : say('restore.missing-parts', { source, parts })}{' '}
          <MissingNames missing={missing} />
        </p>
      )}
    </>
  );
}

const CODES = { ovenChecks: 'oven-checks', roundDates: 'round-dates' } as const;

/** Names the first few records that are missing or were edited. */
export function MissingNames({ missing }: { missing: MissingParts }) {
  const { say, formats } = useWords();
  const { names, stacks, boards, places, edits } = missing;
  if (names.length === 0) return null;
  const more = stacks + boards + places + edits - names.length;
  return say('restore.missing-names', {
    recordNames: [
      ...names.map(formats.named),
      ...(more > 0 ? [message('restore.more-names', { more })] : []),
    ],
  });
}

/** What is missing, one kind at a time: "1 reading", "2 boards". */
export function partsOf({ names: _, ...missing }: MissingParts): Message[] {
  const kinds = Object.keys(missing) as (keyof typeof missing)[];
  return kinds
    .filter((kind) => missing[kind] > 0)
    .map((kind) =>
      message(`restore.part.${kind === 'ovenChecks' || kind === 'roundDates' ? CODES[kind] : kind}`, {
        count: missing[kind],
      }),
    );
}
