import { useState } from 'react';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { givenDepthSchema, type ShownDepth } from '../../../shared-core/contract/requests/rounds.ts';
import { reachesOtherFace } from '../../../shared-core/probing/readings/depth-read.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { type Message, message, thicknessOf } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { LengthField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useMeanwhile } from '../../form/useMeanwhile.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ depthMm: givenDepthSchema });
/** How deep pins can be is the board's to say, where it is known. */
const schemaOnBoard = z.object({ depthMm: z.number().min(givenDepthSchema.minValue ?? 0) });

/** What is asked about a depth that may be meant: longer pins, or one past the middle. */
type Question = 'pins' | 'middle';

/** Lengths that a person types in sixteenths of an inch are this close, mm. */
const CLOSE_MM = 0.8;

/** Corrects how deep a reading was: of it alone, or of all of its round at that depth. */
export function DepthForm({ reading, onClose }: { reading: JudgedReading; onClose: () => void }) {
  const { say } = useWords();
  const { id: readingId, spot, depthFrom } = reading;
  const { shown, theirs, thrown, conflict } = useMeanwhile<ShownDepth>({ depthMm: spot.depthMm, depthFrom });
  const board = useQuery('boards.get', { id: reading.boardId }).output?.board;
  const { draft, field, read, refill } = useDraft(
    board ? schemaOnBoard : schema,
    { depthMm: spot.depthMm },
    theirs && { depthMm: theirs.depthMm },
  );
  const [scope, setScope] = useState<'this' | 'round'>('this');
  const [givenToo, setGivenToo] = useState(false);
  const given = useQuery('readings.givenDepths', { readingId }).output?.readings ?? 0;

  /** The depth that was asked about last. */
  const [asked, setAsked] = useState<{ depthMm: number; about: Question } | null>(null);
  const question = asked?.depthMm === draft.depthMm ? (asked?.about ?? null) : null;
  const meters = useQuery('meters.list', {}).output;
  const closed = useQuery('meters.closed', {}).output;
  const pinsMm =
    [...(meters ?? []), ...(closed ?? [])].find(({ id }) => id === reading.meterId)?.profile?.pins
      ?.lengthMm ?? null;

  const { underWay, follow, cancel } = useLongWork();

  async function save(): Promise<void> {
    const { depthMm } = read();
    if (board && reachesOtherFace(depthMm, board.thicknessMm))
      throw new Refusal(message('refusal.deeper-than-board', { boardThickness: thicknessOf(board) }));
    const middleMm = board ? board.thicknessMm / 2 : Number.POSITIVE_INFINITY;
    const questions: { about: Question; asks: Message }[] = [];
    if (spot.face === 'face' && pinsMm !== null && depthMm > pinsMm + CLOSE_MM)
      questions.push({ about: 'pins', asks: message('depth.beyond-pins', { pinsMm }) });
    if (depthMm > middleMm + CLOSE_MM)
      questions.push({ about: 'middle', asks: message('depth.past-middle', { middleMm }) });
    const next = questions[questions.findIndex(({ about }) => about === question) + 1];
    if (next) {
      setAsked({ depthMm, about: next.about });
      throw new Refusal(next.asks);
    }
    const wholeRound = scope === 'round';
    const given = { readingId, depthMm, shown, wholeRound, givenToo };
    const { act, readings } = await follow((work) =>
      bridge().command('readings.setDepth', { ...given, work }),
    ).catch(thrown);
    tellUndoable(say('depth.changed', { readings, depthMm }), (work) =>
      bridge().command('acts.undo', { act, work }),
    );
  }

  return (
    <FormDialog
      title={say('depth.title')}
      saveWords={say(
        question === null ? 'common.save' : question === 'pins' ? 'depth.other-pins' : 'depth.so-deep',
      )}
      isQuestion={question !== null}
      work={{ label: say('depth.changing'), underWay, onCancel: cancel }}
      onSave={save}
      onClose={onClose}
      conflict={conflict(({ depthMm }) => refill({ depthMm }))}
    >
      <LengthField
        label={say(spot.face === 'face' || spot.face === 'end-grain' ? 'depth.of-tips' : 'depth.from-face')}
        hint={reading.depthFrom === 'plan' ? say('depth.only-planned') : undefined}
        autoFocus
        {...field('depthMm')}
      />
      <Choice
        label={say('depth.for')}
        value={scope}
        options={[
          { value: 'this', label: say('depth.for-this') },
          { value: 'round', label: say('depth.for-round', { depth: spot.depth }) },
        ]}
        onValue={setScope}
      />
      {scope === 'round' && given > 0 && (
        <Checkbox
          label={say('depth.given-too', { readings: given })}
          hint={givenToo ? say('depth.given-change', { readings: given }) : undefined}
          checked={givenToo}
          onChecked={setGivenToo}
        />
      )}
    </FormDialog>
  );
}
