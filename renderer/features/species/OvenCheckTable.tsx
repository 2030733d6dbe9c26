import { useState } from 'react';
import type { JudgedOvenCheck, OvenWeight, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from '../records/ExcludeButton.tsx';
import { RecordList, RecordValue } from '../records/RecordList.tsx';
import { WeighForm } from './WeighForm.tsx';

/** A row: a piece, or one of its weights. */
interface Row {
  check: JudgedOvenCheck;
  weight: OvenWeight | null;
  excluded: JudgedOvenCheck['excluded'];
}

/** Each piece: its readings, its weights, its MC, and what to do with it next. */
export function OvenCheckTable({ own }: { own: OwnFit }) {
  const { say, formats } = useWords();
  const [toWeigh, setToWeigh] = useState<JudgedOvenCheck | null>(null);
  const rows = own.checks.flatMap((check): Row[] => [
    { check, weight: null, excluded: check.excluded },
    ...check.weights.map((weight) => ({ check, weight, excluded: weight.excluded })),
  ]);
  const readOf = ({ readings, unit, at, woodTempC }: JudgedOvenCheck): string => {
    const read = { readings: readings.map((raw) => rawText(raw, unit, formats)), readOn: at };
    return woodTempC === null ? say('oven.read-untempered', read) : say('oven.read', { ...read, woodTempC });
  };
  /** All of a piece to the step of its balance. */
  const weightText = ({ wetGrams, balanceGrams }: JudgedOvenCheck, weight: OvenWeight | null): string =>
    formats.smallWeight(weight ? weight.grams : wetGrams, balanceGrams);
  return (
    <>
      <RecordList
        name={say('oven.title')}
        records={rows}
        keyOf={({ check, weight }) => (weight ? `weight ${weight.id}` : `check ${check.id}`)}
        columns={[
          {
            id: 'piece',
            head: say('oven.piece'),
            cell: ({ check, weight }) =>
              weight ? formats.dateTime(weight.at) : <span translate="no">{check.piece}</span>,
            below: ({ check, weight }) => !weight && readOf(check),
          },
          {
            id: 'weight',
            head: say('oven.weight'),
            cell: ({ check, weight }) => (
              <RecordValue isUsed={(weight ?? check).excluded === null}>
                {weightText(check, weight)}
              </RecordValue>
            ),
            below: ({ weight }) => !weight && say('oven.wet'),
            align: 'end',
          },
          {
            id: 'mc',
            head: say('oven.oven-dry'),
            cell: ({ check: { ovenDryMcPct, dry }, weight }) =>
              weight ? null : ovenDryMcPct === null ? (
                say('oven.in-oven')
              ) : (
                <strong>
                  {dry ? formats.mc(ovenDryMcPct) : say('oven.at-least', { ovenDryPct: ovenDryMcPct })}
                </strong>
              ),
            align: 'end',
          },
        ]}
        stateOf={({ check, weight }) =>
          !weight && (
            <>
              {say(check.status)} <span translate="no">{check.note}</span>
            </>
          )
        }
        actionsOf={({ check, weight, excluded }) => {
          const record = { checkId: check.id, weightId: weight?.id ?? null };
          return (
            <>
              {!weight && excluded === null && (
                <Button
                  kind={check.dry ? 'plain' : 'main'}
                  aria-label={say('oven.weigh-piece', { piece: check.piece })}
                  onClick={() => setToWeigh(check)}
                >
                  {say('oven.weigh')}
                </Button>
              )}
              <ExcludeButton
                recordName={
                  weight
                    ? say('oven.weight-of', { weightText: weightText(check, weight), piece: check.piece })
                    : check.piece
                }
                excluded={excluded}
                reasons={weight ? ['typing-slip', 'wrong-piece'] : ['knot', 'read-frozen', 'resin-lost']}
                onExclude={(why) => bridge().command('ovenChecks.exclude', { ...record, why })}
                onInclude={() => void attempt(bridge().command('ovenChecks.include', record))}
              />
            </>
          );
        }}
      />
      {toWeigh && <WeighForm check={toWeigh} onClose={() => setToWeigh(null)} />}
    </>
  );
}
