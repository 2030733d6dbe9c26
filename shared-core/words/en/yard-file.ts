/** What happened to the yard's file, and what was saved of it. */
export const yardFile = {
  'yard-note.log-repaired':
    '{changes, plural, one {# recent change was} other {# recent changes were}} damaged on the disk and {changes, plural, one {is} other {are}} repaired. Nothing was lost. The disk may be failing: save a copy on another disk.',
  'yard-note.changes-missing':
    '{changes, plural, one {# change is} other {# changes are}} missing from this yard, the newest of {newestAt}. Part of the yard’s files was removed or replaced while Pintally was closed. Check your last readings. A backup may hold them.',
} as const;
