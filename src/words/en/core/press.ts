import type { LengthText, NameText, NumberText, ShareText } from '../../say.ts';

/** Screen, gap, register, stops, taping. */
export const press = {
  tensionImpossible: ({ tension }: { tension: NumberText }) => `A mesh cannot have a tension of ${tension} N/cm.`,
  leaveTensionOut: 'Leave the tension out when it is not known.',
  tightMeshGap: ({ tension, most }: { tension: NumberText; most: LengthText }) => `A mesh of ${tension} N/cm needs at most ${most}.`,
  slackMeshGap: ({ size, tension }: { size: NameText; tension: NumberText }) =>
    `A print up to ${size} on slack mesh (${tension} N/cm): half as much again as usual. New mesh would keep register better.`,
  gapByHand: ({ size }: { size: NameText }) => `A print up to ${size} by hand. Enough when the mesh snaps up behind the blade.`,
  gapTensionUnknown: ({ size }: { size: NameText }) =>
    `A print up to ${size} by hand, tension not known. Enough when the mesh snaps up behind the blade.`,
  gapImpossible: ({ gap }: { gap: LengthText }) => `No screen has a gap of ${gap}.`,
  giveGap: ({ usual }: { usual: LengthText }) => `Give the gap between mesh and paper, usually ${usual}.`,
  noMeshAround: ({ frame, image }: { frame: LengthText; image: LengthText }) =>
    `The inside of the frame (${frame}) leaves no mesh around the image (${image}).`,
  largerFrame: 'Take a larger frame or a smaller image.',
  gapTears: ({ gap, strain }: { gap: LengthText; strain: ShareText }) =>
    `A gap of ${gap} stretches the mesh by ${strain} so near the frame: it can tear or come off the frame.`,
  gapStretches: ({ gap, strain }: { gap: LengthText; strain: ShareText }) =>
    `A gap of ${gap} stretches the mesh by ${strain}: the edges of the image drift outwards and the mesh slackens in time.`,
  lowerGap: ({ safe }: { safe: LengthText }) => `Lower the gap to about ${safe} or leave more room between image and frame.`,
};
