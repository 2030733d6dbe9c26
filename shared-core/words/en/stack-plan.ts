/** What to do with a stack: how many boards to probe, and which. */
export const stackPlan = {
  'stack-plan.probe-so-many':
    'Probe {boards}. If all are ready, you can be {certaintyPct} sure that at most 1 in {oneIn} is not.',
} as const;
