import { randomUUID } from 'node:crypto';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Db } from '../yard-file.ts';
import type { Value } from './b-tree.ts';
import type { Table } from './tables.ts';

const nameOf = (what: 'species' | 'end-use' | 'place' | 'stack' | 'meter', id: Value): string =>
  `${english[`recovered.${what}`]} ${id}`;

type Given = Record<string, Value | undefined>;

/** Air that is neither dry nor damp, until the person enters it. */
const AIR = JSON.stringify(Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.65 })));

/**
 * Makes what a saved row belongs to and what itself is lost: a board without its stack, a reading without its board. It
 * is named as recovered, so that the person finds and corrects it.
 */
export function createLostParents(
  db: Db,
  tables: ReadonlyMap<string, Table>,
  ids: (table: string) => Set<Value>,
) {
  const roundsMadeAgain: string[] = [];

  function make(name: string, id: Value, child: Given): boolean {
    const table = tables.get(name);
    const values = table && valuesOf(name, id, child);
    if (!values) return false;
    const given = Object.entries({ uuid: randomUUID(), ...values }).filter(([column]) =>
      table.columns.some((each) => each.name === column),
    );
    const columns = given.map(([column]) => column).join(', ');
    db.prepare(`INSERT OR IGNORE INTO ${name} (${columns}) VALUES (${given.map(() => '?').join(', ')})`).run(
      given.map(([, value]) => value),
    );
    ids(name).add(id);
    if (name === 'round') roundsMadeAgain.push(String(values.started_at));
    return true;
  }

  /** A row of the table that is there, or is made now. */
  function some(name: string): Value {
    const [first = 1] = ids(name);
    if (ids(name).size === 0) make(name, first, {});
    return first;
  }

  function valuesOf(name: string, id: Value, child: Given): Given | null {
    switch (name) {
      case 'species': {
        const known = builtInSpecies.find((each) => each.id === id);
        const unknown = {
          ...builtInSpecies[0],
          id,
          name: nameOf('species', id),
          aliases: [],
          curveId: null,
          linear: null,
        };
        return { id, record: JSON.stringify(known ?? unknown), built_in: known ? 1 : 0 };
      }
      case 'end_use':
      case 'use': {
        const known = builtInEndUses.find((each) => each.id === id);
        const record = known ?? { ...builtInEndUses[0], id, name: nameOf('end-use', id) };
        return { id, record: JSON.stringify(record), built_in: known ? 1 : 0 };
      }
      case 'place':
        return { id, name: nameOf('place', id), kind: 'open-shed', air: AIR };
      case 'stack': {
        const use = builtInEndUses[0]?.id ?? '';
        const useTable = tables.has('end_use') ? 'end_use' : 'use';
        if (!ids(useTable).has(use)) make(useTable, use, {});
        return { id, name: nameOf('stack', id), place_id: some('place'), end_use_id: use, use_id: use };
      }
      case 'board': {
        const species = builtInSpecies[0]?.id ?? '';
        if (!ids('species').has(species)) make('species', species, {});
        const stack = db
          .prepare('SELECT stack_id FROM round WHERE id = ?')
          .pluck()
          .get(child.round_id ?? 0);
        return {
          id,
          code: `RECOVERED-${id}`,
          stack_id: (stack as Value | undefined) ?? some('stack'),
          species_id: species,
          thickness_mm: 25.4,
          dried_by: 'air',
          sawing: 'unknown',
          log: '',
        };
      }
      case 'round': {
        const at = child.taken_at ?? child.given_at ?? '1970-01-01T00:00:00.000Z';
        const stack = db
          .prepare('SELECT stack_id FROM board WHERE id = ?')
          .pluck()
          .get(child.board_id ?? 0);
        return {
          id,
          stack_id: (stack as Value | undefined) ?? some('stack'),
          started_at: at,
          finished_at: at,
        };
      }
      case 'meter':
        return { id, kind: 'bluetooth', device_id: `recovered-${id}`, name: nameOf('meter', id) };
      case 'meter_profile':
        return { id, meter_id: some('meter'), version: 1000 + Number(id), record: 'null' };
      default:
        return null;
    }
  }

  return {
    make,
    /** When each round that had to be made again is taken to have begun, UTC. */
    roundsMadeAgain,
  };
}
