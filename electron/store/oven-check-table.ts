import {
  type NewOvenCheck,
  type OvenCheck,
  type OvenWeight,
  ovenCheckSchema,
} from '../../shared-core/contract/oven-checks.ts';
import { amended, exclusionOf } from './amendment-table.ts';
import { type Columns, rowAppender, selected } from './columns.ts';
import type { meterReads } from './meter-table.ts';
import { readJson, valueIn } from './read-json.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

interface CheckFields extends Omit<NewOvenCheck, 'meterId' | 'readings'> {
  meterProfileId: number | null;
  /** JSON. */
  readings: string;
  at: string;
}

const columns: Columns<CheckFields> = {
  speciesId: 'species_id',
  meterProfileId: 'meter_profile_id',
  piece: 'piece',
  readings: 'readings',
  unit: 'unit',
  woodTempC: 'wood_temp_c',
  wetGrams: 'wet_grams',
  balanceGrams: 'balance_grams',
  rule: 'end_rule',
  note: 'note',
  at: 'read_at',
};
const weightColumns: Columns<{ checkId: number; grams: number; at: string }> = {
  checkId: 'check_id',
  grams: 'grams',
  at: 'weighed_at',
};

type CheckRecord = CheckFields & {
  id: number;
  meterId: number | null;
  meterOff: number;
  amendments: string;
};
type WeightRecord = Omit<OvenWeight, 'excluded'> & { amendments: string };

/** Pieces that were read, weighed and dried. What was measured is only ever added to. */
export function ovenCheckReads(db: Db) {
  const select = `
    SELECT c.id, ${selected(columns, 'c')}, p.meter_id AS meterId,
      coalesce(${valueIn('p.record', '$.off')}, 0) AS meterOff, ${amended('ovenCheck', 'c')} AS amendments
    FROM oven_check c LEFT JOIN meter_profile p ON p.id = c.meter_profile_id`;
  const one = db.prepare<[number], CheckRecord>(`${select} WHERE c.id = ? AND ${holds('c')}`);
  const ofSpecies = db.prepare<[string], CheckRecord>(
    `${select} WHERE c.species_id = ? AND ${holds('c')} ORDER BY c.id`,
  );
  const weights = db.prepare<[number], WeightRecord>(
    `SELECT w.id, ${selected(weightColumns, 'w')}, ${amended('ovenWeight', 'w')} AS amendments
     FROM oven_weight w WHERE w.check_id = ? AND ${holds('w')} ORDER BY julianday(w.weighed_at), w.id`,
  );
  const speciesIds = db.prepare<[], { speciesId: string }>(
    `SELECT DISTINCT species_id AS speciesId FROM oven_check c WHERE ${holds('c')} ORDER BY species_id`,
  );
  const chosen = db.prepare<[string], { meterId: number | null; inUse: number }>(
    `SELECT f.meter_id AS meterId, f.in_use AS inUse FROM own_fit_choice f
     WHERE f.species_id = ? AND f.id = (SELECT max(g.id) FROM own_fit_choice g
       WHERE g.species_id = f.species_id AND g.meter_id IS f.meter_id AND ${holds('g')})`,
  );

  function toCheck(row: CheckRecord): OvenCheck {
    const readings = readJson(ovenCheckSchema.shape.readings, row.readings);
    return ovenCheckSchema.parse({
      ...row,
      readings: readings ?? [],
      weights: weights.all(row.id).map((weight) => ({ ...weight, excluded: exclusionOf(weight.amendments) })),
      // Damaged by the disk, it says nothing.
      excluded: readings === undefined ? { code: 'damaged' } : exclusionOf(row.amendments),
    });
  }

  return {
    get: (id: number): OvenCheck | undefined => {
      const row = one.get(id);
      return row && toCheck(row);
    },
    /** In the order entered, excluded ones too. */
    ofSpecies: (speciesId: string): OvenCheck[] => ofSpecies.all(speciesId).map(toCheck),
    /** The species that have checks. */
    speciesIds: (): string[] => speciesIds.all().map((row) => row.speciesId),
    /** The meters (null: typed) whose fit was chosen to correct readings on this species. */
    chosen: (speciesId: string): (number | null)[] =>
      chosen
        .all(speciesId)
        .filter((row) => row.inUse === 1)
        .map((row) => row.meterId),
  };
}

export function ovenCheckWrites(db: Db, { profileIdOf }: ReturnType<typeof meterReads>) {
  const add = rowAppender(db, 'oven_check', columns);
  const weigh = rowAppender(db, 'oven_weight', weightColumns);
  const choose = rowAppender(db, 'own_fit_choice', {
    speciesId: 'species_id',
    meterId: 'meter_id',
    inUse: 'in_use',
    at: 'chosen_at',
  });
  return {
    add: ({ meterId, readings, ...check }: NewOvenCheck, at: string): number =>
      add({ ...check, meterProfileId: profileIdOf(meterId), readings: JSON.stringify(readings), at }),
    weigh: (checkId: number, grams: number, at: string): void => {
      weigh({ checkId, grams, at });
    },
    choose: (speciesId: string, meterId: number | null, inUse: boolean, at: string): void => {
      choose({ speciesId, meterId, inUse: Number(inUse), at });
    },
  };
}
