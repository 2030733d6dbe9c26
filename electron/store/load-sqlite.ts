/**
 * Imported for its effect by threads: SQLite's own code is loaded with the thread and not with its first file. A thread
 * that is ended while it loads that code takes the whole program with it.
 */
import Database from 'better-sqlite3';

new Database(':memory:').close();
