import { useState } from 'react';
import type { JudgedOvenCheck, OvenMass, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { LeaveOutForm } from './LeaveOutForm.tsx';
import { WeighForm } from './WeighForm.tsx';

type Open =
  | { what: 'weigh'; check: JudgedOvenCheck }
  | { what: 'leave-out'; check: JudgedOvenCheck; mass: OvenMass | null };

/** Each piece: what was read, what it weighed, what it held, and what is to be done with it next. */
export function OvenCheckTable({ own }: { own: OwnFit }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className="oven-pieces">
        {own.checks.map((check) => (
          <li key={check.id} className={check.setAside === null ? '' : 'oven-aside'}>
            <Piece check={check} onOpen={setOpen} />
          </li>
        ))}
      </ul>
      {open?.what === 'weigh' && <WeighForm check={open.check} onClose={close} />}
      {open?.what === 'leave-out' && <LeaveOutForm check={open.check} mass={open.mass} onClose={close} />}
    </>
  );
}

function Piece({ check, onOpen }: { check: JudgedOvenCheck; onOpen: (open: Open) => void }) {
  const units = useUnits();
  const putBack = (massId: number | null) =>
    void attempt(bridge().call('ovenChecks.putBack', { checkId: check.id, massId }));
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
          {check.setAside === null ? (
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
                aria-label={`Set ${check.piece} aside`}
                onClick={() => onOpen({ what: 'leave-out', check, mass: null })}
              >
                Set aside
              </Button>
            </>
          ) : (
            <Button kind="quiet" aria-label={`Put ${check.piece} back`} onClick={() => putBack(null)}>
              Put back
            </Button>
          )}
        </span>
      </div>
      <p>{check.setAside === null ? check.sentence : `Set aside: ${check.setAside}`}</p>
      {check.note && <p className="oven-read">{check.note}</p>}
      <details>
        <summary>Masses</summary>
        <ul className="oven-masses">
          <li>
            <span className="tabular">{check.wetGrams} g</span>
            <span>wet, when it was read</span>
          </li>
          {check.masses.map((mass) => (
            <li key={mass.id} className={mass.setAside === null ? '' : 'oven-aside'}>
              <span className="tabular">
                {mass.setAside === null ? `${mass.grams} g` : <s>{mass.grams} g</s>}
              </span>
              <span>
                {dayTimeWords(mass.at)}
                {mass.setAside !== null && `; set aside: ${mass.setAside}`}
              </span>
              {mass.setAside === null ? (
                <Button
                  kind="quiet"
                  aria-label={`Set ${mass.grams} g of ${check.piece} aside`}
                  onClick={() => onOpen({ what: 'leave-out', check, mass })}
                >
                  Set aside
                </Button>
              ) : (
                <Button
                  kind="quiet"
                  aria-label={`Put ${mass.grams} g of ${check.piece} back`}
                  onClick={() => putBack(mass.id)}
                >
                  Put back
                </Button>
              )}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
