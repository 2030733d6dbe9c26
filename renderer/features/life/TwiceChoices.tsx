import { type ReactNode, useState } from 'react';
import {
  type BoardPart,
  hardlyOneBoard,
  isSameMoves,
  knownBy,
  partsThatDiffer,
  type TwiceRecord,
  type WhichRecord,
  type WhichRecords,
} from '../../../shared-core/contract/entered-twice.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { Choice } from '../../form/Choice.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';
import { usePartInWords } from './useBoardInWords.ts';

const LABELS = {
  species: 'board.species',
  thickness: 'board.thickness',
  width: 'board.width',
  length: 'board.length',
  'sawn-on': 'board.sawn-on',
  'dried-by': 'board.dried-by',
  sawing: 'board.sawing',
  'ring-radius': 'board.pith-distance',
  'bark-side': 'board.bark-side',
  log: 'board.log',
  stack: 'board.stack',
} as const satisfies Record<BoardPart, Code>;

/** The start of a note is enough to recognize it. */
const NOTE_LETTERS = 80;

/** What a person chose of two records of a board; `own` is of the board whose page it is. */
interface Chosen {
  stays: WhichRecord;
  parts: Partial<Record<BoardPart, WhichRecord>>;
  note: WhichRecords;
  moves: WhichRecords;
  reservation: WhichRecord;
}

const opposite = { own: 'other', other: 'own', both: 'both' } as const;

/** The choices between two records of a board, and what is asked of the machine by them. */
export function useTwiceChoices() {
  const [chosen, setChosen] = useState<Chosen>({
    stays: 'own',
    parts: {},
    note: 'both',
    moves: 'both',
    reservation: 'own',
  });
  const partOf = (part: BoardPart, { own, other }: Twice): WhichRecord =>
    chosen.parts[part] ?? knownBy(part, own.board, other.board);
  return {
    chosen,
    partOf,
    change: (changed: Partial<Chosen>): void => setChosen((before) => ({ ...before, ...changed })),
    choosePart: (part: BoardPart, from: WhichRecord): void =>
      setChosen((before) => ({ ...before, parts: { ...before.parts, [part]: from } })),
    /** Seen from the record that stays. */
    merge: (twice: Twice): RequestInput<'boards.merge'> => {
      const { stays, note, moves, reservation } = chosen;
      const goes = opposite[stays];
      const seen = <W extends WhichRecords>(which: W): W => (stays === 'own' ? which : opposite[which]) as W;
      return {
        id: twice[stays].board.id,
        basedOn: twice[stays].board.version,
        otherId: twice[goes].board.id,
        otherBasedOn: twice[goes].board.version,
        taken: partsThatDiffer(twice.own.board, twice.other.board).filter(
          (part) => partOf(part, twice) === goes,
        ),
        note: seen(note),
        moves: seen(moves),
        reservation: seen(reservation),
      };
    },
  };
}

export interface Twice {
  own: TwiceRecord;
  other: TwiceRecord;
}

/** Both records side by side in what they differ. */
export function TwiceChoices({
  twice,
  choices,
}: {
  twice: Twice;
  choices: ReturnType<typeof useTwiceChoices>;
}) {
  const { say } = useWords();
  const inWords = usePartInWords();
  const { own, other } = twice;
  const { chosen, partOf, change, choosePart } = choices;
  const named = (record: TwiceRecord, value: ReactNode) => (
    <>
      <span translate="no">{record.board.code}</span>: {value}
    </>
  );
  /** An option of each record. */
  const ofEach = (value: (record: TwiceRecord) => ReactNode) => [
    { value: 'own' as const, label: named(own, value(own)) },
    { value: 'other' as const, label: named(other, value(other)) },
  ];
  const stays = (moves: readonly Move[]) =>
    moves.map(({ placeName, since }) => say('life.stay', { placeName, sinceOn: since })).join(', ');
  const begun = (note: string) => (note.length > NOTE_LETTERS ? `${note.slice(0, NOTE_LETTERS)}…` : note);
  const hasTwoNotes = own.board.note !== '' && other.board.note !== '' && own.board.note !== other.board.note;
  const isReservedTwice =
    own.projectName !== null && other.projectName !== null && own.projectName !== other.projectName;
  return (
    <>
      {hardlyOneBoard(own.board, other.board).map((part) => (
        <Banner key={part} kind="caution">
          {say(`life.merge-${part}-differs`)}
        </Banner>
      ))}
      <p className="soft">
        {[own, other]
          .map(({ board, readings }) => say('life.merge-readings', { boardCode: board.code, readings }))
          .join(' ')}{' '}
        {say('life.merge-all-stay')}
      </p>
      <Choice
        label={say('life.merge-stays')}
        value={chosen.stays}
        options={[own, other].map(({ board }, index) => ({
          value: index === 0 ? ('own' as const) : ('other' as const),
          label: board.code,
          isName: true,
        }))}
        onValue={(record) => change({ stays: record })}
      />
      {partsThatDiffer(own.board, other.board).map((part) => (
        <Choice
          key={part}
          label={say(LABELS[part])}
          value={partOf(part, twice)}
          options={ofEach((record) => inWords(part, record))}
          onValue={(record) => choosePart(part, record)}
        />
      ))}
      {!isSameMoves(own.moves, other.moves) && (
        <Choice
          label={say('life.merge-moves')}
          value={chosen.moves}
          options={[
            { value: 'both', label: say('life.merge-moves-of-both') },
            ...ofEach(({ moves }) => stays(moves)),
          ]}
          onValue={(moves) => change({ moves })}
        />
      )}
      {hasTwoNotes && (
        <Choice
          label={say('board.note')}
          value={chosen.note}
          options={[
            { value: 'both', label: say('life.merge-both-notes') },
            ...ofEach(({ board }) => <span translate="no">{begun(board.note)}</span>),
          ]}
          onValue={(note) => change({ note })}
        />
      )}
      {isReservedTwice && (
        <Choice
          label={say('life.merge-reserved')}
          value={chosen.reservation}
          options={ofEach(({ projectName }) => <span translate="no">{projectName}</span>)}
          onValue={(reservation) => change({ reservation })}
        />
      )}
    </>
  );
}
