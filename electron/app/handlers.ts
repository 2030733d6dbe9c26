import type {
  ActName,
  CheckedInput,
  CommandName,
  QueryName,
  RequestName,
  RequestOutput,
} from '../../shared-core/contract/requests.ts';
import type { Slices } from './slices.ts';

/** Answers one request, whose input fits its schema, of a window. */
export type Handler<N extends RequestName> = (
  input: CheckedInput<N>,
  window: string,
) => RequestOutput<N> | Promise<RequestOutput<N>>;

/** Does an act, within the transaction that is all of it; or in slices, each a transaction. */
export type Act<N extends ActName> = (
  input: CheckedInput<N>,
  window: string,
) => RequestOutput<N> | Slices<RequestOutput<N>>;

/** Every query with its handler; the files that have some `satisfies Partial<Queries>`. */
export type Queries = { [N in QueryName]: Handler<N> };
/** Every command with its handler. */
export type Commands = { [N in CommandName]: N extends ActName ? Act<N> : Handler<N> };
