import type { ReactNode } from 'react';
import { type DisplayUnits, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { dayOf } from '../../parts/days.ts';
import { Select, TextField } from '../../parts/Field.tsx';
import './end-fields.css';

interface EndDraft<S extends string, B extends string> {
  sawing: S;
  barkSide: B;
  /** A day as a date field has it; empty where none was said. */
  barkOffOn: string;
  /** As it was typed. */
  ringRadius: string;
}

type Options<V extends string> = readonly { value: V; label: string }[];

/** A record of words as options to choose from. */
export const optionsOf = <V extends string>(words: Record<V, string>): Options<V> =>
  (Object.entries(words) as [V, string][]).map(([value, label]) => ({ value, label }));

/** Whether the bark of a known side is off, so that there is a day on which it came off. */
const isBarkOff = (side: string): boolean => side === 'up' || side === 'down';

/** Who says of a board with bark on that it is off, took it off just now. */
function barkOffAfter({ barkSide, barkOffOn }: EndDraft<string, string>, side: string): string {
  if (!isBarkOff(side)) return '';
  return barkSide.endsWith('bark-on') ? dayOf(new Date()) : barkOffOn;
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
  /** What becomes of what is left out. */
  lead: string;
  onDraft: (changed: Partial<EndDraft<S, B>>) => void;
  /** The end as it is drawn. */
  children?: ReactNode;
}) {
  return (
    <fieldset className="end-fields">
      <legend>What its end shows</legend>
      <p className="field-hint">{lead}</p>
      {children}
      <div className="form-grid">
        <Select
          label="Sawing"
          hint="Rings along the face: flat; upright: quarter."
          options={sawings}
          value={draft.sawing}
          onValue={(sawing) => onDraft({ sawing } as Partial<EndDraft<S, B>>)}
        />
        <Select
          label="Bark side"
          hint="The face that the rings arch towards."
          options={barkSides}
          value={draft.barkSide}
          onValue={(barkSide) =>
            onDraft({ barkSide, barkOffOn: barkOffAfter(draft, barkSide) } as Partial<EndDraft<S, B>>)
          }
        />
      </div>
      <div className="form-grid">
        {isBarkOff(draft.barkSide) && (
          <TextField
            label="Bark taken off on"
            hint="Until then that face dried under its bark. Empty: it never did."
            type="date"
            max={dayOf(new Date())}
            value={draft.barkOffOn}
            onValue={(barkOffOn) => onDraft({ barkOffOn } as Partial<EndDraft<S, B>>)}
          />
        )}
        <TextField
          label={`Pith to middle, ${shortLengthUnit(units)}`}
          hint="From the centre of the rings to the middle of the board’s end."
          value={draft.ringRadius}
          error={ringRadiusError}
          onValue={(ringRadius) => onDraft({ ringRadius } as Partial<EndDraft<S, B>>)}
        />
      </div>
    </fieldset>
  );
}
