/** What surrounds every screen: the bar, notices, problems. */
export const frame = {
  'frame.reconnected': 'Check your last change after reconnecting.',
} as const;
