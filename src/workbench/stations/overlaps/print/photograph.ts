import { signal, type Signal } from '@preact/signals';
import type { PrintPhotoAsk } from '../../../../core/asks/index.ts';
import type { Mm } from '../../../ui/screen/drag.ts';

export interface PrintPhotograph {
  readonly id: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly url: string;
  /** Whose corners are laid, and where, in pixels; null: they are looked for. */
  readonly of: Signal<PrintPhotoAsk['of']>;
  readonly corners: Signal<readonly Mm[] | null>;
}

/** The photograph of the print that lies beside the proof; kept while other stations are looked at. */
export const printPhoto = signal<PrintPhotograph | null>(null);
let photographs = 0;

export function takePrintPhoto(name: string, bytes: Uint8Array): void {
  leavePrintPhoto();
  printPhoto.value = {
    id: ++photographs,
    name,
    bytes,
    url: URL.createObjectURL(new Blob([bytes as BlobPart])),
    of: signal<PrintPhotoAsk['of']>('sheet'),
    corners: signal<readonly Mm[] | null>(null),
  };
}

export function leavePrintPhoto(): void {
  if (printPhoto.value) URL.revokeObjectURL(printPhoto.value.url);
  printPhoto.value = null;
}

/** How much of the proof is seen over the photograph. */
export const photoWipe = signal(0.5);
