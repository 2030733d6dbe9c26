import type { NewOvenCheck, OvenCheck, OvenWeight } from '../../shared-core/contract/oven-checks.ts';
import { ovenCheckSchema } from '../../shared-core/contract/oven-checks.ts';
import type { Db } from './yard-file.ts';

type CheckRecord = Omit<OvenCheck, 'readings' | 'weights'> & { readings: string };

const fields = `
  c.id, c.species_id AS speciesId, c.meter_id AS meterId, c.piece, c.readings, c.unit, c.wood_temp_c AS woodTempC,
  c.wet_grams AS wetGrams, c.balance_grams AS balanceGrams, c.end_rule AS rule, c.note, c.read_at AS at,
  (SELECT k.why FROM oven_mark k WHERE k.check_id = c.id AND k.mass_id IS NULL ORDER BY k.id DESC LIMIT 1) AS excluded
  FROM oven_check c`;

/** Pieces that were read, weighed and dried. What was measured is only ever added to. */
export function ovenCheckTable(db: Db) {
  const one = db.prepare<[number], CheckRecord>(`SELECT ${fields} WHERE c.id = ?`);
  const ofSpecies = db.prepare<[string], CheckRecord>(
    `SELECT ${fields} WHERE c.species_id = ? ORDER BY c.id`,
  );
  const weights = db.prepare<[number], OvenWeight>(
    `SELECT m.id, m.grams, m.weighed_at AS at,
       (SELECT k.why FROM oven_mark k WHERE k.mass_id = m.id ORDER BY k.id DESC LIMIT 1) AS excluded
     FROM oven_mass m WHERE m.check_id = ? ORDER BY m.weighed_at, m.id`,
  );
  const add = db.prepare(
    `INSERT INTO oven_check (species_id, meter_id, piece, readings, unit, wood_temp_c, wet_grams, balance_grams,
       end_rule, note, read_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const weigh = db.prepare('INSERT INTO oven_mass (check_id, grams, weighed_at) VALUES (?, ?, ?)');
  const mark = db.prepare('INSERT INTO oven_mark (check_id, mass_id, why, marked_at) VALUES (?, ?, ?, ?)');
  const choose = db.prepare(
    'INSERT INTO own_fit_choice (species_id, meter_id, in_use, chosen_at) VALUES (?, ?, ?, ?)',
  );
  const chosen = db.prepare<[string], { meterId: number | null; inUse: number }>(
    `SELECT f.meter_id AS meterId, f.in_use AS inUse FROM own_fit_choice f
     WHERE f.species_id = ? AND f.id = (SELECT max(g.id) FROM own_fit_choice g
       WHERE g.species_id = f.species_id AND g.meter_id IS f.meter_id)`,
  );

  const toCheck = (row: CheckRecord): OvenCheck =>
    ovenCheckSchema.parse({ ...row, readings: JSON.parse(row.readings), weights: weights.all(row.id) });

  return {
    get: (id: number): OvenCheck | undefined => {
      const row = one.get(id);
      return row && toCheck(row);
    },
    /** In the order entered, set-aside ones too. */
    ofSpecies: (speciesId: string): OvenCheck[] => ofSpecies.all(speciesId).map(toCheck),
    add: (check: NewOvenCheck, at: string): number =>
      Number(
        add.run(
          check.speciesId,
          check.meterId,
          check.piece,
          JSON.stringify(check.readings),
          check.unit,
          check.woodTempC,
          check.wetGrams,
          check.balanceGrams,
          check.rule,
          check.note,
          at,
        ).lastInsertRowid,
      ),
    weigh: (checkId: number, grams: number, at: string): void => {
      weigh.run(checkId, grams, at);
    },
    /** Sets a check (`massId` null) or one mass of it aside for a reason, or puts it back where `why` is null. */
    mark: (checkId: number, weightId: number | null, why: string | null, at: string): void => {
      mark.run(checkId, weightId, why, at);
    },
    choose: (speciesId: string, meterId: number | null, inUse: boolean, at: string): void => {
      choose.run(speciesId, meterId, Number(inUse), at);
    },
    /** The meters (null: typed) whose fit was chosen to correct readings on this wood. */
    chosen: (speciesId: string): (number | null)[] =>
      chosen
        .all(speciesId)
        .filter((row) => row.inUse === 1)
        .map((row) => row.meterId),
  };
}
