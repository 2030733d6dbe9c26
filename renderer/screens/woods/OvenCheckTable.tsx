import { useState } from 'react';
import type { JudgedOvenCheck, OvenMass, OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { SetAsideForm } from '../../parts/SetAsideForm.tsx';
import { Unfold } from '../../parts/Unfold.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { WeighForm } from './WeighForm.tsx';

type Open =
  | { what: 'weigh'; check: JudgedOvenCheck }
  | { what: 'set-aside'; check: JudgedOvenCheck; mass: OvenMass | null };

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
      {open?.what === 'set-aside' && <SetAside check={open.check} mass={open.mass} onClose={close} />}
    </>
  );
}

function SetAside({
  check,
  mass,
  onClose,
}: {
  check: JudgedOvenCheck;
  /** Null: the whole check. */
  mass: OvenMass | null;
  onClose: () => void;
}) {
  return (
    <SetAsideForm
      what={mass ? `${mass.grams} g of ${check.piece}` : check.piece}
      hint={
        mass ? 'Like: a slip of typing, another piece.' : 'Like: a knot, read while frozen, resin ran out.'
      }
      onWhy={(why) =>
        bridge().call('ovenChecks.setAside', { checkId: check.id, massId: mass?.id ?? null, why })
      }
      onClose={onClose}
    />
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
                aria-label={`Set aside ${check.piece}`}
                onClick={() => onOpen({ what: 'set-aside', check, mass: null })}
              >
                Set aside
              </Button>
            </>
          ) : (
            <Button kind="quiet" aria-label={`Put back ${check.piece}`} onClick={() => putBack(null)}>
              Put back
            </Button>
          )}
        </span>
      </div>
      <p>{check.setAside === null ? check.sentence : `Set aside: ${check.setAside}`}</p>
      {check.note && <p className="oven-read">{check.note}</p>}
      <Unfold words="Masses">
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
                  aria-label={`Set aside ${mass.grams} g of ${check.piece}`}
                  onClick={() => onOpen({ what: 'set-aside', check, mass })}
                >
                  Set aside
                </Button>
              ) : (
                <Button
                  kind="quiet"
                  aria-label={`Put back ${mass.grams} g of ${check.piece}`}
                  onClick={() => putBack(mass.id)}
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
