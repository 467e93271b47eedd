import type { Phrases } from '../phrasebook.ts';

/** Die Arbeit als Dokument. */
export const job: Phrases = {
  'There are {off} layers; Laydown foresees {most} in one run of a sheet.':
    'Es sind {off} Schichten; Laydown sieht {most} in einem Durchgang eines Bogens vor.',
  'Leave some out (“off”), or plan the rest as a second job over the printed sheets.':
    'Einige auslassen („aus“) oder den Rest als zweite Arbeit über die gedruckten Bogen planen.',
  '“{id}” is already the id of {list}[{before}].': '„{id}“ ist schon die Kennung von {list}[{before}].',
  'Give each its own id.': 'Jedem eine eigene Kennung geben.',
  "Cut “{cut}” uses the form “{form}”, which the job doesn't have.":
    'Der Schnitt „{cut}“ verwendet die Form „{form}“, die es in der Arbeit nicht gibt.',
  'Use one of: {forms}.': 'Eines davon nehmen: {forms*}.',
  'Cut “{cut}” is to be cut from “{material}”, which is not in the list of materials.':
    'Der Schnitt „{cut}“ soll aus „{material}“ geschnitten werden, das nicht in der Liste der Materialien steht.',
  "Layer “{layer}” uses the cut “{cut}”, which the job doesn't have.":
    'Die Schicht „{layer}“ verwendet den Schnitt „{cut}“, den es in der Arbeit nicht gibt.',
  "Layer “{layer}” is printed with “{ink}”, an ink the job doesn't have.":
    'Die Schicht „{layer}“ wird mit „{ink}“ gedruckt, einer Farbe, die es in der Arbeit nicht gibt.',
  'Use one of: {inks}; or null to leave it open.': 'Eines davon nehmen: {inks*}; oder null, um sie offen zu lassen.',
  "Layer “{layer}” is let down with “{base}”, which the job doesn't have.":
    'Die Schicht „{layer}“ ist mit „{base}“ verschnitten, was es in der Arbeit nicht gibt.',
  'Use one of: {ink}, or leave it out.': 'Eines davon nehmen: {ink*}, oder weglassen.',
  "It speaks of the layer “{id}”, which the job doesn't have.":
    'Hier ist von der Schicht „{id}“ die Rede, die es in der Arbeit nicht gibt.',
  "It speaks of the paper “{paper}”, which the job doesn't have.":
    'Hier ist vom Papier „{paper}“ die Rede, das es in der Arbeit nicht gibt.',
  "The mix “{ink}” takes “{ink2}”, an ink the job doesn't have.":
    'Die Mischung „{ink}“ nimmt „{ink2}“, eine Farbe, die es in der Arbeit nicht gibt.',
  'Add that ink or take the part out.': 'Diese Farbe hinzufügen oder den Teil herausnehmen.',
  'The mix “{ink}” ends up containing itself.': 'Die Mischung „{ink}“ enthält am Ende sich selbst.',
  'Take one of the mixes out of the circle.': 'Eine der Mischungen aus dem Kreis nehmen.',
  "{what} needs the file “{path}”, which is not in the job's folder.":
    '{what*} braucht die Datei „{path}“, die nicht im Ordner der Arbeit liegt.',
  'Put the file back there, or choose another.': 'Die Datei dorthin zurücklegen oder eine andere wählen.',
  'Form “{form}”': 'Die Form „{form}“',
  'Form “{form}” needs either a drawing or an outline, and only one of them.':
    'Die Form „{form}“ braucht entweder eine Zeichnung oder einen Umriss, und nur eines davon.',
  'Give it one.': 'Ihr eines geben.',
  'Paper “{paper}”': 'Das Papier „{paper}“',
  'The picture to be made into stencils': 'Das Bild, aus dem Schablonen werden sollen,',
  'The image ({width} × {height} mm) hangs {over} mm over the edge of “{paper}” ({width2} × {height2} mm).':
    'Das Bild ({width} × {height} mm) hängt {over} mm über den Rand von „{paper}“ ({width2} × {height2} mm).',
  'Make the image smaller, move it on the sheet, or take a larger sheet.':
    'Das Bild kleiner machen, auf dem Bogen verschieben oder einen größeren Bogen nehmen.',
  'The job has no paper yet.': 'Die Arbeit hat noch kein Papier.',
  'Add at least one, with a reading of its colour.': 'Mindestens eines hinzufügen, mit einer Messung seines Farbtons.',
  'The job has no layers yet.': 'Die Arbeit hat noch keine Schichten.',
  'Add a layer: a cut, a side of it, and an ink.': 'Eine Schicht hinzufügen: einen Schnitt, eine Seite davon und eine Farbe.',
  'Layer “{layer}” is open: no ink is chosen yet, so it is left out of the proofs.':
    'Die Schicht „{layer}“ ist offen: noch ist keine Farbe gewählt, also fehlt sie in den Proofs.',
  'Choose an ink when you are ready.': 'Eine Farbe wählen, wenn es so weit ist.',
  'There is no job.json here, so this is not a job.': 'Hier ist keine job.json, also ist es keine Arbeit.',
  'Choose the folder that holds job.json, or a .laydown file.': 'Den Ordner wählen, in dem job.json liegt, oder eine .laydown-Datei.',
  'the file': 'die Datei',
  'It cannot be opened as a .laydown file: it is cut short or something else.':
    'Sie lässt sich nicht als .laydown-Datei öffnen: sie ist abgeschnitten oder etwas anderes.',
  'Choose another copy; nothing was changed.': 'Eine andere Kopie wählen; es wurde nichts geändert.',
  'It unpacks to more than 1 GB.': 'Ausgepackt ist sie größer als 1 GB.',
  'Take the large pictures out of the job and try again.': 'Die großen Bilder aus der Arbeit nehmen und es noch einmal versuchen.',
  'The job does not say which version of Laydown’s format it is written in.':
    'Die Arbeit sagt nicht, in welcher Fassung von Laydowns Format sie geschrieben ist.',
  'Add "schemaVersion": {target} if you wrote it by hand.': '"schemaVersion": {target} hinzufügen, falls sie von Hand geschrieben ist.',
  'The job was written by a newer Laydown (format {version}; this one reads up to {target}).':
    'Die Arbeit wurde von einem neueren Laydown geschrieben (Format {version}; dieses hier liest bis {target}).',
  'Open it with that newer version, or fetch the newest Laydown. Nothing was changed.':
    'Mit jenem neueren öffnen oder das neueste Laydown holen. Es wurde nichts geändert.',
  'There is no way from format {v} to {v2}.': 'Es gibt keinen Weg von Format {v} zu {v2}.',
  'Open and save the job with an older Laydown first.': 'Die Arbeit erst mit einem älteren Laydown öffnen und sichern.',
  'Write it in, or correct its kind; docs/job-schema.json lists every field.':
    'Eintragen oder die Art berichtigen; docs/job-schema.json führt jedes Feld auf.',
  'Use one of the words it allows.': 'Eines der Wörter nehmen, die erlaubt sind.',
  'Use a larger value.': 'Einen größeren Wert nehmen.',
  'Use a smaller value.': 'Einen kleineren Wert nehmen.',
  'Use one of the forms that docs/job-schema.json lists for it.': 'Eine der Formen nehmen, die docs/job-schema.json dafür nennt.',
  '“{last}” is missing.': '„{last}“ fehlt.',
  '“{last}” should be {expected}.': '„{last}“ muss sein: {expected*}.',
  'a list': 'eine Liste',
  '“{last}” must be {or}.': '„{last}“ muss {or*} sein.',
  '{a} or {b}': '{a*} oder {b*}',
  'at least': 'mindestens',
  'more than': 'mehr als',
  '“{last}” must not be empty (at least {minimum}).': '„{last}“ darf nicht leer sein (mindestens {minimum}).',
  'at most': 'höchstens',
  'less than': 'weniger als',
  'Correct it in the job.': 'In der Arbeit berichtigen.',
  'This is not a job: it holds no fields.': 'Das ist keine Arbeit: sie enthält keine Felder.',
  'Choose the job.json that Laydown wrote.': 'Die job.json wählen, die Laydown geschrieben hat.',
  'The file cannot be read as JSON ({error}).': 'Die Datei lässt sich nicht als JSON lesen ({error}).',
  'It may have been cut short or edited by hand: mend that place, or go back to an earlier copy.':
    'Sie wurde vielleicht abgeschnitten oder von Hand geändert: jene Stelle ausbessern oder zu einer früheren Kopie zurückgehen.',
  'must name a file inside the job folder': 'muss eine Datei im Ordner der Arbeit nennen',
  'worn out': 'verbraucht',
};
