/** Serves a window in its own process, without a built one. */
import { serveLoopback } from '../../../electron/loopback-start.ts';

await serveLoopback(import.meta.dirname);
