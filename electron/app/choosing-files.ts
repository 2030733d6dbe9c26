import { Refusal } from '../../shared-core/contract/answer.ts';
import type { FilePurpose } from '../../shared-core/contract/backups.ts';
import { message } from '../../shared-core/words/message.ts';
import type { Commands } from './handlers.ts';

/** Has the person choose a file or folder in the system's own dialog. @returns its path, null where they chose none */
export type ChooseFile = (purpose: FilePurpose) => Promise<string | null>;

/** @param choose  null in a browser, which shows no paths */
export const choosingCommands = (choose: ChooseFile | null) =>
  ({
    'backups.chooseFile': async ({ purpose }) => {
      if (choose === null) throw new Refusal(message('refusal.request-unknown'));
      return { path: await choose(purpose) };
    },
  }) satisfies Partial<Commands>;
