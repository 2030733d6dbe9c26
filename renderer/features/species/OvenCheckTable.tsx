import { useState } from 'react';
import type { JudgedOvenCheck, OvenWeight, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from '../records/ExcludeButton.tsx';
import { exclusionText } from '../records/exclusion-text.ts';
import { WeighForm } from './WeighForm.tsx';

/** Each piece: its readings, its weights, its MC, and what to do with it next. */
export function OvenCheckTable({ own }: { own: OwnFit }) {
  const [toWeigh, setToWeigh] = useState<JudgedOvenCheck | null>(null);
  return (
    <>
      <ul className="oven-pieces">
        {own.checks.map((check) => (
          <li key={check.id} className={check.excluded === null ? '' : 'oven-excluded'}>
            <Piece check={check} onWeigh={() => setToWeigh(check)} />
          </li>
        ))}
      </ul>
      {toWeigh && <WeighForm check={toWeigh} onClose={() => setToWeigh(null)} />}
    </>
  );
}

/** Excludes a check, or one weight of it. */
function ExcludeCheck({ check, weight }: { check: JudgedOvenCheck; weight: OvenWeight | null }) {
  const { say } = useWords();
  const record = { checkId: check.id, weightId: weight?.id ?? null };
  return (
    <ExcludeButton
      recordName={
        weight ? say('oven.weight-of', { weightGrams: weight.grams, piece: check.piece }) : check.piece
      }
      excluded={(weight ?? check).excluded}
      reasons={weight ? ['typing-slip', 'wrong-piece'] : ['knot', 'read-frozen', 'resin-lost']}
      onExclude={(why) => bridge().command('ovenChecks.exclude', { ...record, why })}
      onInclude={() => void attempt(bridge().command('ovenChecks.include', record))}
    />
  );
}

function Piece({ check, onWeigh }: { check: JudgedOvenCheck; onWeigh: () => void }) {
  const { say, formats } = useWords();
  const { piece, woodTempC, ovenDryMcPct } = check;
  const read = { readings: check.readings.map((raw) => rawText(raw, check.unit, formats)), readOn: check.at };
  return (
    <>
      <div className="oven-piece-head">
        <h4 translate="no">{piece}</h4>
        <span className="oven-mc">
          {ovenDryMcPct === null
            ? say('oven.in-oven')
            : check.dry
              ? formats.mc(ovenDryMcPct)
              : say('oven.at-least', { ovenDryPct: ovenDryMcPct })}
        </span>
        <span className="oven-read">
          {woodTempC === null ? say('oven.read-untempered', read) : say('oven.read', { ...read, woodTempC })}
        </span>
        <span className="oven-piece-actions">
          {check.excluded === null && (
            <Button
              kind={check.dry ? 'plain' : 'main'}
              aria-label={say('oven.weigh-piece', { piece })}
              onClick={onWeigh}
            >
              {say('oven.weigh')}
            </Button>
          )}
          <ExcludeCheck check={check} weight={null} />
        </span>
      </div>
      <p>
        {check.excluded === null
          ? say(check.status)
          : say('exclude.excluded', { reason: exclusionText(check.excluded, say) })}
      </p>
      {check.note && (
        <p className="oven-read" translate="no">
          {check.note}
        </p>
      )}
      <Unfold words={say('oven.weights')}>
        <ul className="oven-weights">
          <li>
            <span className="tabular">{formats.smallWeight(check.wetGrams)}</span>
            <span>{say('oven.wet')}</span>
          </li>
          {check.weights.map((weight) => (
            <li key={weight.id} className={weight.excluded === null ? '' : 'oven-excluded'}>
              <span className="tabular">
                {weight.excluded === null ? (
                  formats.smallWeight(weight.grams)
                ) : (
                  <s>{formats.smallWeight(weight.grams)}</s>
                )}
              </span>
              <span>
                {formats.dateTime(weight.at)}
                {weight.excluded !== null &&
                  ` · ${say('exclude.excluded', { reason: exclusionText(weight.excluded, say) })}`}
              </span>
              <ExcludeCheck check={check} weight={weight} />
            </li>
          ))}
        </ul>
      </Unfold>
    </>
  );
}
