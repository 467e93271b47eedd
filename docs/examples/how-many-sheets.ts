// Sheets to start with, so that twenty good ones come out of five runs in nine of ten editions, in two languages.
import { sheetsToStart } from 'laydown/edition';
import { tell } from 'laydown/words';

const spoilagePerRun = [0.05, 0.05, 0.05, 0.05, 0.05];
const { start } = sheetsToStart({ target: 20, spoilagePerRun, certainty: 0.9 });
console.log(`start ${start} sheets`);
try {
  sheetsToStart({ target: 20, spoilagePerRun: [1.2], certainty: 0.9 });
} catch (error) {
  const { problems } = error as { problems: { message: Parameters<typeof tell>[0] }[] };
  for (const language of ['en', 'de']) console.log(tell(problems[0].message, { language, units: 'mm' }));
}
