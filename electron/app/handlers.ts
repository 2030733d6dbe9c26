import type {
  CheckedInput,
  CommandName,
  QueryName,
  RequestName,
  RequestOutput,
} from '../../shared-core/contract/requests.ts';

/** Answers one request, whose input fits its schema. */
export type Handler<N extends RequestName> = (
  input: CheckedInput<N>,
) => RequestOutput<N> | Promise<RequestOutput<N>>;

/** Every query with its handler; the files that have some `satisfies Partial<Queries>`. */
export type Queries = { [N in QueryName]: Handler<N> };
/** Every command with its handler. */
export type Commands = { [N in CommandName]: Handler<N> };
