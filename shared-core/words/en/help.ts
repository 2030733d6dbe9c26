/** Help: the user's guide. Its chapters are Markdown, in `renderer/help/guide/`. */
export const help = {
  'nav.help': 'Help',
  'help.title': 'Help',
  'help.lead': 'How to use Pintally, from the first stack to the last label.',
  'help.find': 'Find in the guide',
  'help.find-hint': 'Any words, in any order.',
  'help.found':
    '{found, plural, =0 {Nothing in the guide has “{typedText}”.} one {# part of the guide} other {# parts of the guide}}',
  'help.no-chapter': 'The guide has no such chapter. Choose one below.',
  'help.methods-lead': 'Every formula, assumption, limit, and source.',
  'help.chapters': 'Chapters',
  'help.turn': 'Other chapters',
  'help.all': 'All chapters',
  'help.previous': 'Previous: {chapterTitle}',
  'help.next': 'Next: {chapterTitle}',
  'help.push-pins': 'How to push the pins',
  'help.read-calls': 'How to read the calls',
} as const;
