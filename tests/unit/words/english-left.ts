const words =
  'the|and|or|of|is|are|was|were|be|been|not|no|with|without|from|this|that|these|it|its|your|you|to|for|on|at|by|as|if|than|then|when|where|which|board|boards|reading|readings|stack|stacks|place|places|spot|round|meter|pins|species|wood|wet|dry|drying|ready|call|average|forecast|save|saved|edit|delete|print|undo|MC|EMC|RH|moisture|label|labels|weight|log|sawn|date|dates|day|days|file|files|yard|use|target|settings|window';
const english = new RegExp(`(?<![\\p{L}.@-])(${words})(?![\\p{L}@])`, 'u');
/** Words of both languages, names, and commands. */
const both =
  /\b(in der|was|an|am|die|so|log|Log)\b|\bStart\b|bluetoothctl power on|electron\/meter\/native-socket|„from memory“/gu;

/** Whether a German text has an English word in it. */
export const hasEnglish = (text: string): boolean => english.test(text.replace(both, ''));
