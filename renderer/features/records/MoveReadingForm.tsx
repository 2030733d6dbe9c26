import { useState } from 'react';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useEach, useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { Select } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import { AlikeBoards } from '../life/AlikeBoards.tsx';
import type { OfReading } from './of-reading.ts';

type Input = RequestInput<'readings.moveToBoard'>;
type Scope = Input['scope'];
/** What is asked before a reading is moved to a board that came to its place later, and the answer that saves. */
const asking = { 'refusal.reading-before-place': { isThereThen: true } } as const;

/** Asks which board was probed, and whether more than this reading was saved for the wrong one. */
export function MoveReadingForm({ reading, recordName, onClose }: OfReading) {
  const { say } = useWords();
  const { id: readingId, boardId: ownId } = reading;
  const own = useQuery('boards.get', { id: ownId });
  const [board, setBoard] = useState<BoardRow | null>(null);
  const [isMissing, setMissing] = useState(false);
  const [scope, setScope] = useState<Scope>('reading');
  const [chosenSpot, setSpot] = useState<number | null>(null);
  const [there] = useEach('readings.onBoard', board === null ? [] : [{ readingId, boardId: board.id }]);
  const ownCode = own.output?.board.code ?? '';
  const questions = useQuestions<Pick<Input, 'isThereThen'>, keyof typeof asking>(asking, {
    boardId: board?.id,
    scope,
  });

  async function save(): Promise<void> {
    const isSpotAsked = scope === 'reading' && there?.output?.keptSpot === null;
    if (board === null || (isSpotAsked && chosenSpot === null)) {
      setMissing(true);
      throw fieldsMarked();
    }
    const spotIndex = isSpotAsked ? chosenSpot : null;
    const asked = { readingId, boardId: board.id, spotIndex, scope };
    const { readings } = await questions.ask((answers) =>
      bridge().command('readings.moveToBoard', { ...asked, ...answers }),
    );
    tellDone(
      scope === 'swap'
        ? say('reading-move.swapped', { boardCode: ownCode, otherCode: board.code })
        : say('reading-move.done', { readings, boardCode: board.code }),
    );
  }

  return (
    <FormDialog
      title={say('reading-move.of', { recordName })}
      saveWords={say(questions.open === null ? 'reading-move.save' : 'reading-move.was-there')}
      isQuestion={questions.open !== null}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('reading-move.effect')}</p>
      <Await of={[own]}>
        {(found) => (
          <AlikeBoards
            board={found.board}
            question={say('reading-move.which-board')}
            chosen={board}
            error={isMissing && board === null ? say('reading-move.choose-board') : null}
            onChoose={(other) => {
              setBoard(other);
              setSpot(null);
              // The other board may have none to swap.
              setScope((before) => (before === 'swap' ? 'board' : before));
            }}
          />
        )}
      </Await>
      {board && there && (
        <Await of={[there]}>
          {({ keptSpot, spots, own: readings, others }) => (
            <>
              {(readings > 1 || others > 0) && (
                <Choice
                  label={say('reading-move.which')}
                  isList
                  value={scope}
                  options={[
                    { value: 'reading', label: say('reading-move.one') },
                    ...(readings > 1
                      ? [
                          {
                            value: 'board' as const,
                            label: say('reading-move.all', { readings, boardCode: ownCode }),
                          },
                        ]
                      : []),
                    ...(others > 0
                      ? [
                          {
                            value: 'swap' as const,
                            label: say('reading-move.swap', { readings: others, boardCode: board.code }),
                          },
                        ]
                      : []),
                  ]}
                  onValue={setScope}
                />
              )}
              {scope === 'reading' && keptSpot === null && (
                <Select
                  label={say('reading-move.spot', { boardCode: board.code })}
                  hint={say('reading-move.spot-hint', { boardCode: board.code })}
                  error={isMissing && chosenSpot === null ? say('reading-move.choose-spot') : null}
                  value={chosenSpot}
                  options={[
                    { value: null as number | null, label: '–' },
                    ...spots.map(({ spotIndex, name }) => ({
                      value: spotIndex as number | null,
                      label: say(name),
                    })),
                  ]}
                  onValue={setSpot}
                />
              )}
            </>
          )}
        </Await>
      )}
    </FormDialog>
  );
}
