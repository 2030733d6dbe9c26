/** A board on the page of a past round, as the machine tells of it. */
export const aPageBoard = (boardId: number) => ({
  boardId,
  code: `OAK-0${boardId}`,
  thicknessMm: 52,
  thicknessQuarters: null,
  lengthMm: null,
  speciesName: 'White oak',
  isLater: false,
  placedLater: null,
  remarks: [],
});
