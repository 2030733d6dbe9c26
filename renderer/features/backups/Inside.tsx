import type { LeftOut, Look } from '../../../shared-core/contract/backups.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { Facts } from '../../ui/Facts.tsx';
import { useWords } from '../../words.ts';

/** What is in a yard file, and what of the current yard is not. */
export function Inside({ look: { contents, sizeBytes, leftOut } }: { look: Look }) {
  const { say, formats } = useWords();
  const { stacks, boards, readings, lastRoundAt, isOlderLayout } = contents;
  const parts = leftOut && partsOf(leftOut);
  return (
    <>
      <Facts
        of={[
          [say('restore.stacks'), formats.number(stacks)],
          [say('restore.boards'), formats.number(boards)],
          [say('backups.readings'), formats.number(readings)],
          [say('restore.last-round'), lastRoundAt && formats.dateTime(lastRoundAt)],
          [say('backups.size'), formats.fileSize(sizeBytes)],
        ]}
      />
      {isOlderLayout && <p>{say('restore.older-layout')}</p>}
      {parts && (
        <p>{parts.length === 0 ? say('restore.leaves-out-nothing') : say('restore.leaves-out', { parts })}</p>
      )}
    </>
  );
}

/** What is missing, one kind at a time: "1 reading", "2 boards". */
export function partsOf(leftOut: LeftOut): Message[] {
  const kinds = Object.keys(leftOut) as (keyof LeftOut)[];
  return kinds
    .filter((kind) => leftOut[kind] > 0)
    .map((kind) =>
      message(`restore.part.${kind === 'ovenChecks' ? 'oven-checks' : kind}`, { count: leftOut[kind] }),
    );
}
