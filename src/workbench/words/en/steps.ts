/** Names of steps, as undo and redo say them. */
export const steps = {
  open: (title: string) => `opening ${title}`,
  title: () => 'the title',
  strength: (layer: string) => `strength of ${layer}`,
  ink: (layer: string, ink: string) => `${layer} in ${ink}`,
  leaveOpen: (layer: string) => `${layer} left open`,
  move: (layer: string, run: number) => `${layer} moved to place ${run}`,
  takeIn: (layer: string) => `${layer} taken into the print`,
  leaveOut: (layer: string) => `${layer} left out`,
  version: (name: string) => `going back to “${name}”`,
};
