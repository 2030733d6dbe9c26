/**
 * `npm run export -- FILE.json, or FILE.csv [--what boards|readings|calls|forecasts|air] [--units metric|imperial]`: what the own yard
 * holds, as a file, without a window. It reads a copy, so it works while Pintally is open, too.
 */
import { exportByCommand } from './export-by-command.ts';

process.exitCode = await exportByCommand(process.argv.slice(2), process.env);
