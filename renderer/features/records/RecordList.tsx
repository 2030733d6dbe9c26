import type { ReactNode } from 'react';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { exclusionText } from '../../../shared-core/record-words/exclusion-text.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { useWords } from '../../words.ts';
import notesCss from '../notes/notes.module.css';
import { MovedReading } from './MovedReading.tsx';
import css from './record-list.module.css';

/** What a person may exclude, of whatever kind. */
interface Measured {
  excluded: Exclusion | null;
  /** Of a reading. */
  suspicions?: readonly Suspicion[];
  movedTo?: JudgedReading['movedTo'];
  movedFrom?: JudgedReading['movedFrom'];
  note?: string | undefined;
}

/**
 * Records of what was measured, each with what speaks against it and what can be done with it. A remark that several of
 * them share is made once, below, under a number; advice that several remarks share, after the last of them.
 */
export function RecordList<R extends Measured>({
  name,
  records,
  keyOf,
  columns,
  stateOf,
  actionsOf,
}: {
  name: string;
  records: readonly R[];
  keyOf: (record: R) => string | number;
  columns: readonly Column<R>[];
  /** How far a record that is not excluded has come; null where nothing is to be said. */
  stateOf?: (record: R) => ReactNode;
  actionsOf: (record: R) => ReactNode;
}) {
  const { say } = useWords();
  const standing = records.filter(({ excluded }) => excluded === null);
  const suspicions = standing.flatMap((record) => record.suspicions ?? []);
  const remarks = [...new Map(suspicions.map(({ why, whatToDo }) => [say(why), say(whatToDo)]))];
  return (
    <>
      <DataTable
        name={name}
        rows={records}
        keyOf={keyOf}
        columns={[
          ...columns,
          {
            id: 'remarks',
            head: say('records.remarks'),
            cell: (record) => {
              const { excluded, suspicions = [], note } = record;
              const ownNote = note && (
                <p translate="no" className={notesCss.note}>
                  {note}
                </p>
              );
              if (excluded !== null)
                return (
                  <>
                    {record.movedTo ? (
                      <MovedReading reading={record} />
                    ) : (
                      say('exclude.excluded', { reason: exclusionText(excluded, say) })
                    )}
                    {ownNote}
                  </>
                );
              return (
                <>
                  {stateOf?.(record)}
                  <MovedReading reading={record} />
                  {ownNote}
                  {suspicions.map((suspicion) => (
                    <p key={suspicion.rule} className={css[suspicion.severity]}>
                      {suspicion.severity !== 'note' && `${say(`severity.${suspicion.severity}`)} `}
                      {say('records.remark-number', {
                        number: remarks.findIndex(([why]) => why === say(suspicion.why)) + 1,
                      })}
                    </p>
                  ))}
                </>
              );
            },
          },
          {
            id: 'actions',
            head: say('records.actions'),
            headSpokenOnly: true,
            cell: (record) => <div className={css.actions}>{actionsOf(record)}</div>,
          },
        ]}
      />
      {remarks.length > 0 && (
        <ol className="soft list numbered" aria-label={say('records.remarks')}>
          {remarks.map(([why, whatToDo], at) => (
            <li key={why}>
              {why} {remarks.findLastIndex(([, advice]) => advice === whatToDo) === at && whatToDo}
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** A value of a record: struck out, and still readable, where it is not used. */
export function RecordValue({ isUsed, children }: { isUsed: boolean; children: ReactNode }) {
  return isUsed ? <strong>{children}</strong> : <s>{children}</s>;
}
