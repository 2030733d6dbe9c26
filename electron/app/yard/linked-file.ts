import { existsSync, lstatSync, realpathSync } from 'node:fs';

/** Where a yard file is a link to another, that one: SQLite's files are beside it. */
export function linkedFile(path: string): string {
  return existsSync(path) && lstatSync(path).isSymbolicLink() ? realpathSync(path) : path;
}
