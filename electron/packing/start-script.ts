/** What a person starts the packed folder by on a system, and the file of `beside/` that it is. */
export function startScript(platform: NodeJS.Platform): { name: string; source: string } {
  if (platform === 'win32') return { name: 'pintally.cmd', source: 'pintally.cmd' };
  // Finder opens a file of this name in a terminal.
  return { name: platform === 'darwin' ? 'pintally.command' : 'pintally', source: 'pintally.sh' };
}
