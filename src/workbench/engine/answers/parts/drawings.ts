import { drawingAnswer } from '../cut/drawing.ts';
import { pencilAnswer } from '../cut/pencil.ts';
import { byColourAnswer, readAsAnswer } from '../cut/read-as.ts';

/** Forms on their way into a job. */
export const answers = { drawing: drawingAnswer, pencil: pencilAnswer, byColour: byColourAnswer, readAs: readAsAnswer };
