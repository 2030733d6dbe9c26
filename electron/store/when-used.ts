import type { Statement } from 'better-sqlite3';
import { withHiddenValues } from './hidden-values.ts';
import type { Db } from './yard-file.ts';

/**
 * From now on prepares each statement of a connection when it is first used: an open yard has some 300 over each of its
 * connections, and a person uses a sixth of them between two starts. Only for a file whose list of tables was compared
 * with our own (`schema-repair.ts`): no statement can then turn out to name what is not there. Each is planned once
 * (`hidden-values.ts`).
 */
export function prepareWhenUsed(db: Db): void {
  const prepare = db.prepare.bind(db);
  db.prepare = ((sql: string) =>
    new StatementWhenUsed(() => prepare(withHiddenValues(sql)))) as unknown as Db['prepare'];
}

/** What the tables of a yard do with a statement. */
class StatementWhenUsed implements Pick<Statement, 'get' | 'all' | 'run' | 'iterate'> {
  private readonly prepare: () => Statement;
  private statement: Statement | undefined;
  private plucks = false;

  constructor(prepare: () => Statement) {
    this.prepare = prepare;
  }

  private prepared(): Statement {
    this.statement ??= this.plucks ? this.prepare().pluck() : this.prepare();
    return this.statement;
  }

  pluck(): this {
    this.plucks = true;
    return this;
  }
  get(...values: unknown[]): unknown {
    return this.prepared().get(...values);
  }
  all(...values: unknown[]): unknown[] {
    return this.prepared().all(...values);
  }
  run(...values: unknown[]) {
    return this.prepared().run(...values);
  }
  iterate(...values: unknown[]) {
    return this.prepared().iterate(...values);
  }
}
