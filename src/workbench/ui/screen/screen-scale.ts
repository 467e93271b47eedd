import { computed, signal, type ReadonlySignal } from '@preact/signals';

/** Pixels (CSS) that make a millimetre on this very screen, as measured by the printmaker; kept on this machine. */
const place = 'laydown.pixels-per-mm';
/** Until it is measured: the CSS reference pixel, 96 an inch (CSS Values and Units, section 6.2). */
const nominal = 96 / 25.4;
/** A bank card, ISO/IEC 7810 size ID-1: 85.60 × 53.98 mm. */
export const cardMm = { width: 85.6, height: 53.98 } as const;
export const leastPxPerMm = 1.5,
  mostPxPerMm = 20;

const measured = signal<number | null>(kept());

export const screenScale: ReadonlySignal<{ readonly pxPerMm: number; readonly isMeasured: boolean }> = computed(() => ({
  pxPerMm: measured.value ?? nominal,
  isMeasured: measured.value !== null,
}));

export function setScreenScale(pxPerMm: number): void {
  measured.value = Math.min(mostPxPerMm, Math.max(leastPxPerMm, pxPerMm));
  try {
    localStorage.setItem(place, String(measured.value));
  } catch {
    // A browser that keeps nothing still shows true size until it is closed.
  }
}

function kept(): number | null {
  try {
    const value = Number(localStorage.getItem(place));
    return value >= leastPxPerMm && value <= mostPxPerMm ? value : null;
  } catch {
    return null;
  }
}
