/** Less than this much of the window is left above keys on the screen. */
const leftShare = 0.75;

const typedIn = 'textarea, input:not([type=range], [type=checkbox], [type=radio], [type=button], [type=file], [type=color])';

/**
 * While keys stand on the screen, what sticks to its edges lets go (it would cover all that is left), and the field in hand is in sight.
 * Some engines make the window smaller for the keys, others only what is seen of it.
 */
export function mindScreenKeys(): void {
  const view = globalThis.visualViewport;
  if (!view) return;
  let [wide, tallest] = [0, 0];
  const look = (): void => {
    if (Math.round(view.width * view.scale) !== wide) [wide, tallest] = [Math.round(view.width * view.scale), 0];
    tallest = Math.max(tallest, view.height * view.scale);
    const field = document.activeElement;
    const up = field?.matches(typedIn) && view.height * view.scale < leftShare * tallest ? field : null;
    document.documentElement.classList.toggle('screen-keys', up !== null);
    if (!up) return;
    const box = up.getBoundingClientRect();
    if (box.top < view.offsetTop || box.bottom > view.offsetTop + view.height) up.scrollIntoView({ block: 'center' });
  };
  view.addEventListener('resize', look);
  addEventListener('focusin', look);
  addEventListener('focusout', () => setTimeout(look));
  look();
}
