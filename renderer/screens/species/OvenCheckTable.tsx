import { useState } from 'react';
import type { JudgedOvenCheck, OvenWeight, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { ExcludeButton } from '../../parts/ExcludeButton.tsx';
import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { Unfold } from '../../parts/Unfold.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { WeighForm } from './WeighForm.tsx';

/** Each piece: what was read, what it weighed, what it held, and what is to be done with it next. */
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
  const record = { checkId: check.id, weightId: weight?.id ?? null };
  return (
    <ExcludeButton
      recordName={weight ? `${weight.grams} g of ${check.piece}` : check.piece}
      excluded={(weight ?? check).excluded}
      reasons={
        weight
          ? ['exclusion.typing-slip', 'exclusion.wrong-piece']
          : ['exclusion.knot', 'exclusion.read-frozen', 'exclusion.resin-lost']
      }
      onExclude={(why) => bridge().command('ovenChecks.exclude', { ...record, why })}
      onInclude={() => void attempt(bridge().command('ovenChecks.include', record))}
    />
  );
}

function Piece({ check, onWeigh }: { check: JudgedOvenCheck; onWeigh: () => void }) {
  const units = useUnits();
  return (
    <>
      <div className="oven-piece-head">
        <h4>{check.piece}</h4>
        <span className="oven-mc">
          {check.ovenDryMcPct === null
            ? 'in the oven'
            : `${check.dry ? '' : 'at least '}${pctWords(check.ovenDryMcPct)} % MC`}
        </span>
        <span className="oven-read">
          read {check.readings.map((raw) => rawWords(raw, check.unit)).join(', ')}
          {check.woodTempC === null
            ? ', temperature not known'
            : ` at ${temperatureText(check.woodTempC, units)}`}
          , {dayWords(check.at)}
        </span>
        <span className="oven-piece-actions">
          {check.excluded === null && (
            <Button kind={check.dry ? 'plain' : 'main'} aria-label={`Weigh ${check.piece}`} onClick={onWeigh}>
              Weigh
            </Button>
          )}
          <ExcludeCheck check={check} weight={null} />
        </span>
      </div>
      <p>{check.excluded === null ? check.sentence : `Excluded: ${check.excluded}`}</p>
      {check.note && <p className="oven-read">{check.note}</p>}
      <Unfold words="Masses">
        <ul className="oven-weights">
          <li>
            <span className="tabular">{check.wetGrams} g</span>
            <span>wet, when it was read</span>
          </li>
          {check.weights.map((weight) => (
            <li key={weight.id} className={weight.excluded === null ? '' : 'oven-excluded'}>
              <span className="tabular">
                {weight.excluded === null ? `${weight.grams} g` : <s>{weight.grams} g</s>}
              </span>
              <span>
                {dayTimeWords(weight.at)}
                {weight.excluded !== null && `; excluded: ${weight.excluded}`}
              </span>
              <ExcludeCheck check={check} weight={weight} />
            </li>
          ))}
        </ul>
      </Unfold>
    </>
  );
}
