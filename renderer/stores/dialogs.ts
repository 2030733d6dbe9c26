/** Whether a dialog lies over the window: keys are its own then. */
export const isDialogOpen = (): boolean =>
  document.querySelector('[role="dialog"], [role="alertdialog"]') !== null;
