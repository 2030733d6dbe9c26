import type { ReactNode } from 'react';
import { type DisplayUnits, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select, TextField } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import './end-fields.css';

interface EndDraft<S extends string, B extends string> {
  sawing: S;
  barkSide: B;
  /** A day as a date field has it, or empty. */
  barkOffOn: string;
  /** As it was typed. */
  ringRadius: string;
}

type Options<V extends string> = readonly { value: V; label: string }[];

/** Whether the bark of a known side is off, so that there is a day on which it came off. */
const isBarkOff = (side: string): boolean => side === 'up' || side === 'down';

/** The day on which the bark came off once a side is chosen: today where it was on until now. */
function barkOffAfter(
  { barkSide, barkOffOn }: EndDraft<string, string>,
  side: string,
  today: string,
): string {
  if (!isBarkOff(side)) return '';
  return barkSide.endsWith('bark-on') ? today : barkOffOn;
}

/** What can be seen on a board's end grain: how its rings lie, and where the bark was. */
export function EndFields<S extends string, B extends string>({
  draft,
  sawings,
  barkSides,
  ringRadiusError,
  units,
  lead,
  onDraft,
  children,
}: {
  draft: EndDraft<S, B>;
  sawings: Options<S>;
  barkSides: Options<B>;
  ringRadiusError: string | null | undefined;
  units: DisplayUnits;
  /** What it is used for. */
  lead: string;
  onDraft: (changed: Partial<EndDraft<S, B>>) => void;
  /** The end as it is drawn. */
  children?: ReactNode;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  return (
    <fieldset className="end-fields">
      <legend>{say('board.end-grain')}</legend>
      <p className="field-hint">{lead}</p>
      {children}
      <div className="form-grid">
        <Select
          label={say('board.sawing')}
          hint={say('board.sawing-hint')}
          options={sawings}
          value={draft.sawing}
          onValue={(sawing) => onDraft({ sawing } as Partial<EndDraft<S, B>>)}
        />
        <Select
          label={say('board.bark-side')}
          hint={say('board.bark-side-hint')}
          options={barkSides}
          value={draft.barkSide}
          onValue={(barkSide) =>
            onDraft({ barkSide, barkOffOn: barkOffAfter(draft, barkSide, today) } as Partial<EndDraft<S, B>>)
          }
        />
      </div>
      <div className="form-grid">
        {isBarkOff(draft.barkSide) && (
          <DateField
            label={say('board.bark-off-on')}
            hint={say('board.bark-off-hint')}
            max={today}
            value={draft.barkOffOn || null}
            onValue={(day) => onDraft({ barkOffOn: day ?? '' } as Partial<EndDraft<S, B>>)}
          />
        )}
        <TextField
          label={say('board.pith-distance-in', { unit: shortLengthUnit(units) })}
          hint={say('board.pith-distance-hint')}
          value={draft.ringRadius}
          error={ringRadiusError}
          onValue={(ringRadius) => onDraft({ ringRadius } as Partial<EndDraft<S, B>>)}
        />
      </div>
    </fieldset>
  );
}
