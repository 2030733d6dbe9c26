import type { AnyWindow } from './streaming.ts';

export interface SavedReading {
  roundId: number;
  boardId: number;
  spotIndex: number;
  /** % as the meter shows it. */
  raw: number;
}

const keyOf = ({ roundId, boardId, spotIndex }: Omit<SavedReading, 'raw'>): string =>
  `round ${roundId}, board ${boardId}, spot ${spotIndex}`;

/** What a window was told is saved, and what it asked to save and heard nothing of. */
export class Ledger {
  readonly #saved = new Map<string, SavedReading>();
  readonly #asked = new Map<string, SavedReading>();

  constructor(saved: readonly SavedReading[] = []) {
    for (const reading of saved) this.save(reading);
  }

  ask(reading: SavedReading): void {
    this.#asked.set(keyOf(reading), reading);
  }
  save(reading: SavedReading): void {
    this.#saved.set(keyOf(reading), reading);
  }
  /** The window was told that it was not saved. */
  refuse(reading: SavedReading): void {
    this.#asked.delete(keyOf(reading));
  }

  saved(): SavedReading[] {
    return [...this.#saved.values()];
  }
  unheardOf(): SavedReading[] {
    return [...this.#asked.values()].filter((reading) => !this.#saved.has(keyOf(reading)));
  }

  /** What of this a yard does not hold as it was saved, and what it holds that nobody asked for. */
  async differences(window: Pick<AnyWindow, 'query'>): Promise<string[]> {
    const boards = new Set([...this.#saved.values(), ...this.#asked.values()].map(({ boardId }) => boardId));
    const there = new Map<string, number[]>();
    const byMeter = new Set<string>();
    for (const id of boards) {
      const { readings } = await window.query('boards.get', { id });
      for (const { roundId, spotIndex, raw, how } of readings) {
        const key = keyOf({ roundId, boardId: id, spotIndex: spotIndex ?? -1 });
        // Nobody asked for what a meter's value settles at: it may be saved and the window not hear of it.
        if (how !== 'typed') byMeter.add(key);
        there.set(key, [...(there.get(key) ?? []), raw]);
      }
    }
    const missing = this.saved()
      .filter((reading) => !there.has(keyOf(reading)))
      .map((reading) => `${reading.raw}% of ${keyOf(reading)} is gone`);
    const others = [...there].flatMap(([key, raws]) => {
      const meant = this.#saved.get(key) ?? this.#asked.get(key);
      if (meant === undefined) return byMeter.has(key) ? [] : [`${raws}% of ${key} was never saved`];
      if (raws.length > 1) return [`${key} has ${raws.length} readings`];
      return raws[0] === meant.raw ? [] : [`${raws}% of ${key} was ${meant.raw}%`];
    });
    const all = [...missing, ...others];
    return all.length > 5 ? [...all.slice(0, 5), `and ${all.length - 5} more`] : all;
  }
}
