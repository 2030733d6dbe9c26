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
type Editable<N extends EditName> = RequestInput<N>['changed'];

/**
 * Edits a record. Only what was changed is sent, with the version that the person saw; where another edit came
 * between, nothing is saved and `theirs` is what was saved meanwhile. Saving once more saves over it, and leaves their
 * other fields.
 *
 * @param record  null in a form that adds one, which saves nothing by this
 */
export function useEdit<N extends EditName>(name: N, record: RequestOutput<N> | null) {
  const [base, setBase] = useState(record);
  const [theirs, setTheirs] = useState<RequestOutput<N> | null>(null);
  return {
    /** The record that the form was last filled with. */
    base,
    theirs,
    /**
     * @param untouched  what the form gives back where nothing is typed; it may round
     * @throws Refusal; Conflict, which sets `theirs`
     */
    async save(typed: Editable<N>, untouched: Editable<N> | null = base as Editable<N>) {
      const mine = changedFields(untouched ?? {}, typed);
      if (!base || Object.keys(mine).length === 0) return base;
      const { id, version } = (theirs ?? base) as { id: number; version: number };
      try {
        return await bridge().command(name, { id, basedOn: version, changed: mine } as RequestInput<N>);
      } catch (error) {
        if (!(error instanceof Conflict)) throw error;
        const current = error.current as RequestOutput<N>;
        // Both wrote the same.
        if (Object.keys(changedFields(current as object, mine)).length === 0) return current;
        setTheirs(current);
        throw error;
      }
    },
    /**
     * What a form offers where another edit came between; null as long as none did.
     * @param refill  fills the form with what was saved meanwhile
     */
    conflict: (refill: (record: RequestOutput<N>) => void) =>
      theirs && {
        takeTheirs(): void {
          setBase(theirs);
          setTheirs(null);
          refill(theirs);
        },
      },
  };
}
