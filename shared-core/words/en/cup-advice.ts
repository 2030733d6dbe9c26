/** How a board cups, and what to do about it. */
export const cupAdvice = {
  'cup.missing': 'To forecast its cup, enter {missing}.',
  'cup.missing.width': 'its width',
  'cup.missing.sawing': 'how it was sawn',
  'cup.shrinkage-unknown':
    'Shrinkage of {speciesName} unknown, so its cup is too. Enter both figures for the species.',

  'cup.bark':
    'Take the bark off its {face, select, upper {upper} other {lower}} face. Wood hardly dries through bark. Insects live under it.',
  'cup.bark-and-hollow':
    'Take the bark off its {face, select, upper {upper} other {lower}} face. Wood hardly dries through bark. Insects live under it. By today’s forecast, the other face is {differencePoints} drier and pulls hollow.',
  'cup.flip':
    'By today’s forecast, its {drierFace, select, upper {upper} other {lower}} face is {differencePoints} drier and pulls hollow. Turn the board over, so that the wetter face meets the open air. Take any cover off that face.',
  'cup.weight':
    'Left loose, it would cup about {cupMm}. Keep it low in the stack, or weight or strap the stack while it dries. Fasten weights so that they cannot slide off and hurt somebody.',
  'cup.weight-hollow':
    'Left loose, it would cup about {cupMm}, hollow on its {hollowFace, select, upper {upper} other {lower}} face. Keep it low in the stack, or weight or strap the stack while it dries. Fasten weights so that they cannot slide off and hurt somebody.',
  'cup.stickers':
    'Use stickers of one thickness, every {spacingDistanceMm} and at each end. Line them up, one above the other.',
  'cup.end-seal': 'Seal the ends now. They dry many times faster than the faces, and check first.',
  'cup.uneven-green':
    'By today’s forecast, the shell is {differencePoints} drier than the core, which is still green. The faces are stretched and may check. Slow the drying until the difference shrinks: less wind and sun, covers on.',
  'cup.uneven':
    'By today’s forecast, the shell is {differencePoints} drier than the core. Do not rip, resaw, or plane it deep yet. It can pinch the blade, or bow as it is cut. Let it equalize. Then cut a prong section to test for casehardening.',
} as const;
