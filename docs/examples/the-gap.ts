// How far the mesh must hang above the paper, how much that stretches it, and how much larger the image prints.
import { adviseGap, offContact } from 'laydown/press';
import { tell, tellProblem } from 'laydown/words';

const image = [300, 400] as const;
const advice = adviseGap(image);
console.log(`gap ${advice.gapMm} mm. ${tell(advice.why)}`);
for (const gapMm of [advice.gapMm, 6]) {
  const stretched = offContact({ frameInsideMm: [460, 620], imageMm: image, hingeSide: 'top', gapMm });
  console.log(
    `${gapMm} mm: the image grows by ${stretched.alongMm.toFixed(2)} mm along the stroke; most strain ${(stretched.mostStrain * 100).toFixed(2)} %`,
  );
  for (const p of stretched.problems) console.log(`  ${tellProblem(p)}`);
}
