import { useState } from 'react';
import type { JudgedOvenCheck, OvenWeight, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { ExcludeForm } from '../../parts/ExcludeForm.tsx';
import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { Unfold } from '../../parts/Unfold.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { WeighForm } from './WeighForm.tsx';

type Open =
  | { what: 'weigh'; check: JudgedOvenCheck }
  | { what: 'set-aside'; check: JudgedOvenCheck; weight: OvenWeight | null };

/** Each piece: what was read, what it weighed, what it held, and what is to be done with it next. */
export function OvenCheckTable({ own }: { own: OwnFit }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className="oven-pieces">
        {own.checks.map((check) => (
          <li key={check.id} className={check.excluded === null ? '' : 'oven-excluded'}>
            <Piece check={check} onOpen={setOpen} />
          </li>
        ))}
      </ul>
      {open?.what === 'weigh' && <WeighForm check={open.check} onClose={close} />}
      {open?.what === 'set-aside' && <Exclude check={open.check} weight={open.weight} onClose={close} />}
    </>
  );
}

function Exclude({
  check,
  weight,
  onClose,
}: {
  check: JudgedOvenCheck;
  /** Null: the whole check. */
  weight: OvenWeight | null;
  onClose: () => void;
}) {
  return (
    <ExcludeForm
      what={weight ? `${weight.grams} g of ${check.piece}` : check.piece}
      hint={
        weight ? 'Like: a slip of typing, another piece.' : 'Like: a knot, read while frozen, resin ran out.'
      }
      onWhy={(why) =>
        bridge().request('ovenChecks.exclude', { checkId: check.id, weightId: weight?.id ?? null, why })
      }
      onClose={onClose}
    />
  );
}

function Piece({ check, onOpen }: { check: JudgedOvenCheck; onOpen: (open: Open) => void }) {
  const units = useUnits();
  const include = (weightId: number | null) =>
    void attempt(bridge().request('ovenChecks.include', { checkId: check.id, weightId }));
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
          {check.excluded === null ? (
            <>
              <Button
                kind={check.dry ? 'plain' : 'main'}
                aria-label={`Weigh ${check.piece}`}
                onClick={() => onOpen({ what: 'weigh', check })}
              >
                Weigh
              </Button>
              <Button
                kind="quiet"
                aria-label={`Set aside ${check.piece}`}
                onClick={() => onOpen({ what: 'set-aside', check, weight: null })}
              >
                Set aside
              </Button>
            </>
          ) : (
            <Button kind="quiet" aria-label={`Put back ${check.piece}`} onClick={() => include(null)}>
              Put back
            </Button>
          )}
        </span>
      </div>
      <p>{check.excluded === null ? check.sentence : `Set aside: ${check.excluded}`}</p>
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
                {weight.excluded !== null && `; set aside: ${weight.excluded}`}
              </span>
              {weight.excluded === null ? (
                <Button
                  kind="quiet"
                  aria-label={`Set aside ${weight.grams} g of ${check.piece}`}
                  onClick={() => onOpen({ what: 'set-aside', check, weight })}
                >
                  Set aside
                </Button>
              ) : (
                <Button
                  kind="quiet"
                  aria-label={`Put back ${weight.grams} g of ${check.piece}`}
                  onClick={() => include(weight.id)}
                >
                  Put back
                </Button>
              )}
            </li>
          ))}
        </ul>
      </Unfold>
    </>
  );
}
