import { spawnSync } from 'node:child_process';

/**
 * V8 guards compiled code by the processor's keys, and now and then ends a process of many threads where it does
 * ("Check failed: jit_page.has_value()"): nodejs/node 64500. Without that guard it goes on.
 */
const WITHOUT_KEYS = '--no-memory-protection-keys';

/**
 * What Node is started with to be the host.
 * @param node  Node's file. One without that guard ends at a flag that it does not know.
 */
export function hostFlags(node: string = process.execPath): string[] {
  const { stdout } = spawnSync(node, ['--v8-options'], { encoding: 'utf8' });
  return stdout?.includes('--memory-protection-keys') ? [WITHOUT_KEYS] : [];
}
