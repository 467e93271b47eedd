import type { Words } from '../../en/bench/index.ts';
import { edition } from './edition.ts';
import { inks } from './inks.ts';
import { picture } from './picture.ts';
import { shell } from './shell.ts';
import { press } from './press.ts';
import { many } from './say.ts';

/** Namen der Schritte, wie Rückgängig und Wiederholen sie nennen. */
export const steps: Words['steps'] = {
  open: (title) => `${title} geöffnet`,
  title: () => 'der Titel',
  strength: (layer) => `Stärke von ${layer}`,
  ink: (layer, ink) => `${layer} in ${ink}`,
  markDone: (layer) => `was von ${layer} getan ist`,
  keepTried: (pots) => (pots === 1 ? 'den probierten Topf behalten' : `${pots} probierte Töpfe behalten`),
  leaveOpen: (layer) => `${layer} offen gelassen`,
  move: (layer, run) => `${layer} auf Platz ${run} verschoben`,
  takeIn: (layer) => `${layer} in den Druck genommen`,
  leaveOut: (layer) => `${layer} ausgelassen`,
  version: (name, putAside) => `zurück zu „${putAside ? shell.beforeOpening(name) : name}“`,
  bringForm: (form) => `${form} geholt`,
  removeForm: (form) => `${form} vom Regal genommen`,
  sizeForm: (form) => `wahre Größe von ${form}`,
  newCut: (cut) => `ein Schnitt aus ${cut}`,
  nameCut: (cut) => `der Name ${cut}`,
  removeCut: (cut) => `Schnitt ${cut} weggenommen`,
  putForm: (form, cut) => `${form} auf ${cut} gelegt`,
  moveForm: (form) => `${form} verschoben`,
  turnForm: (form) => `${form} gedreht`,
  scaleForm: (form) => `Größe von ${form}`,
  mirrorForm: (form) => `${form} gespiegelt`,
  howForm: (form) => `wie ${form} zum Schnitt gehört`,
  repeatForm: (form) => `Wiederholungen von ${form}`,
  takeOffForm: (form) => `${form} weggenommen`,
  newLayer: (layer) => `${layer} als Schicht`,
  imageSize: () => 'die Größe des Bildes',
  stencilMargin: () => 'der Rand der Schablonen',
  pinBridge: (layer) => `ein Steg von ${layer} verschoben`,
  addBridge: (layer) => `ein Steg zu ${layer} gesetzt`,
  removeBridge: (layer) => `ein fester Steg von ${layer} losgelassen`,
  forbidBridge: (layer) => `dort kein Steg auf ${layer}`,
  allowBridge: (layer) => `Stege auf ${layer} wieder erlaubt`,
  islands: (layer) => `Inseln von ${layer}`,
  bridgesBy: (layer) => `wie die Stege von ${layer} gehen`,
  cutMaterial: (cut, material) => `${cut} aus ${material} geschnitten`,
  material: (material) => `Werte von ${material}`,
  stock: (material) => `Bogen ${material}`,
  pace: () => 'wie schnell die Werkstatt schneidet',
  addMaterial: () => 'ein eigenes Material',
  press: (field) => press.fields[field],
  edition: (field) => edition.fields[field],
  picture: (field) => picture.fields[field],
  takePicture: (name) => `das Bild ${name}`,
  pictureToJob: (runs) => `${many(runs, 'Lauf', 'Läufe')} aus dem Bild`,
  inks: (field, name) => inks.fields[field](name),
  spread: (layer) => `${layer} überfüllt`,
};
