/** The usual reasons to exclude a reading of the meter. */
export const readingReasons = ['pins-shallow', 'defect', 'wet-face', 'wrong-spot', 'typing-slip'] as const;
