import { useState } from 'react';
import { Conflict } from '../../shared-core/contract/answer.ts';
import type { CommandName, RequestInput, RequestOutput } from '../../shared-core/contract/requests.ts';
import { bridge } from './bridge.ts';
import { changedFields } from './changed-fields.ts';

/** A command that edits a record. */
export type EditName = {
  [N in CommandName]: RequestInput<N> extends { basedOn: number; changed: object } ? N : never;
}[CommandName];

/** The fields of a record that can be edited. */
export type Editable<N extends EditName> = RequestInput<N>['changed'];

/** Two edits of one record: what this person typed, and what was saved meanwhile. */
export interface Versions<N extends EditName> {
  /** What differs from what was saved. */
  mine: Editable<N>;
  current: RequestOutput<N>;
}

/**
 * Edits a record. Only what was changed is sent, with the version that the person saw; where another edit came
 * between, nothing is saved and `versions` says what each of them wrote.
 *
 * @param record  null in a form that adds one, which saves nothing by this
 */
export function useEdit<N extends EditName>(name: N, record: RequestOutput<N> | null) {
  const [base, setBase] = useState(record);
  const [versions, setVersions] = useState<Versions<N> | null>(null);

  async function send(from: RequestOutput<N>, mine: Editable<N>): Promise<RequestOutput<N>> {
    const { id, version } = from as { id: number; version: number };
    if (Object.keys(mine).length === 0) return from;
    try {
      return await bridge().command(name, { id, basedOn: version, changed: mine } as RequestInput<N>);
    } catch (error) {
      if (!(error instanceof Conflict)) throw error;
      const current = error.current as RequestOutput<N>;
      const different = changedFields(current as object, mine);
      // Both wrote the same.
      if (Object.keys(different).length === 0) return current;
      setVersions({ mine: different as Editable<N>, current });
      throw error;
    }
  }

  return {
    /** The record that the form was last filled with. */
    base,
    versions,
    /**
     * @param untouched  what the form gives back where nothing is typed; it may round
     * @throws Refusal; Conflict, which sets `versions`
     */
    save: async (typed: Editable<N>, untouched: Editable<N> | null = base as Editable<N>) =>
      base && send(base, changedFields(untouched ?? {}, typed)),
    /** Saves what this person typed over what was saved meanwhile; their other fields stay. */
    keepMine: async () => versions && send(versions.current, versions.mine),
    /** Goes on from what was saved meanwhile. */
    takeTheirs: (): void => {
      if (versions) setBase(versions.current);
      setVersions(null);
    },
  };
}
export type Edit<N extends EditName> = ReturnType<typeof useEdit<N>>;
